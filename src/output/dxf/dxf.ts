import type { Drawing } from '../../drawing/drawing.ts';
import { outlinesOf } from '../../drawing/outline.ts';
import { type FlatText, flatten } from '../../drawing/walk.ts';
import { withArcs } from '../../geometry/arcs.ts';
import type { Contour } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/shape.ts';
import { at } from '../../list/at.ts';
import { degrees, type Mm } from '../../measure/units.ts';
import { decimal } from '../number.ts';
import { LayerNames } from './layers.ts';

export interface DxfOptions {
  /** Largest distance between a curve and the straight lines that stand for it. */
  readonly tolerance?: Mm | undefined;
}

const TOLERANCE: Mm = 0.005;

/** Places to a tenth of a micrometer. */
const n = (value: number) => decimal(value, 4);

const pair = (code: number, value: string | number) => `${String(code).padStart(3)}\n${value}\n`;

const section = (name: string, body: string) =>
  `${pair(0, 'SECTION')}${pair(2, name)}${body}${pair(0, 'ENDSEC')}`;

function lineEntity(a: Point, b: Point, layer: string): string {
  return [
    pair(0, 'LINE'),
    pair(8, layer),
    pair(10, n(a.x)) + pair(20, n(a.y)) + pair(30, 0),
    pair(11, n(b.x)) + pair(21, n(b.y)) + pair(31, 0),
  ].join('');
}

function polylineEntity({ points, closed }: Contour, layer: string): string {
  const vertices = withArcs(points, closed).map(
    (p) =>
      pair(0, 'VERTEX') +
      pair(8, layer) +
      (pair(10, n(p.x)) + pair(20, n(p.y)) + pair(30, 0)) +
      (p.bulge === 0 ? '' : pair(42, decimal(p.bulge, 9))),
  );
  return [
    pair(0, 'POLYLINE') + pair(8, layer) + pair(66, 1),
    pair(10, 0) + pair(20, 0) + pair(30, 0) + pair(70, closed ? 1 : 0),
    ...vertices,
    pair(0, 'SEQEND') + pair(8, layer),
  ].join('');
}

function outlineEntity(outline: Contour, layer: string): string {
  const [a, b] = outline.points;
  if (!a || !b) return '';
  return outline.points.length === 2 ? lineEntity(a, b, layer) : polylineEntity(outline, layer);
}

/** Plain ASCII; other characters by the code that readers of DXF understand. */
function ascii(text: string): string {
  return text
    .replace(/[\r\n]+/g, ' ')
    .replace(
      /[^\u0020-\u007e]/g,
      (c) => `\\U+${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    );
}

const JUSTIFY = { start: 0, middle: 1, end: 2 } as const;

function textEntity({ item, matrix }: FlatText, layer: string): string {
  const height = item.size * Math.hypot(matrix.c, matrix.d);
  const place = (base: number) => pair(base, n(matrix.e)) + pair(base + 10, n(matrix.f)) + pair(base + 20, 0);
  const justify = JUSTIFY[item.anchor];
  return [
    pair(0, 'TEXT') + pair(8, layer) + place(10),
    // Text height in DXF is the height of the capitals, about seven tenths of the em.
    pair(40, n(height * 0.7)) + pair(1, ascii(item.text)),
    pair(50, n(degrees(Math.atan2(matrix.b, matrix.a)))),
    justify === 0 ? '' : pair(72, justify) + place(11),
  ].join('');
}

function tables(layers: readonly string[]): string {
  const linetype = [
    pair(0, 'TABLE') + pair(2, 'LTYPE') + pair(70, 1),
    pair(0, 'LTYPE') + pair(2, 'CONTINUOUS') + pair(70, 0) + pair(3, 'Solid line'),
    pair(72, 65) + pair(73, 0) + pair(40, '0.0') + pair(0, 'ENDTAB'),
  ].join('');
  const layer = [
    pair(0, 'TABLE') + pair(2, 'LAYER') + pair(70, layers.length),
    ...layers.map(
      (name, i) =>
        pair(0, 'LAYER') + pair(2, name) + pair(70, 0) + pair(62, at(COLORS, i % 7)) + pair(6, 'CONTINUOUS'),
    ),
    pair(0, 'ENDTAB'),
  ].join('');
  return section('TABLES', linetype + layer);
}

/** The first seven colors of the format: white or black, red, blue, green, magenta, cyan, yellow. */
const COLORS = [7, 1, 5, 3, 6, 4, 2] as const;

/**
 * A drawing as DXF of release 12 (AC1009): only LINE, POLYLINE and TEXT, which every reader knows. Areas are
 * given by their closed outlines, arcs by the bulge of their side, other curves by lines within `tolerance`; beside a cut
 * a curve may be straight for one chord of the plan (`FLATNESS`). That release has no place to state a unit, so a comment at
 * the head says millimeters; files should say so in their name as well. Comments also tell which name each layer had that
 * could not keep it.
 */
export function dxfOf(drawing: Drawing, options: DxfOptions = {}): string {
  const tolerance = options.tolerance ?? TOLERANCE;
  const { paths, texts } = flatten(drawing.items);
  const names = new LayerNames();
  const entities = [
    ...paths.flatMap((flat) => {
      const layer = names.of(flat.layer);
      return outlinesOf(flat, tolerance).map((outline) => outlineEntity(outline, layer));
    }),
    ...texts.filter((t) => t.item.text !== '').map((t) => textEntity(t, names.of(t.layer))),
  ].join('');
  const comments = [
    ascii(drawing.title),
    'All lengths in millimeters, one drawing unit = 1 mm, drawn in true size.',
    `Arcs are arcs; other curves are polylines within ${tolerance} mm.`,
    ...names.changed.map(({ name, became }) => `Layer ${became} is named: ${ascii(name)}`),
  ].map((line) => pair(999, line));
  const header = [
    pair(9, '$ACADVER') + pair(1, 'AC1009'),
    pair(9, '$EXTMIN') + pair(10, 0) + pair(20, 0) + pair(30, 0),
    pair(9, '$EXTMAX') + pair(10, n(drawing.width)) + pair(20, n(drawing.height)) + pair(30, 0),
  ].join('');
  return [
    ...comments,
    section('HEADER', header),
    tables(names.all),
    section('BLOCKS', ''),
    section('ENTITIES', entities),
    pair(0, 'EOF'),
  ].join('');
}
