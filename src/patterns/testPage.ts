import type { DrawItem, Drawing } from '../drawing/drawing.ts';
import { lines, text } from '../drawing/items.ts';
import { INK, PATTERN_TEXT, WEIGHT } from '../drawing/style.ts';
import { wrapped } from '../drawing/text.ts';
import type { Point } from '../geometry/shape.ts';
import { formatReading } from '../measure/format.ts';
import { isInch } from '../measure/style.ts';
import { inches, MM_PER_INCH, type Mm } from '../measure/units.ts';
import { type PageSetup, sheetsOf } from './paper.ts';

/** Ticks of a ruler along the line from the origin to the right, as segments. */
function ticks(length: Mm, step: Mm, long: number, middle: number): [Point, Point][] {
  const count = Math.round(length / step);
  return Array.from({ length: count + 1 }, (_, i) => {
    const tall = i % long === 0 ? 6 : i % middle === 0 ? 4 : 2.4;
    return [
      { x: i * step, y: 0 },
      { x: i * step, y: tall },
    ];
  });
}

function ruler(length: Mm, inch: boolean, words: string): DrawItem[] {
  const marks = inch ? ticks(length, inches(1 / 8), 8, 4) : ticks(length, 1, 10, 5);
  const base: [Point, Point] = [
    { x: 0, y: 0 },
    { x: length, y: 0 },
  ];
  return [
    lines([...marks, base], { stroke: INK.line, width: WEIGHT.thin }),
    text({ x: length / 2, y: -5 }, words, { size: PATTERN_TEXT.body, anchor: 'middle' }),
  ];
}

/**
 * A page with a long ruler in each direction, drawn without correction: what a person reads on it, over its
 * length, is the printer's correction. Null when the paper has no room.
 */
export function testPage(
  setup: PageSetup,
): { readonly drawing: Drawing; readonly x: Mm; readonly y: Mm } | null {
  const sheet = sheetsOf({ ...setup, correction: { x: 1, y: 1 } }, { w: 200, h: 250 })[0];
  if (!sheet || sheet.turned) return null;
  const inch = isInch(setup.measure.unit);
  const unit = inch ? MM_PER_INCH : 10;
  const whole = (room: Mm, most: number) => Math.min(most, Math.floor(room / unit)) * unit;
  const edge = 22;
  const x = whole(sheet.room.w - edge - 8, inch ? 20 : 50);
  const y = whole(sheet.room.h - edge - 8, inch ? 20 : 50);
  const origin = { x: sheet.margin.left + edge, y: sheet.margin.bottom + edge };
  const told = (mm: Mm) => formatReading(mm, setup.measure);
  const body = wrapped(
    setup.words.test(x === y ? told(x) : `${told(x)} / ${told(y)}`).join('\n'),
    { size: PATTERN_TEXT.large },
    x - 24,
  );
  const top = origin.y + y - 14;
  return {
    x,
    y,
    drawing: {
      width: sheet.width,
      height: sheet.height,
      title: setup.words.testTitle,
      items: [
        { kind: 'group', move: origin, items: ruler(x, inch, setup.words.across(told(x))) },
        // Turned up, with the ticks to the right of its line.
        { kind: 'group', move: origin, turn: 90, scale: { x: 1, y: -1 }, items: ruler(y, inch, '') },
        text({ x: origin.x - 5, y: origin.y + y / 2 }, setup.words.up(told(y)), {
          anchor: 'middle',
          angle: 90,
        }),
        text({ x: origin.x + 18, y: top }, setup.words.testTitle, {
          size: PATTERN_TEXT.title * 0.8,
          bold: true,
        }),
        ...body.map((words, i) =>
          text({ x: origin.x + 18, y: top - 12 - i * 5.6 }, words, { size: PATTERN_TEXT.large }),
        ),
      ],
    },
  };
}
