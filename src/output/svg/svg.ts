import type {
  DrawItem,
  Drawing,
  Fade,
  GroupItem,
  ImageItem,
  PathItem,
  Raster,
  TextItem,
} from '../../drawing/drawing.ts';
import {
  applied,
  appliedToPath,
  compose,
  growth,
  type Matrix,
  matrixOf,
  matrixOfImage,
  turnAndMove,
} from '../../drawing/transform.ts';
import { type BowedPoint, radiusOfBow, withArcs } from '../../geometry/arcs.ts';
import type { Path, PathCommand, Point } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import { keptBy } from '../../list/keptBy.ts';
import type { Mm } from '../../measure/units.ts';
import { decimal } from '../number.ts';

/** A micrometer. */
const n = (value: number) => decimal(value, 3);

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** Text fit for XML 1.0, where most control characters may not stand at all. */
function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, ' ')
    .replace(/[&<>"]/g, (c) => ESCAPES[c] ?? c);
}

/** Each contour of a path by itself. */
function contoursOf(path: Path): Path[] {
  const contours: PathCommand[][] = [];
  for (const command of path) {
    if (command.op === 'M') contours.push([command]);
    else contours[contours.length - 1]?.push(command);
  }
  return contours;
}

function command(c: PathCommand): string {
  if (c.op === 'Z') return 'Z';
  if (c.op !== 'C') return `${c.op}${n(c.x)} ${n(c.y)}`;
  return `C${n(c.x1)} ${n(c.y1)} ${n(c.x2)} ${n(c.y2)} ${n(c.x)} ${n(c.y)}`;
}

/** A side, straight or bowed. Where y points down, what turns left turns as SVG counts angles. */
function side(from: BowedPoint, to: Point): string {
  if (from.bulge === 0) return `L${n(to.x)} ${n(to.y)}`;
  const radius = n(radiusOfBow(from, to, from.bulge));
  return `A${radius} ${radius} 0 0 ${from.bulge > 0 ? 1 : 0} ${n(to.x)} ${n(to.y)}`;
}

/** Contours with their arcs told as arcs; cubics stay what they are. */
function data(path: Path): string {
  return contoursOf(path)
    .map((contour) => {
      const points = contour.filter((c) => c.op === 'M' || c.op === 'L');
      const closed = contour[contour.length - 1]?.op === 'Z';
      if (points.length + (closed ? 1 : 0) < contour.length) return betweenCubics(contour);
      const bowed = withArcs(points, closed);
      const [first] = bowed;
      if (!first) return '';
      const last = bowed[bowed.length - 1] ?? first;
      const sides = bowed.slice(1).map((p, i) => side(pick(bowed, i), p));
      // A straight last side is drawn by closing.
      const back = closed ? (last.bulge === 0 ? 'Z' : `${side(last, first)}Z`) : '';
      return `M${n(first.x)} ${n(first.y)}${sides.join('')}${back}`;
    })
    .join('');
}

/** A contour with cubics in it: its sides between them with their arcs told as arcs. */
function betweenCubics(contour: Path): string {
  const [first] = contour;
  if (first?.op !== 'M') return '';
  let told = command(first);
  let straight: Point[] = [first];
  const tell = (closing: boolean) => {
    const bowed = withArcs(straight, false);
    // A straight last side is drawn by closing.
    const drawn = closing && bowed.at(-2)?.bulge === 0 ? bowed.slice(0, -1) : bowed;
    told += drawn
      .slice(1)
      .map((p, i) => side(pick(drawn, i), p))
      .join('');
  };
  for (const c of contour.slice(1)) {
    if (c.op === 'L') straight.push(c);
    else {
      if (c.op === 'Z') straight.push(first);
      tell(c.op === 'Z');
      told += command(c);
      straight = c.op === 'C' ? [c] : [first];
    }
  }
  tell(false);
  return told;
}

function pathElement(item: PathItem, m: Matrix, drawn: string, fill = item.fill ?? 'none'): string {
  const attributes = [`d="${drawn}"`, `fill="${fill}"`];
  if (item.fillRule === 'evenodd') attributes.push('fill-rule="evenodd"');
  if (item.fillOpacity !== undefined) attributes.push(`fill-opacity="${n(item.fillOpacity)}"`);
  if (item.stroke !== undefined) {
    const k = growth(m);
    attributes.push(`stroke="${item.stroke}"`, `stroke-width="${n((item.width ?? 0) * k)}"`);
    if (item.dash && item.dash.length > 0) {
      attributes.push(`stroke-dasharray="${item.dash.map((d) => n(d * k)).join(' ')}"`);
    }
    if (item.cap === 'round') attributes.push('stroke-linecap="round"');
  }
  return `<path ${attributes.join(' ')}/>`;
}

const matrixText = ({ a, b, c, d, e, f }: Matrix): string =>
  [a, b, c, d, e, f].map((v) => decimal(v, 6)).join(' ');

const ANCHOR = { start: 'start', middle: 'middle', end: 'end' } as const;

function textElement(item: TextItem, m: Matrix): string {
  // SVG text stands upright where y points down, so it is turned over once more.
  const upright: Matrix = { a: 1, b: 0, c: 0, d: -1, e: 0, f: 0 };
  const t = compose(compose(m, turnAndMove(item.angle ?? 0, item.at)), upright);
  const weight = item.bold ? ' font-weight="bold"' : '';
  const look = `font-size="${n(item.size)}" text-anchor="${ANCHOR[item.anchor]}" fill="${item.color}"${weight}`;
  return `<text transform="matrix(${matrixText(t)})" ${look} xml:space="preserve">${escaped(item.text)}</text>`;
}

/** Writes items, with every transformation done: a machine's software sees plain coordinates. */
class Writer {
  readonly definitions: string[] = [];
  private readonly images = new Map<Raster, string>();
  /** Areas are filled, clipped to and lined by the same path. */
  private readonly data = keptBy((m: Matrix) => keptBy((path: Path) => data(appliedToPath(m, path))));

  items(items: readonly DrawItem[], m: Matrix): string {
    return items
      .map((item) => this.item(item, m))
      .filter((element) => element !== '')
      .join('\n');
  }

  private item(item: DrawItem, m: Matrix): string {
    if (item.kind === 'path') {
      if (item.path.length === 0) return '';
      return pathElement(item, m, this.data(m)(item.path), item.fade && this.fade(item.fade, m));
    }
    if (item.kind === 'text') return textElement(item, m);
    return item.kind === 'image' ? this.image(item, m) : this.group(item, m);
  }

  /** A picture stands once among the definitions, however often it is shown. */
  private image({ raster, corners }: ImageItem, m: Matrix): string {
    const id = this.images.get(raster) ?? `image${this.definitions.length}`;
    if (!this.images.has(raster)) {
      this.images.set(raster, id);
      this.definitions.push(
        `<image id="${id}" width="1" height="1" preserveAspectRatio="none" ` +
          `href="data:${raster.type};base64,${raster.data}"/>`,
      );
    }
    return `<use href="#${id}" transform="matrix(${matrixText(compose(m, matrixOfImage(corners)))})"/>`;
  }

  /** Names a fade among the definitions, by which fills refer to it. */
  private fade({ from, to, stops }: Fade, m: Matrix): string {
    const id = `fade${this.definitions.length}`;
    const [a, b] = [applied(m, from), applied(m, to)];
    const told = stops.map(
      ({ at, alpha }) => `<stop offset="${n(at)}" stop-color="#ffffff" stop-opacity="${decimal(alpha, 4)}"/>`,
    );
    this.definitions.push(
      `<linearGradient id="${id}" gradientUnits="userSpaceOnUse" x1="${n(a.x)}" y1="${n(a.y)}" ` +
        `x2="${n(b.x)}" y2="${n(b.y)}">${told.join('')}</linearGradient>`,
    );
    return `url(#${id})`;
  }

  private group(group: GroupItem, m: Matrix): string {
    const { scale, turn, move } = group;
    const inner = scale || turn || move ? compose(m, matrixOf(group)) : m;
    const attributes: string[] = [];
    if (group.layer !== undefined) attributes.push(` data-layer="${escaped(group.layer)}"`);
    if (group.clip) {
      const id = `clip${this.definitions.length}`;
      this.definitions.push(`<clipPath id="${id}"><path d="${this.data(inner)(group.clip)}"/></clipPath>`);
      attributes.push(` clip-path="url(#${id})"`);
    }
    return `<g${attributes.join('')}>\n${this.items(group.items, inner)}\n</g>`;
  }
}

export interface SvgOptions {
  /** Largest distance of the drawing's lines from the true curves, where it is worth telling. */
  readonly tolerance?: Mm | undefined;
}

/**
 * A drawing as SVG in true size: user units are millimeters, layers are groups with `data-layer`.
 * y points down in SVG, so the drawing is turned over here.
 */
export function svgOf(drawing: Drawing, options: SvgOptions = {}): string {
  const { width, height } = drawing;
  const writer = new Writer();
  const body = writer.items(drawing.items, { a: 1, b: 0, c: 0, d: -1, e: 0, f: height });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" ` +
      `viewBox="0 0 ${n(width)} ${n(height)}" font-family="Barlow, Helvetica, Arial, sans-serif" stroke-linejoin="round">`,
    `<title>${escaped(drawing.title)}</title>`,
    ...(options.tolerance === undefined
      ? []
      : [
          `<!-- True size in millimeters; arcs are arcs, other curves polylines within ${n(options.tolerance)} mm. -->`,
        ]),
    ...(writer.definitions.length > 0 ? [`<defs>${writer.definitions.join('')}</defs>`] : []),
    body,
    '</svg>',
    '',
  ].join('\n');
}
