import { describe, expect, it } from 'vitest';
import type { OwnAssembly } from '../../src/design/assembly/own.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import { type Axis, type Design, designSchema, type Edge, type Rule } from '../../src/design/schema.ts';
import { boundsIn, type Shown, shownFrom } from '../../src/editor/document/shown.ts';
import { createOwn } from '../../src/editor/edit/own.ts';
import { ownOf } from '../../src/editor/edit/ownMake.ts';
import { surrounds } from '../../src/geometry/box.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { chanceOf, pick } from '../chance.ts';
import { SKINNED } from '../plan/assembly/made.ts';
import { STARTERS, starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

/** A face of one sheet, larger than any starter's, without anything. */
const WIDE: Design = {
  ...SKINNED,
  bed: { ...SKINNED.bed, mattress: { ...SKINNED.bed.mattress, width: 2400, length: 3400 }, ceiling: 5000 },
};
const FACE = shownFrom(WIDE).face;

/** What a person may select of the starters: every group, and what lies in any part with that part. */
function selections(): { name: string; shown: Shown; ids: readonly string[] }[] {
  return STARTERS.flatMap((name) => {
    const shown = shownFrom(starter(name));
    const { design, layout } = shown;
    const boxOf = (id: string) => layout.boxes.get(id);
    const within = design.parts.map(({ id }) =>
      design.parts
        .filter((part) => {
          const [outer, inner] = [boxOf(id), boxOf(part.id)];
          return outer !== undefined && inner !== undefined && surrounds(outer, inner, 1);
        })
        .map((part) => part.id),
    );
    return [...design.groups.map(({ parts }) => parts), ...within.filter((ids) => ids.length > 2)]
      .filter((ids) => ids.length <= 60)
      .map((ids) => ({ name, shown, ids }));
  });
}

/** An assembly on a face, held from its four sides. */
function insertedOn(design: Design, own: OwnAssembly, box: Box) {
  const made = createOwn(design, own, box);
  const { width, height } = shownFrom(design).face;
  const face = (side: Edge['side']): Edge => ({ of: 'face', side });
  const held = (axis: Axis, insetLow: number, insetHigh: number): Rule => ({
    ...{ id: `on-face-${axis}`, kind: 'between', axis, part: made.id, low: face('low'), high: face('high') },
    ...{ insetLow, insetHigh },
  });
  const along = (axis: Axis, low: number, high: number): Rule =>
    made.keeps?.[axis]
      ? {
          id: `on-face-${axis}`,
          kind: 'set',
          axis,
          edge: { of: made.id, side: 'low' },
          from: face('low'),
          distance: low,
        }
      : held(axis, low, high);
  const done = applyEdits(design, [
    ...made.edits,
    { kind: 'insert', list: 'rules', item: along('x', made.box.x, width - made.box.x - made.box.w) },
    { kind: 'insert', list: 'rules', item: along('y', made.box.y, height - made.box.y - made.box.h) },
  ]);
  if (!done.ok) throw new Error(JSON.stringify(done.problem));
  return { ...made, design: done.design, inverse: done.inverse, shown: shownFrom(done.design) };
}

const checked = ({ layout }: Shown) =>
  layout.checks.map(({ code, parts, figures }) => `${code} ${parts.join()} ${JSON.stringify(figures)}`);
const broken = ({ layout }: Shown) => layout.rules.filter((rule) => !rule.holds).map(({ id }) => id);

describe('an assembly of one’s own', () => {
  const all = selections();

  it('lies as it was where it is inserted with its own size, and in any other space without a check', () => {
    let spaces = 0;
    for (let seed = 0; seed < runs(8); seed++) {
      const chance = chanceOf(seed);
      const { name, shown, ids } = pick(all, chance);
      const own = ownOf(shown, ids, 'Mine');
      const told = `${seed} ${name} ${ids.join()}`;
      if (!own) throw new Error(told);
      const { across, up } = own;
      const before = insertedOn(WIDE, own, { x: 100, y: 100, w: across.size, h: up.size });
      expect(designSchema.safeParse(before.design).success, told).toBe(true);
      expect(broken(before.shown), told).toEqual([]);
      const known = checked(before.shown);
      expect(known, told).toEqual([]);
      for (let n = 0; n < 5; n++) {
        spaces++;
        const long = (size: number, least: number | null, most: number) =>
          least === null ? size : Math.min(most, least + (1.8 * size - least) * chance());
        const [w, h] = [long(across.size, across.least, FACE.width), long(up.size, up.least, FACE.height)];
        const box = { x: chance() * (FACE.width - w), y: chance() * (FACE.height - h), w, h };
        const at = `${told} ${JSON.stringify([box, across, up])}`;
        const { shown: there, design, id, inverse } = insertedOn(WIDE, own, box);
        expect(broken(there), at).toEqual([]);
        expect(checked(there), at).toEqual([]);
        const ground = boundsIn(there, id)?.box;
        expect(ground?.w, at).toBeCloseTo(w, 6);
        expect(ground?.h, at).toBeCloseTo(h, 6);
        const bed = { ...design.bed, mattress: { ...design.bed.mattress } };
        bed.mattress.width += 40 + chance() * 100;
        bed.mattress.length += chance() * 150;
        const later = shownFrom({ ...design, bed });
        expect(broken(later), `wider ${at}`).toEqual([]);
        expect(checked(later), `wider ${at}`).toEqual([]);
        const back = applyEdits(design, inverse);
        expect(back.ok && back.design, at).toEqual(WIDE);
      }
    }
    expect(spaces).toBeGreaterThanOrEqual(40);
  });

  it('lies part by part where it was selected', () => {
    for (const { name, shown, ids } of all.filter((_, i) => i % 9 === 0)) {
      const own = ownOf(shown, ids, 'Mine');
      const there = own && insertedOn(WIDE, own, { x: 50, y: 80, w: own.across.size, h: own.up.size });
      if (!there) throw new Error(name);
      const ground = boundsIn(there.shown, there.id)?.box;
      const parts = there.design.parts.map(({ id }) => there.shown.layout.boxes.get(id));
      const was = own.parts.map(({ id, box }) => shown.layout.boxes.get(id) ?? box);
      const [first] = was;
      const whole = own.parts.find(({ id }) => id === own.ground);
      expect(first && whole && ground, name).toBeTruthy();
      was.forEach((box, i) => {
        const is = parts[i];
        const from = was[own.parts.findIndex(({ id }) => id === own.ground)];
        const to = there.shown.layout.boxes.get(there.id);
        const told = `${name} ${ids.join()} ${own.parts[i]?.id}`;
        expect((is?.x ?? 0) - (to?.x ?? 0), told).toBeCloseTo(box.x - (from?.x ?? 0), 5);
        expect((is?.y ?? 0) - (to?.y ?? 0), told).toBeCloseTo(box.y - (from?.y ?? 0), 5);
        expect(is?.w, told).toBeCloseTo(box.w, 5);
        expect(is?.h, told).toBeCloseTo(box.h, 5);
      });
    }
  });
});
