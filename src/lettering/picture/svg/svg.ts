import { grownBox } from '../../../geometry/box.ts';
import { regionOfRings, stroked } from '../../../geometry/clip.ts';
import { flattenPath, ringsOfPath } from '../../../geometry/curve.ts';
import { boxOfPath, transformPath } from '../../../geometry/path.ts';
import { boxOf, ringsOf, transformRegion } from '../../../geometry/region.ts';
import { boxOfPoints } from '../../../geometry/ring.ts';
import type { Path, Region } from '../../../geometry/shape.ts';
import { type ColoredShape, type OpenedPicture, pictureOfShapes, WORKED_HEIGHT } from '../made.ts';
import { type Element, readMarkup } from './markup.ts';
import { applied, IDENTITY, type Matrix, matrixOf, times } from './matrix.ts';
import { lengthIn } from './numbers.ts';
import { badValue, PictureProblem, type PictureReason, tooMuch, unsafe, unsupported } from './problem.ts';
import { SHAPES } from './shapes.ts';
import { isShown, paintOf, type Style, styled, styleOf, styleRules } from './style.ts';

export type ReadPicture =
  | { readonly ok: true; readonly picture: OpenedPicture }
  | { readonly ok: false; readonly reason: PictureReason };

/** Characters of a file: what draws one picture stays far below. */
export const MOST_SVG = 2_000_000;
const MOST_SHAPES = 5000;
const MOST_COMMANDS = 100_000;
const MOST_CORNERS = 400_000;

/** A shape as it is drawn, in its own coordinates, and how those lie in the picture. */
interface Drawn {
  readonly path: Path;
  readonly matrix: Matrix;
  readonly style: Style;
}

/**
 * Reads an SVG file as outlines by color. Never throws and never works longer than limits allow: what runs, leads
 * elsewhere or brings other files is refused, and so is what would look otherwise than it would be painted.
 */
export function readSvg(text: string): ReadPicture {
  try {
    if (text.length > MOST_SVG) throw new PictureProblem({ code: 'too-big', most: MOST_SVG });
    const root = readMarkup(text.replace(/^\uFEFF/, '').trim());
    if (local(root.name) !== 'svg') throw new PictureProblem({ code: 'not-svg' });
    checkSafe(root);
    const drawn = drawnIn(root);
    return { ok: true, picture: pictureOfShapes(shapesOf(drawn)) };
  } catch (error) {
    const reason: PictureReason =
      error instanceof PictureProblem
        ? error.reason
        : { code: error instanceof RangeError ? 'too-much' : 'not-svg' };
    return { ok: false, reason };
  }
}

const local = (name: string): string => name.replace(/^svg:/, '');

/** Elements that run, lead elsewhere or hold other files. */
const UNSAFE = new Set([
  ...[
    'script',
    'foreignObject',
    'image',
    'feImage',
    'a',
    'iframe',
    'object',
    'embed',
    'audio',
    'video',
    'canvas',
  ],
  ...[
    'handler',
    'listener',
    'set',
    'animate',
    'animateColor',
    'animateMotion',
    'animateTransform',
    'discard',
  ],
  ...[
    'font-face',
    'font-face-src',
    'font-face-uri',
    'link',
    'meta',
    'base',
    'color-profile',
    'cursor',
    'tref',
  ],
]);

