import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { readSupplies } from '../../src/command/supplies.ts';
import { openData } from '../../src/design/open.ts';
import { problemMessage } from '../../src/design/problem.ts';
import { layOut } from '../../src/layout/layout.ts';
import { lookup } from '../../src/materials/lookup.ts';
import { plan } from '../../src/plan/plan.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { everyKind } from './damage.ts';

/** Designs tried in the normal run; `SHOWFACE_NAMES=100000` for the long one. */
const DESIGNS = Number(process.env.SHOWFACE_NAMES ?? 300);
/** One in so many of those that open is planned as well: a plan takes as long as many layouts. */
const PLAN_EVERY = 60;

const base = everyKind();
/** All that a file could name, meant or not. */
const NAMES: readonly string[] = [
  ...base.parts.map(({ id }) => id),
  ...base.parts.flatMap(({ id, kind }) =>
    kind === 'array' ? [`${id}[0,0]`, `${id}[1,0]`, `${id}[0,1]`, `${id}[399,399]`, `${id}[9999,0]`] : [],
  ),
  ...[...base.keepClears, ...base.groups, ...base.rules, ...base.stocks, ...base.finishes].map(
    ({ id }) => id,
  ),
  ...['face', 'level:rim', 'level:ledge', 'level:field', 'level:skin', 'level:attic', 'level:', 'face[0,0]'],
  ...['nobody', 'nobody[0,0]', 'constructor', '__proto__', 'toString', '', ' ', '[0,0]', 'a[b]', 'level'],
];

const PARTS = base.parts.map(({ id }) => id);
/** Mostly a part, so that enough of what names it opens. */
const anyName = (chance: Chance): string => pick(chance() < 0.85 ? PARTS : NAMES, chance);

const AXES = ['x', 'y'];
const SIDES = ['low', 'mid', 'high'];

/** A rule of any kind about anything. */
function anyRule(id: string, chance: Chance): Record<string, unknown> {
  const name = () => anyName(chance);
  const edge = () => ({ of: name(), side: pick(SIDES, chance), inner: chance() < 0.3 });
  const parts = () => Array.from({ length: 1 + Math.floor(chance() * 4) }, name);
  const mm = () => pick([0, 1, 25.4, 300, -40], chance);
  const own = [
    { kind: 'set', edge: edge(), from: edge(), distance: mm() },
    { kind: 'center', parts: parts(), low: edge(), high: edge() },
    { kind: 'between', part: name(), low: edge(), high: edge(), insetLow: mm(), insetHigh: mm() },
    {
      kind: 'even',
      parts: parts(),
      low: edge(),
      high: edge(),
      mode: pick(['gaps', 'flush', 'half'], chance),
    },
    { kind: 'mirror', part: name(), twin: name(), about: edge() },
    { kind: 'same', parts: parts() },
    { kind: 'reveal', part: name(), inside: name(), inner: chance() < 0.5, margin: mm() },
    { kind: 'graded', parts: parts(), low: edge(), high: edge(), ratio: [1, 2], gap: Math.abs(mm()) },
  ];
  const rule = pick(own, chance);
  return { id, ...rule, ...(rule.kind === 'reveal' ? {} : { axis: pick(AXES, chance) }) };
}

/** The small design of every kind, with rules, joints, groups and supports that name anything. */
function namingAnything(chance: Chance): unknown {
  const name = () => anyName(chance);
  const rules = Array.from({ length: 1 + Math.floor(chance() * 5) }, (_, i) => anyRule(`any${i}`, chance));
  return {
    ...base,
    rules: chance() < 0.5 ? [...base.rules, ...rules] : rules,
    joints:
      chance() < 0.2 ? [{ id: 'any', parts: [name(), name()], kind: 'miter', through: name() }] : base.joints,
    groups: chance() < 0.2 ? [{ id: 'any', name: 'Any', parts: [name(), name()] }] : base.groups,
    parts: chance() < 0.3 ? base.parts.map((p) => (chance() < 0.3 ? { ...p, on: name() } : p)) : base.parts,
  };
}

