import { ringsOfPath } from '../geometry/curve.ts';
import { boxOfPath } from '../geometry/path.ts';
import type { Ring } from '../geometry/shape.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Font } from './font.ts';
import type { Sized } from './sizes.ts';

/*
 * Spacing by eye: between any two letters stands as much white as between two straight stems. White counts between the
 * letters' own sides, over the height of the taller one, and no deeper into a letter than a share of the cap height: what
 * lies deeper belongs to the letter, as the inside of a C does. Common practice of sign painters, no source; the shares
 * are our own choice.
 */
const DEEPEST = 0.15;
/** However much white two letters bring, they come no nearer than this share of what stands between stems. */
const NEAREST = 0.4;
/** Levels at which sides are looked at. */
const LEVELS = 64;

/** Two straight stems, for capitals and figures, and for small letters. */
const STEMS = { tall: 'H', small: 'n' } as const;

/** How far the sides of a letter lie in from its ends at each level; infinite where it has no ink. */
interface Sides {
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** What is added to the advance of a letter of some font when another follows, in font units. */
export type KernOf = (left: Sized, right: Sized) => number;

/** As the font says. */
export const fontKern =
  (font: Font): KernOf =>
  (left, right) =>
    left.kerned ? left.kerned.by : font.kern(left.key, right.key);

/** By eye; letters that are written joined stay so. */
export function opticalKern(font: Font): KernOf {
  const deepest = DEEPEST * font.capHeight;
  const known = new Map<string, Sides>();
  const sidesOf = (character: string, top: number): Sides => {
    const key = `${character} ${top}`;
    const sides = known.get(key) ?? foundSides(font, character, top);
    known.set(key, sides);
    return sides;
  };
  const white = (sides: readonly number[]) =>
    sides.reduce((sum, depth) => sum + Math.min(depth, deepest), 0) / sides.length;
  /** White between two letters whose ends touch, and how far they may be pushed into each other before they touch. */
  const between = (left: string, right: string) => {
    const top = Math.max(topOf(font, left), topOf(font, right));
    const [a, b] = [sidesOf(left, top).right, sidesOf(right, top).left];
    return { white: white(a) + white(b), room: Math.min(...a.map((depth, i) => depth + pick(b, i))) };
  };
  const gapOf = (left: string, right: string) => {
    const [l, r] = [boxOfPath(font.outline(left)), boxOfPath(font.outline(right))];
    return font.advance(left) - l.x - l.w + r.x;
  };
  const stems = (stem: string) => gapOf(stem, stem) + between(stem, stem).white;
  const meant = (character: string) => stems(/\p{Ll}/u.test(character) ? STEMS.small : STEMS.tall);
  const inked = (key: string) => font.outline(key).length > 0;
  const spaced = ({ character, key, joined }: Sized) =>
    !joined && /[\p{L}\p{N}]/u.test(character) && inked(key);
  const hasStems = Object.values(STEMS).every(inked);
  const byFont = fontKern(font);
  return (left, right) => {
    if (!hasStems || !spaced(left) || !spaced(right)) return byFont(left, right);
    const own = (meant(left.character) + meant(right.character)) / 2;
    const { white, room } = between(left.key, right.key);
    return Math.max(own - white, NEAREST * own - room) - gapOf(left.key, right.key);
  };
}

const topOf = (font: Font, character: string): number => {
  const { y, h } = boxOfPath(font.outline(character));
  return Math.min(y + h, font.foot + font.capHeight);
};

/** Looked at between the foot of the capitals and `top`, in the middle of each level. */
function foundSides(font: Font, character: string, top: number): Sides {
  const rings = ringsOfPath(font.outline(character), font.capHeight / 1000);
  const { x, w } = boxOfPath(font.outline(character));
  const hits = Array.from({ length: LEVELS }, (_, i) =>
    crossings(rings, font.foot + ((i + 0.5) / LEVELS) * (top - font.foot)),
  );
  return {
    left: hits.map((at) => Math.min(...at) - x),
    right: hits.map((at) => x + w - Math.max(...at)),
  };
}

const crossings = (rings: readonly Ring[], y: number): number[] =>
  rings.flatMap((ring) =>
    ring.flatMap((a, i) => {
      const b = cyclic(ring, i + 1);
      return a.y <= y !== b.y <= y ? [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)] : [];
    }),
  );
