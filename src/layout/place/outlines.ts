import type { PanelShape } from '../../design/schema.ts';
import {
  archedLoop,
  corneredLoop,
  ellipseLoop,
  quatrefoilLoop,
  regularLoop,
  ribbonLoop,
  scallopedLoop,
  shieldLoop,
  starLoop,
  wavedLoop,
  withinArch,
} from '../../geometry/figures.ts';
import { headedLoop } from '../../geometry/heads.ts';
import { type Loop, ringOfLoop, stretched } from '../../geometry/loop.ts';
import type { Box, Ring } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';

type Form = PanelShape['form'];
type Shape<F extends Form> = Extract<PanelShape, { form: F }>;
/** What is asked of a form beyond its box. */
type Asked<F extends Form> = Exclude<keyof Shape<F>, 'form' | 'toward'>;

/** How one of the measures of a form is asked for. */
export type Measure =
  | { readonly kind: 'length' }
  | { readonly kind: 'count'; readonly min: number; readonly max: number }
  | { readonly kind: 'share'; readonly min: number; readonly max: number }
  | { readonly kind: 'choice'; readonly among: readonly string[] };

/** Families in which the outlines are offered. */
export const FAMILIES = ['board', 'head', 'edge', 'figure'] as const;

interface Outline<F extends Form> {
  readonly family: (typeof FAMILIES)[number];
  /** The figure as it is at first in a box of this size. */
  readonly first: (box: Pick<Box, 'w' | 'h'>) => Shape<F>;
  readonly measures: { readonly [M in Asked<F>]: Measure };
  /** It looks up or down; this is the way that it is drawn. */
  readonly looks?: 'up' | 'down';
  /** It is set by its middle. */
  readonly middle?: true;
  /** Its borders, the outer one first, counterclockwise. */
  readonly loops: (box: Box, shape: Shape<F>) => readonly Loop[];
}

const LENGTH: Measure = { kind: 'length' };

type ByRise = Shape<'pointed' | 'basket' | 'elliptical'>;
type ByTwo = Shape<'four-centered' | 'ogee'>;

/** Rise of a head at first: a share of half the span, where the box has room. */
const firstRise = ({ w, h }: Pick<Box, 'w' | 'h'>, share: number) =>
  Math.max(1, Math.min((w / 2) * share, h));

/** A head that is asked for by its rise alone. */
const byRise = <S extends ByRise>(form: S['form'], share: number) => ({
  family: 'head' as const,
  first: (box: Pick<Box, 'w' | 'h'>) => ({ form, rise: firstRise(box, share) }) as S,
  measures: { rise: LENGTH },
  looks: 'up' as const,
  loops: (box: Box, { rise }: ByRise) => [headedLoop(form, box, rise)],
});

/** A head with lower arcs of a radius of their own, at first a share of half the span. */
const byTwo = <S extends ByTwo>(form: S['form'], share: number, radius: number) => ({
  family: 'head' as const,
  first: (box: Pick<Box, 'w' | 'h'>) =>
    ({ form, rise: firstRise(box, share), radius: Math.max(1, (box.w / 2) * radius) }) as S,
  measures: { rise: LENGTH, radius: LENGTH },
  looks: 'up' as const,
  loops: (box: Box, shape: ByTwo) => [headedLoop(form, box, shape.rise, shape.radius)],
});

type Edged = Shape<'scalloped' | 'waved'>;

/** A board whose lower edge is shaped, at first `count` times and to a share of its width. */
const edged = <S extends Edged>(
  form: S['form'],
  count: number,
  share: number,
  loop: (box: Box, count: number, depth: Mm) => Loop,
) => ({
  family: 'edge' as const,
  first: ({ w, h }: Pick<Box, 'w' | 'h'>) =>
    ({ form, count, depth: Math.max(1, Math.min(w * share, h / 2)), toward: 'down' }) as S,
  measures: { count: { kind: 'count', min: 1, max: 60 } as const, depth: LENGTH },
  looks: 'down' as const,
  loops: (box: Box, { count, depth }: Edged) => [loop(box, count, depth)],
});

const SIDES: Measure = { kind: 'count', min: 3, max: 24 };