const withRule = (rule: object): unknown => ({ ...base, rules: [rule] });

describe('a cap height', () => {
  it('under 1 mm is refused, of the lettering as of a line', () => {
    const sign = base.parts.find((p) => p.kind === 'sign');
    if (sign?.kind !== 'sign') throw new Error('no sign');
    const { lettering } = sign;
    const lines = lettering.lines.map((line) => ({ ...line, capHeight: 0.99 }));
    const of = (changed: object) =>
      openData({
        ...base,
        parts: base.parts.map((p) => (p === sign ? { ...sign, lettering: { ...lettering, ...changed } } : p)),
      });
    expect(of({ capHeight: 1 }).ok).toBe(true);
    for (const changed of [{ capHeight: 0.99 }, { lines }]) {
      const opened = of(changed);
      expect(opened.ok).toBe(false);
      if (!opened.ok)
        expect(problemMessage(opened.problems[0]!)).toMatch(
          /capHeight.*found 0\.99; expected a number of at least 1/,
        );
    }
  });
});

describe('what a design may name', () => {
  it('is a part where a part is moved: neither the face nor a level nor a member', () => {
    for (const name of ['face', 'level:rim', 'battens[0,0]']) {
      const opened = openData(withRule({ id: 'r', kind: 'same', axis: 'x', parts: [name, 'panel'] }));
      const said = opened.ok ? [] : opened.problems.map((p) => problemMessage(p));
      expect(said, name).toHaveLength(1);
      expect(said[0]).toContain('rules[0].parts[0]');
      expect(said[0]).toContain(`“${name}”`);
    }
  });

  it('is a level that beds have, or the name of a part, where an edge is meant', () => {
    const about = (of: string) =>
      openData(
        withRule({ id: 'r', kind: 'mirror', axis: 'x', part: 'a', twin: 'b', about: { of, side: 'mid' } }),
      );
    for (const of of ['face', 'level:skin', 'level:field', 'some.part-1', 'array[3,12]'])
      expect(about(of).ok, of).toBe(true);
    for (const of of ['level:attic', 'level:', '__proto__', 'constructor[0,0]', 'a b', 'x[1]']) {
      const opened = about(of);
      expect(opened.ok, of).toBe(false);
      if (!opened.ok) expect(problemMessage(opened.problems[0]!)).toContain('level:rim');
    }
  });

  it('is never a part called “face”: it is given another id, and what lies on the face still does', () => {
    const parts = base.parts.map((p, i) => (i === 0 ? { ...p, id: 'face', on: 'face' } : p));
    const opened = openData({ ...base, parts, rules: [], joints: [], groups: [] });
    if (!opened.ok) throw new Error('refused');
    expect(opened.design.parts[0]).toMatchObject({ id: 'face-2', on: 'face' });
    expect(opened.repairs).toHaveLength(1);
  });

  it(`${DESIGNS} designs that name anything pass the door only where layout and plan accept them`, () => {
    const supplies = readSupplies(base);
    const stocks = lookup(supplies.tables, base.stocks).stocks;
    const { face } = faceOf(base.bed);
    const faults: string[] = [];
    let opened = 0;
    for (let seed = 0; seed < DESIGNS; seed++) {
      const file = openData(namingAnything(chanceOf(seed)));
      if (!file.ok) continue;
      opened++;
      const { design } = file;
      try {
        layOut({ design, face, keepClears: design.keepClears, stocks });
        if (opened % PLAN_EVERY === 0) plan(design, supplies, { effort: { nodes: 20 } });
      } catch (error) {
        faults.push(
          `${seed}: ${error instanceof Error ? error.stack?.split('\n').slice(0, 3).join(' ') : ''}`,
        );
      }
    }
    process.stdout.write(
      `${DESIGNS} designs that name anything: ${opened} opened and were laid out, ${Math.floor(opened / PLAN_EVERY)} planned\n`,
    );
    expect(faults.slice(0, 5)).toEqual([]);
    expect(opened).toBeGreaterThan(DESIGNS / 50);
  }, 3_600_000);
});
