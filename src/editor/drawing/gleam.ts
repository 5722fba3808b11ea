import type { Design, Finish } from '../../design/schema.ts';
import { gleamOf } from '../../finish/sheen.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Pen } from './pen.ts';

type Sheen = Finish['sheen'];

/** The gleam of each sheen as the canvas paints it, made when it is first asked for. */
export function gleamsOn(ctx: Pen, light: Design['light'], face: Box) {
  const made = new Map<Sheen, CanvasGradient | null>();
  return (sheen: Sheen | null): CanvasGradient | null => {
    if (sheen === null) return null;
    const known = made.get(sheen);
    if (known !== undefined) return known;
    const gleam = gleamOf(sheen, light, face);
    let gradient: CanvasGradient | null = null;
    if (gleam) {
      gradient = ctx.createLinearGradient(gleam.from.x, gleam.from.y, gleam.to.x, gleam.to.y);
      for (const { at, alpha } of gleam.stops) gradient.addColorStop(at, `rgb(255 255 255 / ${alpha})`);
    }
    made.set(sheen, gradient);
    return gradient;
  };
}