/** Outlines that are told by their name and a few measures. A new one is a line here, one of the schema, and its words. */
export const OUTLINES: { readonly [F in Exclude<Form, 'rectangle' | 'polygon'>]: Outline<F> } = {
  corners: {
    family: 'board',
    first: ({ w, h }) => ({ form: 'corners', cut: 'rounded', size: Math.max(1, Math.min(w, h) / 6) }),
    measures: {
      cut: { kind: 'choice', among: ['rounded', 'coved', 'clipped', 'stepped'] },
      size: LENGTH,
    },
    loops: (box, { cut, size }) => [corneredLoop(box, cut, size)],
  },
  arched: {
    family: 'head',
    first: ({ w, h }) => ({ form: 'arched', rise: Math.max(1, Math.min(w / 2, h) / 2) }),
    measures: { rise: LENGTH },
    looks: 'up',
    loops: (box, { rise }) => [archedLoop(box, rise)],
  },
  // Struck from the springings: the span is the radius.
  pointed: byRise<Shape<'pointed'>>('pointed', Math.sqrt(3)),
  basket: byRise<Shape<'basket'>>('basket', 2 / 3),
  elliptical: byRise<Shape<'elliptical'>>('elliptical', 2 / 3),
  'four-centered': byTwo<Shape<'four-centered'>>('four-centered', 3 / 4, 1 / 2),
  ogee: byTwo<Shape<'ogee'>>('ogee', 5 / 3, 5 / 6),
  'arch-band': {
    family: 'head',
    first: ({ w, h }) => ({
      form: 'arch-band',
      rise: Math.max(1, Math.min(w / 2, h)),
      width: Math.max(1, Math.min(w, h) / 8),
    }),
    measures: { rise: LENGTH, width: LENGTH },
    looks: 'up',
    loops: (box, { rise, width }) => [archedLoop(box, rise), ...ringed(withinArch(box, rise, width))],
  },
  round: {
    family: 'figure',
    first: () => ({ form: 'round' }),
    measures: {},
    middle: true,
    loops: (box) => [ellipseLoop(box)],
  },
  ring: {
    family: 'figure',
    first: ({ w, h }) => ({ form: 'ring', width: Math.max(1, Math.min(w, h) / 6) }),
    measures: { width: LENGTH },
    middle: true,
    loops: (box, { width }) => [ellipseLoop(box), ...ringed(inset(box, width))],
  },
  regular: {
    family: 'figure',
    first: () => ({ form: 'regular', sides: 8 }),
    measures: { sides: SIDES },
    middle: true,
    loops: (box, { sides }) => [regularLoop(box, sides)],
  },
  star: {
    family: 'figure',
    first: () => ({ form: 'star', points: 5, waist: 0.45 }),
    measures: { points: SIDES, waist: { kind: 'share', min: 0.05, max: 0.95 } },
    middle: true,
    loops: (box, { points, waist }) => [starLoop(box, points, waist)],
  },
  quatrefoil: {
    family: 'figure',
    first: () => ({ form: 'quatrefoil' }),
    measures: {},
    middle: true,
    loops: (box) => [quatrefoilLoop(box)],
  },
  ribbon: {
    family: 'board',
    first: ({ w, h }) => ({ form: 'ribbon', notch: Math.max(1, Math.min(w / 4, h / 2)) }),
    measures: { notch: LENGTH },
    loops: (box, { notch }) => [ribbonLoop(box, notch)],
  },
  shield: {
    family: 'board',
    first: ({ w, h }) => ({ form: 'shield', point: Math.max(1, Math.min(w / 4, 0.6 * h)) }),
    measures: { point: LENGTH },
    loops: (box, { point }) => [shieldLoop(box, point)],
  },
  scalloped: edged<Shape<'scalloped'>>('scalloped', 6, 1 / 12, scallopedLoop),
  waved: edged<Shape<'waved'>>('waved', 4, 1 / 16, wavedLoop),
};

const ringed = (loop: Loop | null): Loop[] => (loop ? [loop] : []);

function inset(box: Box, width: Mm): Loop | null {
  const [w, h] = [box.w - 2 * width, box.h - 2 * width];
  return w > SAME_LENGTH && h > SAME_LENGTH
    ? ellipseLoop({ x: box.x + width, y: box.y + width, w, h })
    : null;
}

/** Upside down within the box, and still counterclockwise. */
const turned = (loop: Loop, box: Box): Loop =>
  stretched(loop, { x: { times: 1, plus: 0 }, y: { times: -1, plus: 2 * box.y + box.h } });

/** A shape that is told by its name, and not by its corners. */
export type NamedShape = Exclude<PanelShape, { form: 'rectangle' | 'polygon' }>;

/** An entry of the table, for what is asked of all alike. */
interface AnyOutline extends Pick<Outline<Form>, 'family' | 'looks' | 'middle'> {
  readonly first: (box: Pick<Box, 'w' | 'h'>) => NamedShape;
  readonly measures: Readonly<Record<string, Measure>>;
  readonly loops: (box: Box, shape: never) => readonly Loop[];
}

const ANY: Readonly<Record<NamedShape['form'], AnyOutline>> = OUTLINES;

/** The table's entry of a form. */
export const outlineOf = (form: NamedShape['form']): AnyOutline => ANY[form];

export const isNamed = (shape: PanelShape): shape is NamedShape =>
  shape.form !== 'rectangle' && shape.form !== 'polygon';

/** Which way a shape looks; null for one that is the same both ways. */
export function lookOf(shape: PanelShape): 'up' | 'down' | null {
  if (!isNamed(shape) || !outlineOf(shape.form).looks) return null;
  return ('toward' in shape && shape.toward) || 'up';
}

/** The borders of a named shape in its box, the outer one first. */
export function loopsOfNamed(shape: NamedShape, box: Box): readonly Loop[] {
  const { loops, looks } = outlineOf(shape.form);
  const drawn = loops(box, shape as never);
  return lookOf(shape) === (looks ?? null) ? drawn : drawn.map((loop) => turned(loop, box));
}

/** The same as polygons, whose corners tell the curves that they lie on. */
export const ringsOfNamed = (shape: NamedShape, box: Box): readonly Ring[] =>
  loopsOfNamed(shape, box).map((loop) => ringOfLoop(loop));

/** The shape looking the other way, up for down; as it is where it looks nowhere. */
export function upsideDown(shape: PanelShape): PanelShape {
  const look = lookOf(shape);
  if (look === null) return shape;
  const { toward: _, ...up } = { toward: undefined, ...shape };
  return (look === 'down' ? up : { ...up, toward: 'down' }) as PanelShape;
}

/** Whether a shape is set by its middle, as a clock is. */
export const hasMiddle = (shape: PanelShape): boolean =>
  isNamed(shape) && outlineOf(shape.form).middle === true;
