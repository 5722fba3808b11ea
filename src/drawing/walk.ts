import type { Path, Point } from '../geometry/shape.ts';
import type { DrawItem, Drawing, PathItem, TextItem } from './drawing.ts';
import { textWidth } from './text.ts';
import {
  applied,
  appliedToPath,
  compose,
  growth,
  IDENTITY,
  type Matrix,
  matrixOf,
  turnAndMove,
} from './transform.ts';
import { CAP_HEIGHT, DESCENT } from './typeface.ts';

/** An item with every group's transformation done: coordinates of the drawing itself. */
export interface FlatPath {
  readonly item: PathItem;
  readonly path: Path;
  /** Line weight after scaling. */
  readonly width: number;
  readonly layer: string | null;
  /** Clips in force, in the drawing's coordinates, outermost first. */
  readonly clips: readonly Path[];
}

export interface FlatText {
  readonly item: TextItem;
  /** Maps text space (baseline along x from the anchor, letters up) to the drawing. */
  readonly matrix: Matrix;
  readonly layer: string | null;
  readonly clips: readonly Path[];
}

export interface Flat {
  readonly paths: readonly FlatPath[];
  readonly texts: readonly FlatText[];
}

/** Every path and text of a drawing in order, groups resolved. Pictures of pixels have none. */
export function flatten(items: Drawing['items']): Flat {
  const paths: FlatPath[] = [];
  const texts: FlatText[] = [];
  const visit = (item: DrawItem, m: Matrix, layer: string | null, clips: readonly Path[]): void => {
    if (item.kind === 'path') {
      const width = item.stroke === undefined ? 0 : (item.width ?? 0) * growth(m);
      paths.push({ item, path: appliedToPath(m, item.path), width, layer, clips });
    } else if (item.kind === 'text') {
      texts.push({ item, matrix: compose(m, turnAndMove(item.angle ?? 0, item.at)), layer, clips });
    } else if (item.kind === 'group') {
      const inner = compose(m, matrixOf(item));
      const inside = item.clip ? [...clips, appliedToPath(inner, item.clip)] : clips;
      for (const child of item.items) visit(child, inner, item.layer ?? layer, inside);
    }
  };
  for (const item of items) visit(item, IDENTITY, null, []);
  return { paths, texts };
}

/** A text with what maps its space to the drawing. */
type PlacedText = Pick<FlatText, 'item' | 'matrix'>;

/** Every text of a drawing in order, groups resolved; its paths are not looked at. */
export function textsOf(items: Drawing['items'], m: Matrix = IDENTITY): PlacedText[] {
  return items.flatMap((item) => {
    if (item.kind === 'group') return textsOf(item.items, compose(m, matrixOf(item)));
    if (item.kind !== 'text') return [];
    return [{ item, matrix: compose(m, turnAndMove(item.angle ?? 0, item.at)) }];
  });
}

/** Start of a text's baseline relative to its anchor. */
export function anchorShift(item: TextItem): number {
  if (item.anchor === 'start') return 0;
  const width = textWidth(item.text, item);
  return item.anchor === 'middle' ? -width / 2 : -width;
}

/** The four corners of a text, from below its descenders to the top of its capitals. */
export function textCorners({ item, matrix }: PlacedText): Point[] {
  const from = anchorShift(item);
  const to = from + textWidth(item.text, item);
  const low = -DESCENT * item.size;
  const high = CAP_HEIGHT * item.size;
  return [
    { x: from, y: low },
    { x: to, y: low },
    { x: to, y: high },
    { x: from, y: high },
  ].map((p) => applied(matrix, p));
}
