import type { Design } from '../../design/schema.ts';
import { inches, type Mm } from '../../measure/units.ts';
import { toFace, type View } from '../state/store.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** Width of the ruler bands, in pixels. */
export const RULER = 22;

export interface RulerLook {
  readonly view: View;
  readonly width: number;
  readonly height: number;
  readonly unit: Design['measure']['unit'];
  readonly palette: Palette;
}

interface Tick {
  readonly mm: Mm;
  readonly label: string | null;
  /** 1 the longest. */
  readonly rank: number;
}

/** Marks along the upper and left edge, in the design's unit; on nothing, so that they can be laid over a mark. */
export function drawTicks(ctx: Pen, look: RulerLook): void {
  const { view, width, height, unit, palette } = look;
  ctx.strokeStyle = palette['ink-3'];
  ctx.fillStyle = palette['ink-2'];
  ctx.lineWidth = 1;
  ctx.font = '600 11px "Barlow Condensed", sans-serif';
  const low = toFace(view, { x: 0, y: height });
  const high = toFace(view, { x: width, y: 0 });
  ctx.beginPath();
  for (const tick of ticks(low.x, high.x, view.scale, unit)) {
    const x = Math.round(view.x + tick.mm * view.scale) + 0.5;
    if (x < RULER) continue;
    ctx.moveTo(x, RULER);
    ctx.lineTo(x, RULER - 11 / tick.rank);
    if (tick.label) ctx.fillText(tick.label, x + 3, 11);
  }
  for (const tick of ticks(low.y, high.y, view.scale, unit)) {
    const y = Math.round(view.y - tick.mm * view.scale) + 0.5;
    if (y < RULER) continue;
    ctx.moveTo(RULER, y);
    ctx.lineTo(RULER - 11 / tick.rank, y);
    if (tick.label) {
      ctx.save();
      ctx.translate(11, y - 3);
      ctx.rotate(-Math.PI / 2);
      ctx.fillText(tick.label, 0, 0);
      ctx.restore();
    }
  }
  ctx.stroke();
  ctx.fillStyle = palette.sheet;
  ctx.fillRect(0, 0, RULER, RULER);
  ctx.strokeStyle = palette.line;
  ctx.beginPath();
  ctx.moveTo(0, RULER + 0.5);
  ctx.lineTo(width, RULER + 0.5);
  ctx.moveTo(RULER + 0.5, 0);
  ctx.lineTo(RULER + 0.5, height);
  ctx.stroke();
}

const INCH_STEPS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 6, 12, 24, 60, 120];
const MM_STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

/** Ticks a person can tell apart: the least step that leaves 6 pixels, a label where there is room for it. */
function ticks(from: Mm, to: Mm, scale: number, unit: Design['measure']['unit']): Tick[] {
  const metric = unit === 'mm' || unit === 'cm';
  const steps = metric ? MM_STEPS : INCH_STEPS.map(inches);
  const step = steps.find((s) => s * scale >= 6) ?? steps[steps.length - 1] ?? 1000;
  const labelStep =
    steps.find((s) => s * scale >= 46 && isMultiple(s, step) && (metric || s >= inches(1))) ?? step * 10;
  const found: Tick[] = [];
  for (let n = Math.ceil(from / step); n * step <= to && found.length < 2000; n++) {
    const mm = n * step;
    const labeled = isMultiple(mm, labelStep);
    const half = isMultiple(mm, labelStep / 2);
    found.push({ mm, label: labeled ? tickText(mm, unit) : null, rank: labeled ? 1 : half ? 1.6 : 2.6 });
  }
  return found;
}

const isMultiple = (value: number, step: number) => Math.abs(value / step - Math.round(value / step)) < 1e-6;

function tickText(mm: Mm, unit: Design['measure']['unit']): string {
  if (unit === 'mm') return String(Math.round(mm));
  if (unit === 'cm') return String(Math.round(mm) / 10);
  const inch = Math.round((mm / inches(1)) * 16) / 16;
  if (unit === 'ft-in' && inch !== 0 && inch % 12 === 0) return `${inch / 12}\u2032`;
  return String(inch);
}
