import type {
  DrawItem,
  Fade,
  GroupItem,
  ImageItem,
  PathItem,
  Raster,
  TextItem,
} from '../../drawing/drawing.ts';
import { polyline } from '../../drawing/items.ts';
import { isIdentity, matrixOf } from '../../drawing/transform.ts';
import { add, distance, leftNormal, lerp, scale, subtract, unit } from '../../geometry/point.ts';
import type { Path } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import { factor, matrix, n } from './operators.ts';
import { type TextNames, textItem } from './text.ts';

/** Points (1/72 in) in a millimeter: the default user unit of PDF (ISO 32000-1, 8.3.2.3). */
export const POINTS_PER_MM = 72 / 25.4;

/** What a page's content refers to by name. */
export interface Names extends TextNames {
  /** Resource name of a layer, such as `L0`. */
  layer(name: string): string;
  /** Resource name of a graphics state with this opacity of fills. */
  opacity(value: number): string;
  /** Resource name of a picture of pixels. */
  image(raster: Raster): string;
  /** What constructs a path: areas are filled, clipped to and lined by the same one. */
  path(path: Path): string;
}

function paintOperator(item: PathItem): string {
  const even = item.fillRule === 'evenodd' ? '*' : '';
  if (item.fill !== undefined && item.stroke !== undefined) return `B${even}`;
  if (item.fill !== undefined) return `f${even}`;
  return item.stroke !== undefined ? 'S' : 'n';
}

/** How far the bands of a fade run on beside it, by its own length: over any page. */
const FAR = 20;

/**
 * A fade that is lightest in its middle as bands about it, each within the one before, that come to its alpha where they
 * lie over each other: no seams show, as they do between areas that only touch.
 */
function fadeItems({ from, to, stops }: Fade): PathItem[] {
  const beside = scale(leftNormal(unit(subtract(to, from))), distance(from, to) * FAR);
  const half = stops.slice(0, Math.floor(stops.length / 2));
  return half.map(({ at, alpha }, i) => {
    const next = pick(stops, i + 1);
    const share = (at + next.at) / 2;
    const [a, b] = [lerp(from, to, share), lerp(from, to, 1 - share)];
    const ring = [add(a, beside), subtract(a, beside), subtract(b, beside), add(b, beside)];
    return polyline(ring, true, { fill: '#ffffff', fillOpacity: 1 - (1 - next.alpha) / (1 - alpha) });
  });
}

/** Where operators go, line by line, and the texts among them in the order of their marks. */
interface Sink {
  readonly out: string[];
  readonly names: Names;
  readonly read: TextItem[];
}

/** Lines and fills are no text to read aloud (ISO 32000-1, 14.8.2.2). */
function pathItem(item: PathItem, to: Sink): void {
  const { out, names } = to;
  if (item.path.length === 0) return;
  if (item.fade) {
    out.push('q', names.path(item.path), 'W n');
    for (const band of fadeItems(item.fade)) pathItem(band, to);
    out.push('Q');
    return;
  }
  const clear = item.fillOpacity !== undefined && item.fillOpacity < 1;
  out.push('/Artifact BMC');
  if (clear) out.push('q', `/${names.opacity(item.fillOpacity)} gs`);
  if (item.fill !== undefined) out.push(`${names.color(item.fill)} rg`);
  if (item.stroke !== undefined) {
    out.push(`${names.color(item.stroke)} RG`, `${n(item.width ?? 0)} w`);
    out.push(`[${(item.dash ?? []).map(n).join(' ')}] 0 d`, item.cap === 'round' ? '1 J' : '0 J');
  }
  out.push(names.path(item.path), paintOperator(item));
  if (clear) out.push('Q');
  out.push('EMC');
}

/** A picture fills the unit square, its lowest row at 0 (ISO 32000-1, 8.9.5.1). */
function imageItem({ raster, corners: [low, right, up] }: ImageItem, { out, names }: Sink): void {
  const place = { a: right.x - low.x, b: right.y - low.y, c: up.x - low.x, d: up.y - low.y };
  const map = matrix({ ...place, e: low.x, f: low.y });
  out.push('/Artifact BMC', 'q', `${map} cm`, `/${names.image(raster)} Do`, 'Q', 'EMC');
}

function groupItem(group: GroupItem, to: Sink): void {
  const { out, names } = to;
  const m = matrixOf(group);
  const { clip, layer } = group;
  const moves = !isIdentity(m);
  const clips = clip && clip.length > 0;
  if (layer !== undefined) out.push(`/OC /${names.layer(layer)} BDC`);
  if (moves || clips) out.push('q');
  if (moves) out.push(`${matrix(m)} cm`);
  if (clips) out.push(names.path(clip), 'W n');
  for (const item of group.items) drawItem(item, to);
  if (moves || clips) out.push('Q');
  if (layer !== undefined) out.push('EMC');
}

function drawItem(item: DrawItem, to: Sink): void {
  if (item.kind === 'path') pathItem(item, to);
  else if (item.kind === 'group') groupItem(item, to);
  else if (item.kind === 'image') imageItem(item, to);
  else {
    const drawn = textItem(item, to.names);
    if (drawn.length === 0) return;
    to.out.push(`/${roleOf(item)} << /MCID ${to.read.push(item) - 1} >> BDC`, ...drawn, 'EMC');
  }
}

/** What a text is, as the tags of the file call it. */
export const roleOf = ({ heading }: TextItem): string => (heading === undefined ? 'P' : `H${heading}`);

/**
 * Content stream of a drawing: one scaling to millimeters, then millimeters throughout. Joins are round. `read` are
 * its texts in the order of their marks.
 */
export function contentOf(
  items: readonly DrawItem[],
  names: Names,
): { readonly content: string; readonly read: readonly TextItem[] } {
  const k = factor(POINTS_PER_MM);
  const to: Sink = { out: ['q', `${k} 0 0 ${k} 0 0 cm`, '1 j'], names, read: [] };
  for (const item of items) drawItem(item, to);
  to.out.push('Q');
  return { content: to.out.join('\n'), read: to.read };
}
