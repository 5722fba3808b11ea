import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Edit } from '../../src/design/edit/edit.ts';
import { editsToRemove } from '../../src/design/removal.ts';
import type { Design, Part, Rule } from '../../src/design/schema.ts';
import {
  type EditState,
  redo,
  redoLabel,
  startState,
  transact,
  undo,
  undoLabel,
} from '../../src/design/state.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { settled } from '../../src/layout/settle.ts';
import { planJson } from '../../src/output/json/planJson.ts';
import { createPlanner, type Planner } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { deviations } from '../layout/holds.ts';
import { runs } from '../runs.ts';
import { STARTERS, SUPPLIES, starter } from './starters.ts';

/** What a person does at the bench, as numbers; `pick` chooses among parts or rules of the design as it then is. */
type Deed =
  | { readonly do: 'nudge'; readonly pick: number; readonly dx: number; readonly dy: number }
  | { readonly do: 'add'; readonly x: number; readonly y: number; readonly name: number }
  | { readonly do: 'remove'; readonly pick: number }
  | { readonly do: 'drop-rule'; readonly pick: number }
  | { readonly do: 'bed'; readonly width: number; readonly length: number }
  | { readonly do: 'distance'; readonly pick: number; readonly by: number }
  | { readonly do: 'paint'; readonly pick: number; readonly finish: number }
  | { readonly do: 'letter'; readonly pick: number; readonly text: string }
  | { readonly do: 'also'; readonly also: Design['pages']['also'] };

const pick = fc.nat(1000);
const by = (most: number) => fc.integer({ min: -10 * most, max: 10 * most }).map((n) => n / 10);
const deed: fc.Arbitrary<Deed> = fc.oneof(
  fc.record({ do: fc.constant('nudge' as const), pick, dx: by(40), dy: by(40) }),
  fc.record({ do: fc.constant('add' as const), x: fc.nat(700), y: fc.nat(1500), name: fc.nat(9) }),
  fc.record({ do: fc.constant('remove' as const), pick }),
  fc.record({ do: fc.constant('drop-rule' as const), pick }),
  fc.record({ do: fc.constant('bed' as const), width: by(15), length: by(15) }),
  fc.record({ do: fc.constant('distance' as const), pick, by: by(12) }),
  fc.record({ do: fc.constant('paint' as const), pick, finish: pick }),
  fc.record({ do: fc.constant('letter' as const), pick, text: fc.stringMatching(/^[A-Z8&]{1,4}$/) }),
  fc.record({
    do: fc.constant('also' as const),
    also: fc.subarray<Design['pages']['also'][number]>(['story-sticks', 'parts', 'face', 'drilling']),
  }),
);

const chosen = <T>(from: readonly T[], n: number): T | undefined => from[n % Math.max(1, from.length)];
const replace = (item: Part): Edit => ({ kind: 'replace', list: 'parts', id: item.id, item });

function editsOf(design: Design, made: Deed): Edit[] {
  switch (made.do) {
    case 'nudge': {
      const part = chosen(design.parts, made.pick);
      return part
        ? [replace({ ...part, box: { ...part.box, x: part.box.x + made.dx, y: part.box.y + made.dy } })]
        : [];
    }
    case 'add': {
      const box = { x: made.x, y: made.y, w: 120, h: 38.1 };
      return [
        {
          kind: 'insert',
          list: 'parts',
          item: newPart('strip', { id: `added-${made.name}`, name: 'Added', box }),
        },
      ];
    }
    case 'remove': {
      const part = chosen(design.parts, made.pick);
      return part ? editsToRemove(design, [part.id]) : [];
    }
    case 'drop-rule': {
      const rule = chosen(design.rules, made.pick);
      return rule ? [{ kind: 'remove', list: 'rules', id: rule.id }] : [];
    }
    case 'bed': {
      const { mattress } = design.bed;
      const value = {
        ...mattress,
        width: mattress.width + made.width,
        length: mattress.length + made.length,
      };
      return [{ kind: 'set', field: 'bed', value: { ...design.bed, mattress: value } }];
    }
    case 'distance': {
      const rules = design.rules.filter((r): r is Extract<Rule, { kind: 'set' }> => r.kind === 'set');
      const rule = chosen(rules, made.pick);
      return rule
        ? [
            {
              kind: 'replace',
              list: 'rules',
              id: rule.id,
              item: { ...rule, distance: rule.distance + made.by },
            },
          ]
        : [];
    }
    case 'letter': {
      const sign = chosen(
        design.parts.filter((p) => p.kind === 'sign'),
        made.pick,
      );
      return sign
        ? [replace({ ...sign, lettering: { ...sign.lettering, lines: [{ text: made.text }] } })]
        : [];
    }
    case 'also':
      return [{ kind: 'set', field: 'pages', value: { ...design.pages, also: made.also } }];
    case 'paint': {
      const part = chosen(design.parts, made.pick);
      const finish = chosen(design.finishes, made.finish);
      return part && finish ? [replace({ ...part, finish: finish.id })] : [];
    }
  }
}

