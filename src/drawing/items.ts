import { circlePath, pathOfBox } from '../geometry/path.ts';
import type { Box, Path, Point } from '../geometry/shape.ts';
import type { Deg, Mm } from '../measure/units.ts';
import type { Color, DrawItem, GroupItem, ImageItem, PathItem, Raster, TextItem } from './drawing.ts';
import { INK, TEXT, WEIGHT } from './style.ts';

export type PathLook = Omit<PathItem, 'kind' | 'path'>;

const THIN: PathLook = { stroke: INK.line, width: WEIGHT.thin };

/** A path drawn in the given look; the drafting thin line without one. */
export function shape(path: Path, look: PathLook = THIN): PathItem {
  return { kind: 'path', path, ...look };
}

export function line(a: Point, b: Point, look: PathLook = THIN): PathItem {
  return shape(
    [
      { op: 'M', x: a.x, y: a.y },
      { op: 'L', x: b.x, y: b.y },
    ],
    look,
  );
}

/** Many separate straight lines as one path: one color, one width, one operator in the files. */
export function lines(pairs: readonly (readonly [Point, Point])[], look: PathLook = THIN): PathItem {
  const path: Path = pairs.flatMap(([a, b]) => [
    { op: 'M' as const, x: a.x, y: a.y },
    { op: 'L' as const, x: b.x, y: b.y },
  ]);
  return shape(path, look);
}

type Pair = readonly [Point, Point];

/** Both diagonals of a box. */
export const diagonalsOf = ({ x, y, w, h }: Box): readonly [Pair, Pair] => {
  const [right, top] = [x + w, y + h];
  return [pairOf(x, y, right, top), pairOf(x, top, right, y)];
};

/** An upright cross about a point. */
export const crossAt = ({ x, y }: Point, arm: Mm): readonly [Pair, Pair] => [
  pairOf(x - arm, y, x + arm, y),
  pairOf(x, y - arm, x, y + arm),
];

const pairOf = (x1: Mm, y1: Mm, x2: Mm, y2: Mm): Pair => [
  { x: x1, y: y1 },
  { x: x2, y: y2 },
];

export function polyline(points: readonly Point[], closed: boolean, look: PathLook = THIN): PathItem {
  const path: Path = points.map((p, i) => ({
    op: i === 0 ? ('M' as const) : ('L' as const),
    x: p.x,
    y: p.y,
  }));
  return shape(closed ? [...path, { op: 'Z' }] : path, look);
}

export function rectangle(box: Box, look: PathLook = THIN): PathItem {
  return shape(pathOfBox(box), look);
}

export function circle(center: Point, radius: Mm, look: PathLook = THIN): PathItem {
  return shape(circlePath(center, radius), look);
}

/** A picture of pixels over a box. */
export const image = (raster: Raster, { x, y, w, h }: Box): ImageItem => ({
  kind: 'image',
  raster,
  corners: [
    { x, y },
    { x: x + w, y },
    { x, y: y + h },
  ],
});

export interface TextLook {
  readonly size?: Mm | undefined;
  readonly anchor?: TextItem['anchor'] | undefined;
  readonly angle?: Deg | undefined;
  readonly bold?: boolean | undefined;
  readonly color?: Color | undefined;
  readonly heading?: TextItem['heading'];
  readonly leadsTo?: string | undefined;
  readonly place?: string | undefined;
}

export function text(at: Point, words: string, look: TextLook = {}): TextItem {
  return {
    kind: 'text',
    at,
    text: words,
    size: look.size ?? TEXT.body,
    anchor: look.anchor ?? 'start',
    angle: look.angle,
    bold: look.bold,
    color: look.color ?? INK.line,
    heading: look.heading,
    leadsTo: look.leadsTo,
    place: look.place,
  };
}

export function layer(name: string, items: readonly DrawItem[]): GroupItem {
  return { kind: 'group', layer: name, items };
}

export function moved(by: Point, items: readonly DrawItem[]): GroupItem {
  return { kind: 'group', move: by, items };
}
