import { inches, type Mm } from '../measure/units.ts';
import type { DrawItem } from './drawing.ts';
import { rectangle, text } from './items.ts';
import { INK, TEXT, WEIGHT } from './style.ts';

/** Reductions that drawings are made at, from the largest drawing to the smallest. */
export const SCALES = [
  1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 20, 24, 25, 30, 32, 40, 48, 50, 60, 75, 100,
] as const;

/** Largest scale of the series at which something of this size fits, as the number under 1. */
export function scaleFor(size: { w: Mm; h: Mm }, room: { w: Mm; h: Mm }): number {
  const needed = Math.max(size.w / room.w, size.h / room.h);
  return SCALES.find((s) => s >= needed - 1e-9) ?? Math.ceil(needed / 10) * 10;
}

/** Whole steps that a bar of about 40 mm of paper can be divided in. */
const STEPS = { mm: [10, 20, 50, 100, 200, 250, 500, 1000], in: [1, 2, 3, 6, 12, 24, 36] } as const;

/** A bar of four steps, dark and light in turn, with its lower left corner at the origin; about 45 mm long. */
export function scaleBar(scale: number, unit: 'mm' | 'in'): DrawItem[] {
  const mm = (step: number) => (unit === 'in' ? inches(step) : step);
  const steps = STEPS[unit];
  const step = steps.find((s) => mm(s) / scale >= 8) ?? steps[steps.length - 1] ?? 1;
  const long = mm(step) / scale;
  const items: DrawItem[] = [];
  for (let i = 0; i < 4; i++) {
    const box = { x: i * long, y: 0, w: long, h: 1.4 };
    const dark = i % 2 === 0;
    items.push(rectangle(box, { stroke: INK.line, width: WEIGHT.hair, fill: dark ? INK.line : INK.paper }));
    items.push(text({ x: i * long, y: 2.2 }, String(i * step), { size: TEXT.note, anchor: 'middle' }));
  }
  items.push(text({ x: 4 * long, y: 2.2 }, `${4 * step} ${unit}`, { size: TEXT.note, anchor: 'middle' }));
  return items;
}
