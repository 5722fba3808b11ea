import { describe, expect, it } from 'vitest';
import { readSupplies } from '../../src/command/supplies.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { MOST_DEPTH, type Opened, openDesign } from '../../src/design/open.ts';
import { problemMessage } from '../../src/design/problem.ts';
import { saveDesign } from '../../src/design/save.ts';
import type { Design } from '../../src/design/schema.ts';
import { createPlanner, plan } from '../../src/plan/plan.ts';
import { chanceOf, pick } from '../chance.ts';
import { STARTERS, starter } from '../plan/starters.ts';
import { everyKind, mildlyDamaged, rudelyDamaged, tornText } from './damage.ts';

/** Files tried in the normal run; `SHOWFACE_FUZZ=100000` for the long one. */
const FILES = Number(process.env.SHOWFACE_FUZZ ?? 800);
/** One in so many is planned as well: a plan takes as long as hundreds of files. */
const PLANNED = Math.ceil(FILES / 160);

/** What is wrong with how a file was received; null where nothing is. */
function faultOf(text: string): string | null {
  let opened: Opened;
  try {
    opened = openDesign(text);
  } catch (error) {
    return `threw ${String(error)}`;
  }
  if (Object.hasOwn(Object.prototype, 'polluted') || ({} as { extra?: unknown }).extra !== undefined)
    return 'reached the prototype of all objects';
  if (!opened.ok) {
    const said = opened.problems.map((p) => problemMessage(p));
    return said.length > 0 && said.every((message) => message.length > 10) ? null : 'refused without a word';
  }
  return faultOfDesign(opened.design);
}

/** A design that got in is whole: it is saved and opened again as it is, and every id is given once. */
function faultOfDesign(design: Design): string | null {
  const again = openDesign(saveDesign(design));
  if (!again.ok) return 'saved, and not opened again';
  if (JSON.stringify(again.design) !== JSON.stringify(design)) return 'another design after saving';
  if (again.repairs.length > 0) return `mended twice: ${again.repairs[0]}`;
  const ids = [...design.parts, ...design.keepClears, ...design.groups].map(({ id }) => id);
  return new Set(ids).size === ids.length ? null : 'an id given twice';
}

describe('damaged files', () => {
  it(`${FILES} of them never throw; what opens is whole`, () => {
    const starters = [...STARTERS.map(starter), everyKind()].map((design) => ({
      design,
      text: saveDesign(design),
    }));
    const faults: string[] = [];
    let opened = 0;
    for (let seed = 0; seed < FILES; seed++) {
      const chance = chanceOf(seed);
      const { design, text } = pick(starters, chance);
      const way = chance();
      const file =
        way < 0.25
          ? tornText(text, chance)
          : JSON.stringify(way < 0.6 ? rudelyDamaged(design, chance) : mildlyDamaged(design, chance));
      const fault = faultOf(file);
      if (fault !== null) faults.push(`${seed}: ${fault}`);
      if (openDesign(file).ok) opened++;
    }
    expect(faults.slice(0, 20)).toEqual([]);
    expect(opened).toBeGreaterThan(FILES / 10);
    expect(opened).toBeLessThan(FILES);
  }, 3_600_000);

  it(`${PLANNED} that open are planned without a throw, in finite numbers`, () => {
    const base = everyKind();
    const supplies = readSupplies(base);
    const planner = createPlanner();
    const faults: string[] = [];
    let planned = 0;
    for (let seed = 500_000; planned < PLANNED; seed++) {
      const opened = openDesign(JSON.stringify(mildlyDamaged(base, chanceOf(seed))));
      if (!opened.ok) continue;
      planned++;
      try {
        const made = planner(opened.design, supplies, { effort: { nodes: 200 } });
        const { total, load, face } = made;
        const figures = [total, load.added, load.bare, face.width, face.height];
        if (!figures.every(Number.isFinite)) faults.push(`${seed}: ${figures.join(', ')}`);
      } catch (error) {
        faults.push(
          `${seed}: ${error instanceof Error ? error.stack?.split('\n').slice(0, 4).join(' ') : error}`,
        );
      }
    }
    expect(faults.slice(0, 20)).toEqual([]);
  }, 3_600_000);
});

