import { characterOf, withPicturesTold } from './picture.ts';
import type { Design } from './schema.ts';

/** What parts name that a design keeps in lists of its own. */
export interface Resources {
  readonly finishes: Design['finishes'];
  readonly stocks: Design['stocks'];
  readonly fonts: Design['fonts'];
  readonly pictures: NonNullable<Design['pictures']>;
  readonly photos: NonNullable<Design['photos']>;
}

/** Fields of a part that name an entry of a list; fonts of a design are named `own:` and their id, pictures by their
 * characters in a text. */
const NAMED_BY: Readonly<Record<string, keyof Resources>> = {
  finish: 'finishes',
  stock: 'stocks',
  font: 'fonts',
  text: 'pictures',
  photo: 'photos',
};
const OWN_FONT = 'own:';

/** A part, or what it is made of, with every name of a finish, stock, font, picture or photo of the design put through `rename`. */
export function withResources<T>(of: T, rename: (list: keyof Resources, id: string) => string): T {
  if (Array.isArray(of)) return of.map((item) => withResources(item, rename)) as T;
  if (of === null || typeof of !== 'object') return of;
  const fields = Object.entries(of).map(([key, value]) => {
    const list = NAMED_BY[key];
    if (list === undefined || typeof value !== 'string') return [key, withResources(value, rename)];
    if (list === 'pictures') {
      return [key, withPicturesTold(value, (picture) => characterOf(rename(list, picture)))];
    }
    if (list !== 'fonts') return [key, rename(list, value)];
    const own = value.startsWith(OWN_FONT);
    return [key, own ? OWN_FONT + rename(list, value.slice(OWN_FONT.length)) : value];
  });
  return Object.fromEntries(fields) as T;
}

/** The finishes, stocks, fonts, pictures and photos of a design that these parts name, and the finishes of those pictures. */
export function resourcesOf(design: Design, parts: Design['parts']): Resources {
  const named: Record<keyof Resources, Set<string>> = {
    finishes: new Set(),
    stocks: new Set(),
    fonts: new Set(),
    pictures: new Set(),
    photos: new Set(),
  };
  const note = (list: keyof Resources, id: string) => {
    named[list].add(id);
    return id;
  };
  withResources(parts, note);
  const pictures = (design.pictures ?? []).filter(({ id }) => named.pictures.has(id));
  withResources(pictures, note);
  return {
    finishes: design.finishes.filter(({ id }) => named.finishes.has(id)),
    stocks: design.stocks.filter(({ id }) => named.stocks.has(id)),
    fonts: design.fonts.filter(({ id }) => named.fonts.has(id)),
    pictures,
    photos: (design.photos ?? []).filter(({ id }) => named.photos.has(id)),
  };
}
