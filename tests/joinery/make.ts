import type { Joint } from '../../src/design/schema.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { Box, Point, Region } from '../../src/geometry/shape.ts';
import { type JoineryInput, planJoinery } from '../../src/joinery/joinery.ts';
import type { Joinery, Piece } from '../../src/joinery/piece.ts';
import type { KeptResults } from '../../src/layout/kept.ts';
import type { Laid, LaidPart, Leg } from '../../src/layout/laid.ts';
import type { FlatStock, ShapedStock, SheetStock, Stock } from '../../src/materials/types.ts';

export const flat = (id: string, width: number, thickness = 19): FlatStock => ({
  form: 'flat',
  id,
  name: id,
  material: 'pine',
  width,
  thickness,
  lengths: [{ length: 2440, price: 5 }],
});

export const shaped = (id: string, width: number, more: Partial<ShapedStock> = {}): ShapedStock => ({
  form: 'shaped',
  id,
  name: id,
  material: 'pine',
  width,
  thickness: 15,
  girth: width + 20,
  section: [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: 15 },
    { x: 10, y: 15 },
    { x: 0, y: 5 },
  ],
  lengths: [{ length: 2440, price: 9 }],
  ...more,
});

export const sheet = (id: string, grain = true): SheetStock => ({
  form: 'sheet',
  id,
  name: id,
  material: 'plywood',
  thickness: 6,
  grain,
  sizes: [{ length: 2440, width: 1220, price: 30 }],
});

const STOCKS: readonly Stock[] = [
  flat('lath', 50),
  flat('board', 89),
  flat('batten', 20, 10),
  shaped('casing', 60),
  sheet('ply'),
];

const SQUARE = { start: { cut: 'square' }, end: { cut: 'square' } } as const;

const base = (id: string, box: Box) => ({
  id,
  part: id,
  name: id,
  member: null,
  box,
  z0: 0,
  z1: 19,
  on: 'skin',
  finish: null,
  fixing: { how: 'brads', glue: true } as const,
});

type StripMore = Partial<Laid<'strip'>['spec']> & {
  readonly stock?: string;
  readonly z0?: number;
  readonly z1?: number;
  readonly part?: string;
};

/** A strip by its leg; its box is the leg's own, as layout makes it for turned strips. */
export function strip(
  id: string,
  start: Point,
  end: Point,
  width: number,
  more: StripMore = {},
): Laid<'strip'> {
  const { stock = 'lath', z0 = 0, z1 = 19, part = id, ...spec } = more;
  const leg = legFrom(start, end, width);
  const box = {
    x: Math.min(start.x, end.x),
    y: Math.min(start.y, end.y),
    w: Math.abs(end.x - start.x),
    h: Math.abs(end.y - start.y),
  };
  return {
    ...base(id, box),
    part,
    z0,
    z1,
    kind: 'strip',
    stock,
    leg,
    region: [{ outer: bandOf(leg), holes: [] }],
    spec: { lie: 'turned', onEdge: false, fit: false, ends: SQUARE, ...spec },
  };
}

/** A strip that fills an upright or level box, its lower left corner at (x, y). */
export function boxStrip(
  id: string,
  x: number,
  y: number,
  w: number,
  h: number,
  more: StripMore = {},
): Laid<'strip'> {
  const up = h > w;
  const laid = up
    ? strip(id, { x: x + w / 2, y }, { x: x + w / 2, y: y + h }, w, more)
    : strip(id, { x, y: y + h / 2 }, { x: x + w, y: y + h / 2 }, h, more);
  return { ...laid, box: { x, y, w, h }, spec: { ...laid.spec, lie: up ? 'up' : 'across' } };
}

/** A brace along a diagonal of its box. */
export function brace(
  id: string,
  lie: 'rising' | 'falling',
  box: Box,
  width: number,
  more: StripMore = {},
): Laid<'strip'> {
  const { x, y, w, h } = box;
  const [from, to] =
    lie === 'rising'
      ? [
          { x, y },
          { x: x + w, y: y + h },
        ]
      : [
          { x, y: y + h },
          { x: x + w, y },
        ];
  const laid = strip(id, from, to, width, more);
  return { ...laid, box, spec: { ...laid.spec, lie } };
}

export function legFrom(start: Point, end: Point, width: number): Leg {
  const angle = (Math.atan2(end.y - start.y, end.x - start.x) * 180) / Math.PI;
  return { start, end, width, thickness: 19, angle };
}

