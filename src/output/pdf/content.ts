import type { Color, DrawItem, GroupItem, PathItem, TextItem } from '../../drawing/drawing.ts';
import { compose, isIdentity, type Matrix, matrixOf, turnAndMove } from '../../drawing/transform.ts';
import { anchorShift } from '../../drawing/walk.ts';
import { winAnsi } from '../../drawing/winansi.ts';
import type { Path } from '../../geometry/shape.ts';
import { decimal } from '../number.ts';

/** Points (1/72 in) in a millimeter: the default user unit of PDF (ISO 32000-1, 8.3.2.3). */
export const POINTS_PER_MM = 72 / 25.4;

/** What a page's content refers to by name. */
export interface Names {
  /** Resource name of a layer, such as `L0`. */
  layer(name: string): string;
  /** Resource name of a graphics state with this opacity of fills. */
  opacity(value: number): string;
}

/** Four decimals of a millimeter: a tenth of a micrometer. */
const n = (value: number) => decimal(value, 4);
/** Directions need more digits than places: 1e-7 over a 10 m drawing is a micrometer. */
const factor = (value: number) => decimal(value, 8);

function color(hex: Color): string {
  const channel = (at: number) => decimal(Number.parseInt(hex.slice(at, at + 2), 16) / 255, 3);
  return `${channel(1)} ${channel(3)} ${channel(5)}`;
}

function matrix(m: Matrix): string {
  return `${factor(m.a)} ${factor(m.b)} ${factor(m.c)} ${factor(m.d)} ${n(m.e)} ${n(m.f)}`;
}

function pathOperators(path: Path): string {
  const parts: string[] = [];
  for (const c of path) {
    if (c.op === 'Z') parts.push('h');
    else if (c.op === 'M') parts.push(`${n(c.x)} ${n(c.y)} m`);
    else if (c.op === 'L') parts.push(`${n(c.x)} ${n(c.y)} l`);
    else parts.push(`${n(c.x1)} ${n(c.y1)} ${n(c.x2)} ${n(c.y2)} ${n(c.x)} ${n(c.y)} c`);
  }
  return parts.join('\n');
}

function paintOperator(item: PathItem): string {
  const even = item.fillRule === 'evenodd' ? '*' : '';
  if (item.fill !== undefined && item.stroke !== undefined) return `B${even}`;
  if (item.fill !== undefined) return `f${even}`;
  return item.stroke !== undefined ? 'S' : 'n';
}

function pathItem(item: PathItem, names: Names): string[] {
  if (item.path.length === 0) return [];
  const look: string[] = [];
  if (item.fill !== undefined) look.push(`${color(item.fill)} rg`);
  if (item.stroke !== undefined) {
    look.push(`${color(item.stroke)} RG`, `${n(item.width ?? 0)} w`);
    look.push(`[${(item.dash ?? []).map(n).join(' ')}] 0 d`, item.cap === 'round' ? '1 J' : '0 J');
  }
  const drawn = [...look, pathOperators(item.path), paintOperator(item)];
  if (item.fillOpacity === undefined || item.fillOpacity >= 1) return drawn;
  return ['q', `/${names.opacity(item.fillOpacity)} gs`, ...drawn, 'Q'];
}

function textItem(item: TextItem): string[] {
  const codes = winAnsi(item.text);
  if (codes.length === 0) return [];
  const hex = codes.map((code) => code.toString(16).padStart(2, '0')).join('');
  const start = { a: 1, b: 0, c: 0, d: 1, e: anchorShift(item), f: 0 };
  const place = compose(turnAndMove(item.angle ?? 0, item.at), start);
  const font = item.bold ? 'F2' : 'F1';
  return [`BT ${color(item.color)} rg /${font} ${n(item.size)} Tf ${matrix(place)} Tm <${hex}> Tj ET`];
}

function groupItem(group: GroupItem, names: Names): string[] {
  const m = matrixOf(group);
  const open: string[] = [];
  if (!isIdentity(m)) open.push(`${matrix(m)} cm`);
  if (group.clip && group.clip.length > 0) open.push(pathOperators(group.clip), 'W n');
  const inside = group.items.flatMap((item) => drawItem(item, names));
  const body = open.length > 0 ? ['q', ...open, ...inside, 'Q'] : inside;
  return group.layer === undefined ? body : [`/OC /${names.layer(group.layer)} BDC`, ...body, 'EMC'];
}

function drawItem(item: DrawItem, names: Names): string[] {
  if (item.kind === 'path') return pathItem(item, names);
  return item.kind === 'text' ? textItem(item) : groupItem(item, names);
}

/** Content stream of a drawing: one scaling to millimeters, then millimeters throughout. Joins are round. */
export function contentOf(items: readonly DrawItem[], names: Names): string {
  const k = factor(POINTS_PER_MM);
  return ['q', `${k} 0 0 ${k} 0 0 cm`, '1 j', ...items.flatMap((item) => drawItem(item, names)), 'Q'].join(
    '\n',
  );
}
