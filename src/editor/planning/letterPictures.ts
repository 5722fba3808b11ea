import { fontsIn } from '../../design/look.ts';
import { isLettered } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import type { Region } from '../../geometry/shape.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { type Font, readFont } from '../../lettering/font.ts';
import { letter } from '../../lettering/letter.ts';
import { needsShaper } from '../../lettering/script.ts';
import type { Shaper } from '../../lettering/shaping/shape.ts';
import { sightOf } from '../../plan/signs.ts';

/** What is seen of one color of a sign's lettering, in the sign's coordinates. */
export interface LetterColor {
  readonly finish: string;
  readonly region: Region;
}

/**
 * The lettering of the signs among laid parts by the signs' ids, color by color from the back to the front, without
 * a plan around it. A sign in a font that is not to be had has none.
 */
export async function letterPictures(
  parts: readonly LaidPart[],
  drawn: Design['pictures'],
  bytesOf: (font: string) => Promise<Uint8Array | null>,
  shaperAtHand: () => Promise<Shaper | null>,
): Promise<ReadonlyMap<string, readonly LetterColor[]>> {
  const pictures = new Map<string, readonly LetterColor[]>();
  const lettered = parts.filter(isLettered);
  const shaper = needsShaper(lettered.map(({ lettering }) => lettering)) ? await shaperAtHand() : null;
  for (const part of lettered) {
    const { id, lettering, box } = part;
    const fonts = new Map<string, Font>();
    for (const name of fontsIn(lettering)) {
      const bytes = await bytesOf(name);
      const read = bytes ? readFont(bytes, name, shaper) : null;
      if (read?.ok) fonts.set(name, read.font);
    }
    const [font] = fonts.values();
    if (!font || fonts.size < fontsIn(lettering).length) continue;
    const sign = { id, w: box.w, h: box.h };
    const made = letter({
      lettering,
      font,
      fonts,
      pictures: drawn,
      sign,
      ...sightOf(part, parts),
    });
    pictures.set(
      id,
      made.lettered.layers.map(({ finish, region }) => ({ finish, region })),
    );
  }
  return pictures;
}
