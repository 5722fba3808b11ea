import { expect, it } from 'vitest';
import { finer } from '../../src/editor/control/finer.ts';
import { formatLength } from '../../src/measure/format.ts';
import { parseMeasure } from '../../src/measure/parse.ts';
import type { MeasureStyle } from '../../src/measure/style.ts';
import { inches } from '../../src/measure/units.ts';

const style = (fraction: MeasureStyle['fraction']): MeasureStyle => ({ unit: 'in', fraction });
const shown = (mm: number, fraction: MeasureStyle['fraction']) =>
  formatLength(mm, finer(mm, style(fraction)));

it('a field shows a kerf of 3/32 in as that, whatever a tape is read to', () => {
  expect(shown(inches(3 / 32), '16')).toBe('3/32"');
  expect(shown(inches(3 / 32), '8')).toBe('3/32"');
  expect(shown(inches(1 / 8), '16')).toBe('1/8"');
  expect(shown(inches(5 / 64), '32')).toBe('5/64"');
});

it('every small measure in sixty-fourths reads back as it was typed', () => {
  for (let n = 1; n < 64; n++) {
    const read = parseMeasure(shown(inches(n / 64), '16'), 'in');
    expect(read).toMatchObject({ ok: true });
    if (read.ok) expect(read.value).toBeCloseTo(inches(n / 64), 9);
  }
});

it('what no fraction is, and what is not small, is read as on the tape', () => {
  expect(shown(2.5, '16')).toBe('1/8" light');
  expect(shown(inches(12 + 3 / 32), '16')).toBe('12 1/8" light');
});
