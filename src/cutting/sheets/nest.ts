import { intersect, offset } from '../../geometry/clip.ts';
import { areaOf, regionOfRing, translateRegion } from '../../geometry/region.ts';
import type { Point, Ring } from '../../geometry/shape.ts';
import type { Piece } from '../../joinery/piece.ts';
import { cyclic, pick } from '../../list/at.ts';
import { grouped } from '../../list/grouped.ts';
import type { Mm } from '../../measure/units.ts';
import type { CutSheet, SheetPlacement } from '../result.ts';
import { blank } from './stock.ts';

/** Pieces alike that lie in each other on one blank, each `pitch` over the one before. */
interface Nest {
  /** The blank as a piece to lay out; it has the id of the first one in it. */
  readonly whole: Piece;
  readonly pieces: readonly Piece[];
  readonly pitch: Mm;
}

/** Nested pieces keep a kerf between them, and as much more as the chords of their arcs stray. */
const SPARE: Mm = 0.1;

/** Outlines that differ by less are sawn alike. */
const ALIKE: Mm = 0.05;

/**
 * Pieces of a ring, and whatever else is sawn along its outline, nested where one lies in the hollow of the next: so
 * many to a blank as `fits` allows, the blanks as alike as can be. Those that gain nothing are in none.
 */
export function nestsOf(pieces: readonly Piece[], kerf: Mm, fits: (whole: Piece) => boolean): Nest[] {
  return [...grouped(pieces, ({ label }) => label).values()].flatMap((all) => {
    const [first] = all;
    const alike = all.filter((piece) => sameOutline(piece.outline, first.outline));
    const pitch = alike.length > 1 ? pitchOf(first, kerf) : null;
    if (pitch === null) return [];
    const { w, h } = blank(first);
    const wholeOf = (count: number): Piece => {
      const [length, width] = [w, h + (count - 1) * pitch];
      return { ...first, length, overall: length, width, shown: { ...first.shown, length, width } };
    };
    let most = alike.length;
    while (most > 1 && !fits(wholeOf(most))) most--;
    if (most < 2) return [];
    const blanks = Math.ceil(alike.length / most);
    return Array.from({ length: blanks }, (_, i): Nest => {
      const [from, to] = [i, i + 1].map((k) => Math.round((k * alike.length) / blanks)) as [number, number];
      const own = alike.slice(from, to);
      return { whole: { ...wholeOf(own.length), id: pick(own, 0).id }, pieces: own, pitch };
    }).filter((nest) => nest.pieces.length > 1);
  });
}

const sameOutline = (a: readonly Point[], b: readonly Point[]): boolean =>
  a.length === b.length &&
  a.every((p, i) => Math.abs(p.x - cyclic(b, i).x) < ALIKE && Math.abs(p.y - cyclic(b, i).y) < ALIKE);

/**
 * How far up a piece has to be moved to lie a kerf clear of itself; null where it is no nearer than beside it, or where
 * something of it reaches around itself.
 */
function pitchOf(piece: Piece, kerf: Mm): Mm | null {
  if (piece.holes.length > 0 || piece.margin > 0 || piece.ends.some(({ cut }) => cut !== 'sawn')) return null;
  const own = regionOfRing(piece.outline);
  const [around] = offset(own, kerf + SPARE, 'round');
  if (!around) return null;
  const xs = [...piece.outline, ...around.outer].map(({ x }) => x);
  // Between two corners of either both borders are straight: what is between them is most at one.
  const pitch = Math.max(
    ...xs.flatMap((x) => {
      const [low, high] = [heightsAt(piece.outline, x), heightsAt(around.outer, x)];
      return low && high ? [high.most - low.least] : [];
    }),
  );
  if (pitch >= blank(piece).h) return null;
  const clear = offset(own, kerf, 'round');
  return areaOf(intersect(clear, translateRegion(own, 0, pitch))) < 1 ? pitch : null;
}

/** Where an upright line leaves a ring below and above. */
function heightsAt(ring: Ring, x: Mm): { readonly least: Mm; readonly most: Mm } | null {
  const ys = ring.flatMap((p, i) => {
    const q = cyclic(ring, i + 1);
    if (Math.min(p.x, q.x) > x || Math.max(p.x, q.x) < x) return [];
    return p.x === q.x ? [p.y, q.y] : [p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x)];
  });
  return ys.length > 0 ? { least: Math.min(...ys), most: Math.max(...ys) } : null;
}

/** A sheet with the pieces of its nests in place of their blanks. */
export function unnested(sheet: CutSheet, nests: readonly Nest[]): CutSheet {
  const placements = sheet.placements.flatMap((place): SheetPlacement[] => {
    const nest = nests.find(({ whole }) => whole.id === place.piece);
    if (!nest) return [place];
    const { x, y, w, h } = place;
    return nest.pieces.map(({ id }, i) => {
      const by = i * nest.pitch;
      const own = blank(pick(nest.pieces, i));
      const at = place.turned ? { x: x + by, y, w: own.h, h: own.w } : { x, y: y + by, w: own.w, h: own.h };
      return { piece: id, ...at, turned: place.turned, from: { x, y, w, h } };
    });
  });
  return { ...sheet, placements };
}