/** Few search steps: these tests ask whether plans follow, not how good the cutting is. */
const planned = (planner: Planner, design: Design): Plan =>
  planner(design, SUPPLIES, { effort: { nodes: 500 } });

/** Parts, arrays as a whole, and members of arrays, each by the name that a rule gives it. */
function boxesOf(plan: Plan): Map<string, Box> {
  return new Map([...plan.layout.parts.map((p) => [p.id, p.box] as const), ...plan.layout.boxes]);
}

/** Inside edges of the closed runs that lie inside of their path: a stock width within it all around. */
function innersOf(plan: Plan): Map<string, Box> {
  return new Map(
    plan.layout.parts.flatMap(({ id, kind, box, stock }) => {
      const found = plan.stocks.get(stock ?? '');
      if (kind !== 'run' || !found || found.form === 'sheet') return [];
      const by = found.width;
      return [[id, { x: box.x + by, y: box.y + by, w: box.w - 2 * by, h: box.h - 2 * by }] as const];
    }),
  );
}

/** Rules that are said to hold and do not, and those that do not hold and are not named. */
function faultsOf(plan: Plan): string[] {
  const boxes = boxesOf(plan);
  const inners = innersOf(plan);
  return plan.design.rules.flatMap((rule, i) => {
    const state = plan.layout.rules[i];
    if (state?.id !== rule.id) return [`${rule.id} has no state`];
    if (!state.holds) {
      const named = plan.checks.some((c) => c.code.startsWith('rule.') && c.figures.rule === rule.id);
      return named ? [] : [`${rule.id} does not hold and is not named`];
    }
    const worst = Math.max(0, ...deviations(rule, plan.face, boxes, inners).map(Math.abs));
    return worst <= 1e-6 ? [] : [`${rule.id} is said to hold and is off by ${worst}`];
  });
}

const text = (plan: Plan): string => planJson(plan, { check: (c) => c.code, step: (s) => s.act });

/** Each box as it is solved goes back into the design, as a committed drag does. */
function rest(design: Design, plan: Plan): Edit[] {
  const found = new Map(settled(design, plan.layout).map(({ part, box }) => [part, box]));
  return design.parts.flatMap((part) => {
    const box = found.get(part.id);
    return box ? [replace({ ...part, box })] : [];
  });
}

describe.each(STARTERS)('any work on %s', (name) => {
  it('keeps every rule that can hold, and is taken back and done again to the letter', () => {
    fc.assert(
      fc.property(fc.array(deed, { minLength: 3, maxLength: 6 }), (deeds) => {
        const start = starter(name);
        const planner = createPlanner();
        const before = text(planned(planner, start));
        let state: EditState = startState(start);
        for (const made of deeds) {
          const done = transact(state, { edits: editsOf(state.design, made), label: made.do });
          if (!done.ok) continue;
          const plan = planned(planner, done.state.design);
          expect(faultsOf(plan)).toEqual([]);
          const settledState = transact(done.state, { edits: rest(done.state.design, plan), label: made.do });
          state = settledState.ok ? settledState.state : done.state;
        }
        const end = state.design;
        const remembered = planned(planner, end);
        const after = text(remembered);
        const anew = planned(createPlanner(), end);
        expect(text(anew)).toBe(after);
        // Pages and what the sheets show are more than the file tells.
        expect(JSON.stringify([remembered.patterns, remembered.signs, remembered.finish])).toBe(
          JSON.stringify([anew.patterns, anew.signs, anew.finish]),
        );
        while (undoLabel(state) !== null) state = undo(state);
        expect(state.design).toEqual(start);
        expect(text(planned(planner, state.design))).toBe(before);
        while (redoLabel(state) !== null) state = redo(state);
        expect(state.design).toEqual(end);
        expect(text(planned(planner, state.design))).toBe(after);
      }),
      { numRuns: runs(1) },
    );
  }, 300_000);
});