/** All elements and attributes, shown or not: a file that holds something to run is not trusted at all. */
function checkSafe({ name, attributes, children }: Element): void {
  if (UNSAFE.has(local(name)) || /^(html|xhtml|h):/.test(name)) unsafe(`<${name}>`);
  for (const [key, value] of attributes) {
    if (/^on/i.test(key) || /^xml:base$/i.test(key)) unsafe(key);
    if (/(^|:)(href|src)$/i.test(key) && !value.startsWith('#')) unsafe(`${key}="${value}"`);
    if (/url\s*\(\s*['"]?\s*[^#'"\s]/i.test(value) || /(java|vb)script:|data:|@import/i.test(value))
      unsafe(value);
  }
  children.forEach(checkSafe);
}

/** What draws nothing by itself. */
const SILENT = new Set(['title', 'desc', 'metadata', 'style', 'defs', 'symbol', 'view']);
const GROUPS = new Set(['g', 'svg']);

function drawnIn(root: Element): Drawn[] {
  const sheets: string[] = [];
  const collect = ({ name, text, children }: Element) => {
    if (local(name) === 'style') sheets.push(text);
    children.forEach(collect);
  };
  collect(root);
  const rules = styleRules(sheets.join('\n'));
  const drawn: Drawn[] = [];
  let commands = 0;
  const walk = (element: Element, outer: Style, around: Matrix) => {
    const name = local(element.name);
    // Programs keep notes of their own under names of their own.
    if (SILENT.has(name) || name.includes(':')) return;
    const style = styleOf(element, outer, rules);
    if (!isShown(style) && style.get('display') === 'none') return;
    const own = element.attributes.get('transform');
    const matrix = own === undefined ? around : times(around, matrixOf(own));
    if (GROUPS.has(name)) {
      if (name === 'svg' && element !== root) unsupported('<svg>');
      for (const child of element.children) walk(child, style, matrix);
      return;
    }
    const shape = SHAPES.get(name);
    if (!shape) return unsupported(`<${name}>`);
    if (!isShown(style)) return;
    const path = shape(element.attributes);
    commands += path.length;
    if (commands > MOST_COMMANDS || drawn.length >= MOST_SHAPES) tooMuch();
    if (path.length > 1) drawn.push({ path, matrix, style });
  };
  walk(root, new Map(), IDENTITY);
  return drawn;
}

/** The regions of the shapes, scaled so that what is drawn is about as high as regions are worked at, y up. */
function shapesOf(drawn: readonly Drawn[]): ColoredShape[] {
  const boxes = drawn.map(({ path, matrix, style }) =>
    grownBox(boxOfPath(transformPath(path, (p) => applied(matrix, p))), strokeOf(style) * stretchOf(matrix)),
  );
  const corners = boxes.flatMap(({ x, y, w, h }) => [
    { x, y },
    { x: x + w, y: y + h },
  ]);
  if (corners.length === 0) throw new PictureProblem({ code: 'nothing' });
  const { x, y, w, h } = boxOfPoints(corners);
  const size = Math.max(h, w / 100);
  if (!Number.isFinite(size + x + y) || size <= 0) return badValue('viewBox');
  const k = WORKED_HEIGHT / size;
  const onto: Matrix = [k, 0, 0, -k, -x * k, (y + h) * k];
  let count = 0;
  return drawn.flatMap(({ path, matrix, style }): ColoredShape[] => {
    const all = times(onto, matrix);
    const shapes = [
      { color: paintOf(style, 'fill'), region: () => filled(path, all, style) },
      { color: paintOf(style, 'stroke'), region: () => lined(path, all, style) },
    ];
    return shapes.flatMap(({ color, region }): ColoredShape[] => {
      if (color === null) return [];
      const covered = region();
      count += covered.reduce((sum, { outer, holes }) => sum + outer.length + holes.flat().length, 0);
      if (count > MOST_CORNERS) tooMuch();
      return covered.length === 0 || !boxOf(covered) ? [] : [{ color, region: covered }];
    });
  });
}

/** How much longer things become, along and across taken together. */
const stretchOf = ([a, b, c, d]: Matrix): number => Math.sqrt(Math.abs(a * d - b * c));

/** How far a line reaches to a side. */
const strokeOf = (style: Style): number =>
  paintOf(style, 'stroke') === null ? 0 : Math.max(0, lengthIn(style.get('stroke-width'), 1)) / 2;

function filled(path: Path, matrix: Matrix, style: Style): Region {
  const rule = style.get('fill-rule') === 'evenodd' ? 'evenodd' : 'nonzero';
  return regionOfRings(ringsOfPath(transformPath(path, (p) => applied(matrix, p))), rule);
}

const oneOf = <T extends string>(value: string | undefined, of: readonly T[], usual: T): T =>
  of.find((one) => one === value) ?? usual;

/** A line is as wide as its own coordinates tell, which may be turned and drawn out. */
function lined(path: Path, matrix: Matrix, style: Style): Region {
  if (styled(style, 'stroke-dasharray') !== 'none') unsupported('stroke-dasharray');
  const width = lengthIn(style.get('stroke-width'), 1);
  const k = stretchOf(matrix);
  if (!(k > 0) || width <= 0) return [];
  const lines = flattenPath(transformPath(path, ({ x, y }) => ({ x: x * k, y: y * k })));
  const look = {
    width: width * k,
    join: oneOf(style.get('stroke-linejoin'), ['round', 'miter', 'bevel'], 'miter'),
    cap: oneOf(style.get('stroke-linecap'), ['butt', 'round', 'square'], 'butt'),
    miterLimit: lengthIn(style.get('stroke-miterlimit'), 4),
  };
  const back = times(matrix, [1 / k, 0, 0, 1 / k, 0, 0]);
  const drawn = transformRegion(stroked(lines, look), (p) => applied(back, p));
  // A mirror turns rings about.
  return regionOfRings(ringsOf(drawn), 'evenodd');
}
