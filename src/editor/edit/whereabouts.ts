import { eachOf, isBars } from '../../design/made.ts';
import { isClosed } from '../../design/path.ts';
import type { Axis, Part } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { AXES, middle, sizeOf, spanOf, startOf } from '../../layout/span.ts';

/** What a part is called by what it is. */
export const NOUNS = [
  'rail',
  'stile',
  'brace',
  'strip',
  'frame',
  'border',
  'trim',
  'panel',
  'door',
  'sign',
  'fitting',
  'painted',
  'lettering',
  'battens',
  'row',
  'fill',
] as const;
export type Noun = (typeof NOUNS)[number];

/** Where something lies along an axis of what it lies in; null: all along it. */
export type Place = 'low' | 'mid' | 'high' | null;
export type Whereabouts = Readonly<Record<Axis, Place>>;

/** A share of a length from which on a part takes up all of it. Common practice, no source. */
const ALL = 0.8;
/** A center this near to the middle, as a share of the length, is in the middle. Common practice, no source. */
const NEAR = 0.1;
/** An upright panel over this share of the face's height reads as a door. Common practice, no source. */
const DOOR = 0.4;

/** How far the middle of a box is from the middle of another, as a share of that one's size. */
const offset = (box: Box, within: Box, axis: Axis): number =>
  (middle(spanOf(box, axis)) - middle(spanOf(within, axis))) / sizeOf(within, axis);

const spans = (box: Box, within: Box, axis: Axis): boolean => sizeOf(box, axis) >= ALL * sizeOf(within, axis);

/** Where a box is within another, by its middle. */
export function whereIn(box: Box, within: Box): Whereabouts {
  const along = (axis: Axis): Place => {
    if (spans(box, within, axis)) return null;
    const off = offset(box, within, axis);
    return Math.abs(off) <= NEAR ? 'mid' : off < 0 ? 'low' : 'high';
  };
  return { x: along('x'), y: along('y') };
}

/** The axis whose place tells a part from its like: a bar's across it, else that along which it is farther out. */
export function tellingAxis(part: Part, noun: Noun, box: Box, within: Box): Axis {
  if (noun === 'door') return 'x';
  if (part.kind === 'strip' && part.lie === 'across') return 'y';
  if (part.kind === 'strip' && part.lie === 'up') return 'x';
  const [x, y] = AXES.map((axis) => (spans(box, within, axis) ? -1 : Math.abs(offset(box, within, axis))));
  return (x ?? 0) >= (y ?? 0) ? 'x' : 'y';
}

/** What a part is, by its kind, the way it runs, and how much of the face it takes up. */
export function nounOf(part: Part, box: Box, face: Box): Noun {
  switch (part.kind) {
    case 'strip':
      return STRIPS[part.lie];
    case 'run':
      if (!isClosed(part.path)) return 'trim';
      return AXES.every((axis) => spans(box, face, axis)) ? 'border' : 'frame';
    case 'panel':
      return box.h > box.w && box.h >= DOOR * face.h && !spans(box, face, 'x') ? 'door' : 'panel';
    case 'array':
      return isBars(eachOf(part)) ? 'battens' : 'row';
    default:
      return part.kind;
  }
}

const STRIPS = {
  across: 'rail',
  up: 'stile',
  rising: 'brace',
  falling: 'brace',
  turned: 'strip',
} as const satisfies Readonly<Record<Extract<Part, { kind: 'strip' }>['lie'], Noun>>;

/** Reading order: rows from the top down, and within a row from the left; rows to the millimeter. */
export const inReadingOrder = (a: Box, b: Box): number =>
  Math.round(middle(spanOf(b, 'y'))) - Math.round(middle(spanOf(a, 'y'))) ||
  startOf(a, 'x') - startOf(b, 'x');
