import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design, TapeRead } from '../../src/design/schema.ts';
import { copyOf } from '../../src/editor/edit/copy.ts';
import { readingEdits } from '../../src/editor/edit/reading.ts';
import { reflectPart } from '../../src/layout/arrange/reflect.ts';
import { inches } from '../../src/measure/units.ts';
import { planJson, planJsonSchema } from '../../src/output/json/planJson.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { styleIn } from '../../src/plan/words/languages.ts';
import { PLAN_WORDS } from '../../src/plan/words/tables.ts';
import { followWords, readWords } from '../../src/plan/words/tape.ts';
import { SUPPLIES, starter } from './starters.ts';

/** The barn's left door, its rails cut to fit between stiles that are 18 in apart as planned. */
const RAILS = ['left-bottom', 'left-top'];
const barn: Design = (() => {
  const design = starter('orchard-barn-door');
  const parts = design.parts.map((part) =>
    part.kind === 'strip' && RAILS.includes(part.id) ? { ...part, fit: true } : part,
  );
  return { ...design, parts };
})();
const QUARTER = inches(1 / 4);
const edge = { planned: inches(18), read: inches(18) + QUARTER };
const read: TapeRead = { left: edge, right: edge, slant: 'end', of: inches(18), moves: 'end' };
const done = applyEdits(barn, readingEdits(barn, 'left-bottom', read));
if (!done.ok) throw new Error('not applied');

const planner = createPlanner();
const before = planner(barn, SUPPLIES);
const after = planner(done.design, SUPPLIES);
const json = (plan: Plan): string => planJson(plan, { check: (c) => c.code, step: (s) => s.act });
const boxIn = (plan: Plan, id: string) => {
  const box = plan.layout.boxes.get(id);
  if (!box) throw new Error(`no ${id}`);
  return box;
};
const pieceIn = (plan: Plan, id: string) => {
  const piece = plan.joinery.pieces.find(({ part }) => part === id);
  if (!piece) throw new Error(`no piece of ${id}`);
  return piece;
};

