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
import { pick } from '../../list/at.ts';
import { color, factor, matrix, n, pathOperators } from './operators.ts';
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

/** Lines and fills are no text to read aloud (ISO 32000-1, 14.8.2.2). */
function pathItem(item: PathItem, names: Names): string[] {
  if (item.path.length === 0) return [];
  if (item.fade)
    return [
      'q',
      pathOperators(item.path),
      'W n',
      ...fadeItems(item.fade).flatMap((band) => pathItem(band, names)),
      'Q',
    ];
  const look: string[] = [];
  if (item.fill !== undefined) look.push(`${color(item.fill)} rg`);
  if (item.stroke !== undefined) {
    look.push(`${color(item.stroke)} RG`, `${n(item.width ?? 0)} w`);
    look.push(`[${(item.dash ?? []).map(n).join(' ')}] 0 d`, item.cap === 'round' ? '1 J' : '0 J');
  }
  const drawn = [...look, pathOperators(item.path), paintOperator(item)];
  const clear =
    item.fillOpacity === undefined || item.fillOpacity >= 1
      ? drawn
      : ['q', `/${names.opacity(item.fillOpacity)} gs`, ...drawn, 'Q'];
  return ['/Artifact BMC', ...clear, 'EMC'];
}

/** A picture fills the unit square, its lowest row at 0 (ISO 32000-1, 8.9.5.1). */
function imageItem({ raster, corners: [low, right, up] }: ImageItem, names: Names): string[] {
  const place = { a: right.x - low.x, b: right.y - low.y, c: up.x - low.x, d: up.y - low.y };
  const map = matrix({ ...place, e: low.x, f: low.y });
  return ['/Artifact BMC', 'q', `${map} cm`, `/${names.image(raster)} Do`, 'Q', 'EMC'];
}

function groupItem(group: GroupItem, names: Names, read: TextItem[]): string[] {
  const m = matrixOf(group);
  const open: string[] = [];
  if (!isIdentity(m)) open.push(`${matrix(m)} cm`);
  if (group.clip && group.clip.length > 0) open.push(pathOperators(group.clip), 'W n');
  const inside = group.items.flatMap((item) => drawItem(item, names, read));
  const body = open.length > 0 ? ['q', ...open, ...inside, 'Q'] : inside;
  return group.layer === undefined ? body : [`/OC /${names.layer(group.layer)} BDC`, ...body, 'EMC'];
}

function drawItem(item: DrawItem, names: Names, read: TextItem[]): string[] {
  if (item.kind === 'path') return pathItem(item, names);
  if (item.kind === 'group') return groupItem(item, names, read);
  if (item.kind === 'image') return imageItem(item, names);
  const drawn = textItem(item, names);
  if (drawn.length === 0) return [];
  return [`/${roleOf(item)} << /MCID ${read.push(item) - 1} >> BDC`, ...drawn, 'EMC'];
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
  const read: TextItem[] = [];
  const k = factor(POINTS_PER_MM);
  const drawn = items.flatMap((item) => drawItem(item, names, read));
  return { content: ['q', `${k} 0 0 ${k} 0 0 cm`, '1 j', ...drawn, 'Q'].join('\n'), read };
}
