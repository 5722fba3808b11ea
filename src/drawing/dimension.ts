import { add, angleOf, distance, leftNormal, midpoint, scale, subtract, unit } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import type { DrawItem } from './drawing.ts';
import { line, lines, text } from './items.ts';
import { DIMENSION, INK, WEIGHT } from './style.ts';
import { readable, textWidth } from './text.ts';

const THIN = { stroke: INK.line, width: WEIGHT.thin };

/**
 * A dimension between two points: extension lines, a line with oblique ticks, the figure above the line, or
 * beyond its far end where it is longer than the line. `away` is the distance of the dimension line from the
 * points, to the left of the direction from `from` to `to` when positive.
 */
export function dimension(from: Point, to: Point, away: Mm, words: string): DrawItem[] {
  const along = unit(subtract(to, from));
  const out = scale(leftNormal(along), Math.sign(away) || 1);
  const at = (p: Point, by: Mm) => add(p, scale(out, by));
  const reach = Math.abs(away);
  const [a, b] = [at(from, reach), at(to, reach)];
  const extensions = [from, to].map((p) => [at(p, DIMENSION.gap), at(p, reach + DIMENSION.past)] as const);
  const slope = scale(unit(add(along, leftNormal(along))), DIMENSION.tick / 2);
  const tick = (p: Point) =>
    line(subtract(p, slope), add(p, slope), { stroke: INK.line, width: WEIGHT.middle });
  const width = textWidth(words, { size: DIMENSION.text });
  const length = distance(a, b);
  const angle = readable(angleOf(along));
  const fits = width + 2 * DIMENSION.tick <= length;
  const middle = fits ? midpoint(a, b) : add(b, scale(along, width / 2 + DIMENSION.tick + 0.6));
  // Above the line as it is read.
  const turned = Math.abs(((angleOf(along) - angle) % 360) + 360) % 360 > 1;
  const up = scale(leftNormal(along), turned ? -1 : 1);
  const lift = fits ? 0.8 : -DIMENSION.text * 0.36;
  return [
    lines([...extensions, [a, b]], THIN),
    tick(a),
    tick(b),
    text(add(middle, scale(up, lift)), words, { size: DIMENSION.text, anchor: 'middle', angle }),
  ];
}