// By hand: the opening is a quarter inch wider, so its right stile, what is held in its middle, and all that runs between
// the two stiles.
describe('a rail that was measured in place, through the plan', () => {
  it('is cut to what was read, and the other rail as long, with what is left on it', () => {
    expect(pieceIn(after, 'left-bottom').length).toBeCloseTo(inches(18) + QUARTER, 9);
    expect(pieceIn(after, 'left-top').length).toBeCloseTo(inches(18) + QUARTER + barn.shop.fitAllowance, 9);
    for (const { stock, length, cuts } of after.cutting.boards)
      for (const { from, to, piece } of cuts) {
        expect(to, `${stock} ${piece}`).toBeLessThanOrEqual(length + 1e-6);
        expect(to).toBeGreaterThan(from);
      }
    const cut = after.cutting.boards.flatMap(({ cuts }) => cuts).find(({ piece }) => piece === 'left-bottom');
    expect((cut?.to ?? 0) - (cut?.from ?? 0)).toBeCloseTo(inches(18) + QUARTER, 6);
  });

  it('moves what the stile holds and nothing else, the marks too', () => {
    const moved = { 'left-stile-b': [QUARTER, 0], 'left-pull': [QUARTER, 0] };
    const wider = ['left-bottom', 'left-top', 'left-brace'];
    for (const { id } of barn.parts) {
      const [was, is] = [boxIn(before, id), boxIn(after, id)];
      const [dx, dw] = id in moved ? [QUARTER, 0] : wider.includes(id) ? [0, QUARTER] : [0, 0];
      expect([is.x - was.x, is.w - was.w], id).toEqual([expect.closeTo(dx, 6), expect.closeTo(dw, 6)]);
      expect([is.y, is.h], id).toEqual([expect.closeTo(was.y, 9), expect.closeTo(was.h, 9)]);
    }
    expect(after.layout.read).toEqual([
      { part: 'left-bottom', followers: ['left-stile-b', 'left-top', 'left-brace', 'left-pull'] },
    ]);
    // Told from the left and the bottom edge of the face.
    const marksOf = (plan: Plan) =>
      plan.marks.marks.map((mark) => [`${mark.axis} ${mark.part} ${mark.edge}`, mark.at] as const);
    const was = new Map(marksOf(before));
    const seen = new Set<string>();
    for (const [key, at] of marksOf(after)) {
      const whole = /^x left-(stile-b|pull) /.test(key) || /^x left-(bottom|top|brace) high$/.test(key);
      const half = /^x left-(bottom|top|brace) mid$/.test(key);
      const by = whole ? QUARTER : half ? QUARTER / 2 : 0;
      expect(at - (was.get(key) ?? Number.NaN), key).toBeCloseTo(by, 6);
      if (by > 0) seen.add(key);
    }
    expect(seen.size).toBeGreaterThan(2);
  });

  it('is the same from a memory as from nothing, and undo takes all of it back', () => {
    expect(json(after)).toBe(json(createPlanner()(done.design, SUPPLIES)));
    const back = applyEdits(done.design, done.inverse);
    if (!back.ok) throw new Error('not undone');
    expect(back.design).toEqual(barn);
    expect(json(planner(back.design, SUPPLIES))).toBe(json(before));
    const taken = applyEdits(done.design, readingEdits(done.design, 'left-bottom', undefined));
    if (!taken.ok) throw new Error('not taken back');
    expect(json(planner(taken.design, SUPPLIES))).toBe(json(before));
  });

  it('stands in plan.json by its schema, and in the words of each language beside what was planned', () => {
    const file = JSON.parse(json(after));
    const holds = new Ajv2020({ keywords: ['unit'], strict: true, strictTuples: false }).compile(
      planJsonSchema(),
    );
    expect(holds(file), JSON.stringify(holds.errors)).toBe(true);
    const row = file.pieces.find(({ part }: { part: string }) => part === 'left-bottom');
    expect(row.fit).toEqual({
      ...{ in_place: true, allowance_mm: 0 },
      read: {
        left: { planned_mm: 457.2, read_mm: 463.55 },
        right: { planned_mm: 457.2, read_mm: 463.55 },
        slant: 'end',
        followers: ['left-stile-b', 'left-top', 'left-brace', 'left-pull'],
      },
    });
    const name = (id: string) => barn.parts.find((part) => part.id === id)?.name ?? '';
    for (const language of ['en', 'de', 'es'] as const) {
      const { tape } = PLAN_WORDS[language];
      const measure = styleIn(language, barn.measure);
      const told = readWords(pieceIn(after, 'left-bottom'), tape, measure);
      expect(told.match(/18 1\/4/g)).toHaveLength(2);
      expect(told.match(/\((planned|geplant|previsto) 18"\)/g)).toHaveLength(2);
      const follow = followWords('left-bottom', after.layout, tape, name);
      for (const id of ['left-stile-b', 'left-top', 'left-brace', 'left-pull'])
        expect(follow).toContain(name(id));
      expect(readWords(pieceIn(after, 'left-top'), tape, measure)).toBe('');
      expect(followWords('left-top', after.layout, tape, name)).toBe('');
    }
  });

  it('is of that piece alone: copies, and what is turned about, were not measured', () => {
    const { boxes } = after.layout;
    const copy = copyOf(done.design, boxes, ['left-bottom']).parts[0];
    expect(copy && 'read' in copy).toBe(false);
    const part = done.design.parts.find(({ id }) => id === 'left-bottom');
    expect(part && 'read' in part).toBe(true);
    expect(part && 'read' in reflectPart(part, 'x')).toBe(false);
  });

  it('of one in a row is kept for that one, and cuts it alone', () => {
    const parts = barn.parts.map((part) =>
      part.kind === 'array' && part.id === 'slats' && part.member.kind === 'strip'
        ? { ...part, member: { ...part.member, fit: true } }
        : part,
    );
    const slats = { ...barn, parts };
    const long = boxIn(before, 'slats').w;
    const one: TapeRead = { ...read, left: { planned: long, read: long - 3 }, of: long };
    const edits = readingEdits(slats, 'slats[0,1]', { ...one, right: one.left });
    const set = applyEdits(slats, edits);
    if (!set.ok) throw new Error('not applied');
    const lengths = planner(set.design, SUPPLIES)
      .joinery.pieces.filter(({ part }) => part.startsWith('slats['))
      .map(({ part, length }) => [part, Math.round((length - long) * 1000) / 1000]);
    expect(lengths.length).toBeGreaterThan(2);
    for (const [part, over] of lengths)
      expect(over).toBe(part === 'slats[0,1]' ? -3 : barn.shop.fitAllowance);
    const gone = applyEdits(set.design, readingEdits(set.design, 'slats[0,1]', undefined));
    expect(gone.ok && gone.design.parts).toEqual(slats.parts);
  });
});
