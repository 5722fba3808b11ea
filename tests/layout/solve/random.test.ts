import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design, Part, Rule } from '../../../src/design/schema.ts';
import { layOut } from '../../../src/layout/layout.ts';
import { settled } from '../../../src/layout/settle.ts';
import { runs } from '../../runs.ts';
import { allParts, somePart, someRule, someRules } from '../arbitrary.ts';
import { canHold } from '../canHold.ts';
import { deviations } from '../holds.ts';
import { at, design, lay, layingAgain, panel, plainFace, recessedFace, STOCKS } from '../sample.ts';

const withBoxes = (d: Design, boxes: readonly { part: string; box: Part['box'] }[]): Design => {
  const found = new Map(boxes.map(({ part, box }) => [part, box]));
  return { ...d, parts: d.parts.map((part) => ({ ...part, box: found.get(part.id) ?? part.box })) };
};

/** Several parts centered as one. */
const isBlock = (rule: Rule): boolean => rule.kind === 'center' && rule.parts.length > 1;

type Change =
  | { readonly do: 'part'; readonly part: Part }
  | { readonly do: 'add'; readonly rule: Rule }
  | { readonly do: 'drop'; readonly index: number }
  | { readonly do: 'bed'; readonly width: number };

const change: fc.Arbitrary<Change> = fc.oneof(
  somePart.map((part): Change => ({ do: 'part', part })),
  fc.nat(1e9).chain((n) => someRule(`n${n}`).map((rule): Change => ({ do: 'add', rule }))),
  fc.nat(20).map((index): Change => ({ do: 'drop', index })),
  fc.integer({ min: 900, max: 1100 }).map((width): Change => ({ do: 'bed', width })),
);

function apply(d: Design, made: Change): Design {
  switch (made.do) {
    case 'part':
      return { ...d, parts: d.parts.map((part) => (part.id === made.part.id ? made.part : part)) };
    case 'add':
      return { ...d, rules: [...d.rules.filter((r) => r.id !== made.rule.id), made.rule] };
    case 'drop':
      return { ...d, rules: d.rules.filter((_, i) => i !== made.index) };
    case 'bed':
      return d;
  }
}