describe('a small file', () => {
  const text = JSON.stringify(newDesign());

  it('is refused cut off at every length', () => {
    const faults: number[] = [];
    for (let length = 0; length < text.length; length++) {
      const opened = openDesign(text.slice(0, length));
      if (opened.ok || opened.problems.length === 0) faults.push(length);
    }
    expect(faults).toEqual([]);
    expect(openDesign(text).ok).toBe(true);
  });

  it('is received without a throw with any one character changed', () => {
    const faults: string[] = [];
    for (let at = 0; at < text.length; at++) {
      for (const put of ['', '"', '}', '9', '\u0000']) {
        const fault = faultOf(text.slice(0, at) + put + text.slice(at + 1));
        if (fault !== null) faults.push(`${at} ${put}: ${fault}`);
      }
    }
    expect(faults.slice(0, 20)).toEqual([]);
  });
});

describe('hostile files', () => {
  const base = newDesign();
  const withFields = (fields: object): string => JSON.stringify({ ...base, ...fields });
  const strip = (id: string, on = 'face') => ({
    ...newPart('strip', { id, name: id, box: { x: 0, y: 0, w: 300, h: 38.1 } }),
    on,
  });

  it.each([
    ['numbers beyond all measure', withFields({ bed: { ...base.bed, ceiling: 1e308 } })],
    ['numbers that JSON cannot hold', withFields({ bed: { ...base.bed, ceiling: Number.NaN } })],
    ['numbers that JSON makes infinite', text('"ceiling":', '"ceiling":1e999,"x":')],
    ['brackets a hundred thousand deep', `{"showface":1,"name":${'['.repeat(100_000)}`],
    [
      'brackets deeper than any design',
      `{"showface":1,"a":${'['.repeat(MOST_DEPTH)}${']'.repeat(MOST_DEPTH)}}`,
    ],
    ['a future version', withFields({ showface: 2 })],
    ['a version far in the future', withFields({ showface: 1e300 })],
    ['4001 parts', withFields({ parts: Array.from({ length: 4001 }, (_, i) => strip(`p${i}`)) })],
    ['a list in place of an object', '[]'],
    ['nothing', 'null'],
    ['a prototype as an id', withFields({ parts: [strip('__proto__')] })],
    ['a prototype as a field', text('"note":', '"__proto__":{"polluted":1},"note":')],
    ['a constructor as a field', text('"note":', '"constructor":{"prototype":{"polluted":1}},"note":')],
  ])('%s are refused in words', (_, file) => {
    expect(openDesign(file).ok).toBe(false);
    expect(faultOf(file)).toBeNull();
  });

  function text(from: string, to: string): string {
    return JSON.stringify(base).replace(from, to);
  }

  it('4000 parts open, each id once, even where all were the same', () => {
    const opened = openDesign(withFields({ parts: Array.from({ length: 4000 }, () => strip('p')) }));
    if (!opened.ok) throw new Error('refused');
    expect(new Set(opened.design.parts.map(({ id }) => id)).size).toBe(4000);
    expect(opened.repairs).toHaveLength(3999);
  });

  it('rings of parts that lie on each other are planned, and named', () => {
    const parts = [strip('a', 'b'), strip('b', 'c'), strip('c', 'a'), strip('d', 'd'), strip('e', 'a')];
    const opened = openDesign(withFields({ parts }));
    if (!opened.ok) throw new Error('refused');
    const { checks } = plan(opened.design, readSupplies(opened.design));
    expect(checks.some((c) => c.code === 'part.support-cycle')).toBe(true);
  });

  it('rules that name each other in a ring are planned; those that cannot hold are named', () => {
    const set = (id: string, of: string, from: string, distance: number) => ({
      id,
      kind: 'set',
      axis: 'x',
      edge: { of, side: 'low' },
      from: { of: from, side: 'low' },
      distance,
    });
    const parts = [strip('a'), strip('b'), strip('c')];
    const ring = [set('r1', 'a', 'b', 10), set('r2', 'b', 'c', 10), set('r3', 'c', 'a', 10)];
    const opened = openDesign(withFields({ parts, rules: [...ring, set('r4', 'a', 'a', 5)] }));
    if (!opened.ok) throw new Error('refused');
    const { checks } = plan(opened.design, readSupplies(opened.design));
    const impossible = checks.filter((c) => c.code === 'rule.impossible').map((c) => c.figures.rule);
    expect(impossible).toContain('r4');
    expect(impossible.some((rule) => ['r1', 'r2', 'r3'].includes(String(rule)))).toBe(true);
  });
});
