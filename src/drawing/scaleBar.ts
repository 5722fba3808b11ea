import { DUST } from '../geometry/tolerance.ts';
import { formatReading } from '../measure/format.ts';
import { inches, type Mm } from '../measure/units.ts';
import type { DrawItem } from './drawing.ts';
import { rectangle, text } from './items.ts';
import { INK, TEXT, WEIGHT } from './style.ts';

/**
 * Reductions that drawings are made at, from the largest drawing to the smallest: those of ISO 5455, and where people
 * measure in inches what an architect's scale has on its edges, 12 in to the foot down to 1/16 in (the trade's, from
 * memory): an inch rule divided in 8 or 16 reads them.
 */
const SCALES = {
  mm: [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000],
  in: [1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192],
} as const;

/** Largest scale of the unit's series at which something of this size fits, as the number under 1. */
export function scaleFor(size: { w: Mm; h: Mm }, room: { w: Mm; h: Mm }, unit: 'mm' | 'in'): number {
  const needed = Math.max(size.w / room.w, size.h / room.h);
  return SCALES[unit].find((s) => s >= needed - DUST) ?? Math.ceil(needed / 10) * 10;
}

const FRACTIONS = { unit: 'in', fraction: '32' } as const;

/** A scale as a sheet states it: `1:10` (ISO 5455), in inches `1 1/2" = 1'-0"`. */
export const scaleWords = (scale: number, unit: 'mm' | 'in'): string =>
  unit === 'mm' || scale === 1 ? `1:${scale}` : `${formatReading(inches(12 / scale), FRACTIONS)} = 1'-0"`;

/** Whole steps that a bar of about 40 mm of paper can be divided in. */
const STEPS = { mm: [10, 20, 50, 100, 200, 250, 500, 1000], in: [1, 2, 3, 6, 12, 24, 36] } as const;

/** A bar of up to four steps, dark and light in turn, no longer than `room`, its lower left corner at the origin. */
export function scaleBar(scale: number, unit: 'mm' | 'in', room: Mm): DrawItem[] {
  const mm = (step: number) => (unit === 'in' ? inches(step) : step) / scale;
  const step = STEPS[unit].find((s) => mm(s) >= 8) ?? STEPS[unit][STEPS[unit].length - 1] ?? 1;
  const long = mm(step);
  const count = Math.max(1, Math.min(4, Math.floor(room / long)));
  const items: DrawItem[] = [];
  for (let i = 0; i <= count; i++) {
    const words = i === count ? `${i * step} ${unit}` : String(i * step);
    items.push(text({ x: i * long, y: 2.2 }, words, { size: TEXT.note, anchor: 'middle' }));
    if (i === count) continue;
    const fill = i % 2 === 0 ? INK.line : INK.paper;
    const box = { x: i * long, y: 0, w: long, h: 1.4 };
    items.push(rectangle(box, { stroke: INK.line, width: WEIGHT.hair, fill }));
  }
  return items;
}