describe('any sequence of edits', () => {
  it('every rule that is said to hold does, with memory as without, and the solved design rests', () => {
    fc.assert(
      fc.property(allParts, someRules(6), fc.array(change, { maxLength: 8 }), (parts, rules, changes) => {
        let now = design(parts, rules);
        let face = plainFace();
        const follow = layingAgain();
        for (const made of [null, ...changes]) {
          if (made) now = apply(now, made);
          if (made?.do === 'bed') face = plainFace(made.width);
          const held = made?.do === 'part' ? new Set([made.part.id]) : new Set<string>();
          const input = { design: now, face, keepClears: [], stocks: STOCKS, held };
          const layout = follow(input);
          expect(layout).toEqual(layOut(input));
          layout.rules.forEach((state, i) => {
            const rule = now.rules[i];
            if (!rule || !state.holds) return;
            const worst = Math.max(0, ...deviations(rule, face, layout.boxes).map(Math.abs));
            expect(worst).toBeLessThanOrEqual(1e-6);
          });
          // Which parts end a block depends on where they are: what could not hold beside it may from there.
          const chasing = layout.rules.some((r) => !r.holds) && now.rules.some(isBlock);
          const wide = !chasing && [...layout.boxes.values()].every((box) => box.w >= 0 && box.h >= 0);
          now = withBoxes(now, settled(now, layout));
          if (wide) {
            const again = layOut({ ...input, design: now, held: new Set() });
            for (const [id, box] of layout.boxes) {
              const rest = again.boxes.get(id);
              expect(Math.abs((rest?.x ?? 0) - box.x)).toBeLessThanOrEqual(1e-6);
              expect(Math.abs((rest?.y ?? 0) - box.y)).toBeLessThanOrEqual(1e-6);
              expect(Math.abs((rest?.w ?? 0) - box.w)).toBeLessThanOrEqual(1e-6);
              expect(Math.abs((rest?.h ?? 0) - box.h)).toBeLessThanOrEqual(1e-6);
            }
          }
        }
      }),
      { numRuns: runs(40) },
    );
  });

  it('the order of parts does not count, nor that of rules that do not fight', () => {
    fc.assert(
      fc.property(
        allParts,
        someRules(8),
        fc.array(fc.nat(1e6), { minLength: 16, maxLength: 16 }),
        (parts, rules, keys) => {
          const shuffled = <T>(list: readonly T[]): T[] =>
            list
              .map((one, i) => ({ one, key: keys[i] ?? i }))
              .sort((a, b) => a.key - b.key)
              .map(({ one }) => one);
          const straight = lay(design(parts, rules));
          expect(lay(design(shuffled(parts), rules)).boxes.get('c')).toEqual(straight.boxes.get('c'));
          expect(new Map([...lay(design(shuffled(parts), rules)).boxes].sort())).toEqual(
            new Map([...straight.boxes].sort()),
          );
          // Without those that could not hold, the rest fights nothing; where blocks end may then differ.
          if (rules.some(isBlock) && straight.rules.some((r) => !r.holds)) return;
          const holding = rules.filter((_, i) => straight.rules[i]?.holds);
          const some = lay(design(parts, holding));
          const other = lay(design(parts, shuffled(holding)));
          expect(other.boxes).toEqual(some.boxes);
          expect(other.rules.every((r) => r.holds)).toBe(true);
        },
      ),
      { numRuns: runs(40) },
    );
  });

  it('parts that no rule ties to a change do not move at all', () => {
    fc.assert(
      fc.property(allParts, someRules(5), somePart, (parts, rules, moved) => {
        const tied = new Set([moved.id]);
        const text = rules.map((rule) => JSON.stringify(rule));
        for (let grown = true; grown; ) {
          grown = false;
          for (const t of text) {
            const named = parts.map((p) => p.id).filter((id) => t.includes(`"${id}"`));
            if (!named.some((id) => tied.has(id))) continue;
            for (const id of named) if (!tied.has(id)) grown = !!tied.add(id);
          }
        }
        const before = lay(design(parts, rules));
        const after = lay(
          design(
            parts.map((p) => (p.id === moved.id ? moved : p)),
            rules,
          ),
        );
        for (const [id, box] of before.boxes) if (!tied.has(id)) expect(after.boxes.get(id)).toEqual(box);
      }),
      { numRuns: runs(40) },
    );
  });
});

describe('against an independent solver', () => {
  // Blocks of several parts, whose ends have to be found, in blocks.test.ts.
  it('accepts what can hold, rejects what cannot, and the fights are smallest', () => {
    const onX = (rule: Rule): boolean =>
      'axis' in rule && rule.axis === 'x' && rule.kind !== 'mirror' && !isBlock(rule);
    fc.assert(
      fc.property(allParts, someRules(12), (parts, all) => {
        const rules = all.filter(onX);
        const layout = lay(design(parts, rules));
        const fixed = new Map(
          parts.flatMap((p) => (p.kind === 'strip' && p.lie === 'up' ? [[p.id, 40] as const] : [])),
        );
        const taken: Rule[] = [];
        rules.forEach((rule, i) => {
          const state = layout.rules[i];
          expect(canHold(parts, [...taken, rule], fixed)).toBe(state?.holds);
          if (state?.holds) {
            taken.push(rule);
            return;
          }
          const fights = rules.filter((r) => state?.fights.includes(r.id));
          expect(canHold(parts, [...fights, rule], fixed)).toBe(false);
          for (const one of fights) {
            expect(canHold(parts, [...fights.filter((r) => r !== one), rule], fixed)).toBe(true);
          }
        });
      }),
      { numRuns: runs(50) },
    );
  });
});

describe('memory', () => {
  it('gives back the very same parts where nothing changed', () => {
    const follow = layingAgain();
    const parts = [panel('a', at(100, 100, 50, 50)), panel('b', at(300, 100, 50, 50))];
    const d = design(parts);
    const input = { design: d, face: recessedFace(), keepClears: [], stocks: STOCKS };
    const before = follow(input);
    const moved = { ...d, parts: [parts[0]!, { ...parts[1]!, box: at(400, 100, 50, 50) }] };
    const after = follow({ ...input, design: moved });
    expect(after.parts[0]).toBe(before.parts[0]);
    expect(after.boxes.get('a')).toBe(before.boxes.get('a'));
    expect(after.parts[1]?.box.x).toBe(400);
  });
});
