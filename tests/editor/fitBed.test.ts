import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openData } from '../../src/design/open.ts';
import { fitToBed } from '../../src/editor/edit/fitBed.ts';
import { STARTER_THEMES } from '../../src/editor/shipped/starters.ts';
import { inches } from '../../src/measure/units.ts';
import { faceFor, layoutOf } from './laid.ts';

const FOLDER = new URL('../../assets/starters/', import.meta.url);

function starter(file: string) {
  const opened = openData(JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')));
  if (!opened.ok) throw new Error(`${file} does not open`);
  return opened.design;
}

describe('the starters', () => {
  it('stand in one theme each', () => {
    const names = readdirSync(FOLDER).map((file) => file.replace('.json', ''));
    expect(Object.values(STARTER_THEMES).flat().sort()).toEqual(names.sort());
  });
});

describe('a starter on another bed', () => {
  const files = readdirSync(FOLDER);
  it.each(files)('%s keeps its rules and grows by as much as the bed does', (file) => {
    const design = starter(file);
    const { mattress, pivotAlong } = design.bed;
    const wider = { ...mattress, width: mattress.width + inches(2), length: mattress.length + inches(1) };
    const fitted = fitToBed(design, { mattress: wider, pivotAlong: null, measure: design.measure });
    const [before, after] = [faceFor(design.bed), faceFor(fitted.bed)];
    // The frame goes around the mattress: whatever the mattress gains, the face gains.
    const [across, up] = pivotAlong === 'end' ? [2, 1] : [1, 2];
    expect(after.width - before.width).toBeCloseTo(inches(across), 6);
    expect(after.height - before.height).toBeCloseTo(inches(up), 6);
    const layout = layoutOf(fitted);
    expect(layout.rules.filter((r) => !r.holds)).toEqual([]);
    // What was solved is written down: laying out again moves nothing.
    for (const part of fitted.parts) {
      const box = layout.boxes.get(part.id);
      for (const side of ['x', 'y', 'w', 'h'] as const)
        expect(part.box[side]).toBeCloseTo(box?.[side] ?? Number.NaN, 6);
    }
  });

  it('stays the same design on its own bed', () => {
    const design = starter('harbor-ticket-kiosk.json');
    const same = { mattress: design.bed.mattress, pivotAlong: null, measure: design.measure };
    expect(fitToBed(design, same).bed).toEqual(design.bed);
  });

  it('folds the other way only when asked', () => {
    const design = starter('orchard-barn-door.json');
    const { mattress } = design.bed;
    const ask = (pivotAlong: 'end' | null) =>
      fitToBed(design, { mattress, pivotAlong, measure: design.measure });
    expect(ask(null).bed.pivotAlong).toBe('side');
    expect(ask('end').bed.pivotAlong).toBe('end');
  });
});