export function bandOf({ start, end, width }: Leg): Point[] {
  const l = Math.hypot(end.x - start.x, end.y - start.y);
  const n = { x: (-(end.y - start.y) / l) * (width / 2), y: ((end.x - start.x) / l) * (width / 2) };
  return [
    { x: start.x - n.x, y: start.y - n.y },
    { x: end.x - n.x, y: end.y - n.y },
    { x: end.x + n.x, y: end.y + n.y },
    { x: start.x + n.x, y: start.y + n.y },
  ];
}

type RunMore = Partial<Laid<'run'>['spec']> & { readonly stock?: string };

/** A run by the outer or inner path it follows, as layout lays it: center lines meet at the miters. */
export function run(
  id: string,
  points: readonly Point[],
  closed: boolean,
  width: number,
  more: RunMore = {},
): Laid<'run'> {
  const { stock = 'lath', ...spec } = more;
  const count = closed ? points.length : points.length - 1;
  const inside = (spec.side ?? 'inside') === 'inside';
  const legs = Array.from({ length: count }, (_, i) => {
    const a = points[i] as Point;
    const b = points[(i + 1) % points.length] as Point;
    const l = Math.hypot(b.x - a.x, b.y - a.y);
    const by = (inside ? width : -width) / 2;
    const n = { x: (-(b.y - a.y) / l) * by, y: ((b.x - a.x) / l) * by };
    const leg = legFrom({ x: a.x + n.x, y: a.y + n.y }, { x: b.x + n.x, y: b.y + n.y }, width);
    // Sill and stiles first and last: between them the segments of the head.
    const bowed = spec.path?.form === 'arched' && i > 1 && i < count - 1;
    return bowed ? { ...leg, bowed } : leg;
  });
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const box = {
    x: Math.min(...xs),
    y: Math.min(...ys),
    w: Math.max(...xs) - Math.min(...xs),
    h: Math.max(...ys) - Math.min(...ys),
  };
  return {
    ...base(id, box),
    kind: 'run',
    stock,
    legs,
    closed,
    region: [],
    spec: {
      ends: SQUARE,
      fit: false,
      corner: 'miter',
      side: 'inside',
      path: { form: 'points', points: [], closed },
      ...spec,
    },
  };
}

export const frame = (id: string, { x, y, w, h }: Box, width: number, more: RunMore = {}): Laid<'run'> =>
  run(
    id,
    [
      { x, y },
      { x: x + w, y },
      { x: x + w, y: y + h },
      { x, y: y + h },
    ],
    true,
    width,
    { path: { form: 'frame' }, ...more },
  );

export function panel(id: string, box: Box, more: Partial<Laid<'panel'>> = {}): Laid<'panel'> {
  return {
    ...base(id, box),
    kind: 'panel',
    stock: 'ply',
    z1: 6,
    region: regionOfBox(box),
    spec: { shape: { form: 'rectangle' }, openings: [], grain: 'up' },
    ...more,
  };
}

export interface Setup {
  readonly joints?: readonly Joint[];
  readonly stocks?: readonly Stock[];
  readonly measure?: JoineryInput['measure'];
  readonly shop?: JoineryInput['shop'];
}

export function plan(parts: readonly LaidPart[], setup: Setup = {}, kept?: KeptResults): Joinery {
  const input = {
    parts,
    joints: setup.joints ?? [],
    stocks: new Map([...STOCKS, ...(setup.stocks ?? [])].map((stock) => [stock.id, stock])),
    shop: setup.shop ?? { saw: { miter: 50, bevel: 45 }, fitAllowance: 12 },
    measure: setup.measure ?? { unit: 'mm', fraction: '16' },
  } as const;
  return planJoinery(input, kept);
}

export const joint = (parts: readonly [string, string], kind: Joint['kind'], through?: string): Joint => ({
  id: 'j',
  parts: [...parts],
  kind,
  ...(through === undefined ? {} : { through }),
});

/** The one piece of a part. */
export function pieceOf(joinery: Joinery, part: string): Piece {
  const own = joinery.pieces.filter((piece) => piece.part === part);
  const piece = own[0];
  if (!piece || own.length !== 1) throw new Error(`one piece of ${part} expected, found ${own.length}`);
  return piece;
}

/** The shorter of the two long edges; 0 where the cuts leave only one. */
export const shorterEdge = (piece: Piece | undefined): number =>
  piece ? Math.min(piece.edges.left ?? 0, piece.edges.right ?? 0) : Number.NaN;

export const piecesOf = (joinery: Joinery, part: string): Piece[] =>
  joinery.pieces.filter((piece) => piece.part === part);

export const regionOf = (pieces: readonly Piece[]): Region => pieces.flatMap((piece) => [...piece.placed]);
