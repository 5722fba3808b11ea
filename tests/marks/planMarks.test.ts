import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rule } from '../../src/design/schema.ts';
import type { JointFound, Notch, Piece } from '../../src/joinery/piece.ts';
import type { LaidPart } from '../../src/layout/laid.ts';
import { type MarksInput, planMarks } from '../../src/marks/planMarks.ts';
import type { Painting } from '../../src/marks/result.ts';
import { stepOf } from '../../src/measure/round.ts';
import type { MeasureStyle } from '../../src/measure/style.ts';
import { inches } from '../../src/measure/units.ts';

const SIXTEENTHS: MeasureStyle = { unit: 'in', fraction: '16' };

interface Short {
  readonly kind?: LaidPart['kind'];
  readonly on?: string;
  readonly part?: string;
  readonly fit?: boolean;
  readonly finish?: string | null;
  readonly box?: LaidPart['box'];
  readonly round?: boolean;
  readonly sawn?: boolean;
  readonly around?: 'outline' | 'shade' | 'inline';
}

const letteringOf = ({ sawn, around }: Short) => ({
  lines: [],
  make: sawn ? 'cut-out' : 'trace',
  outline: null,
  inline: null,
  shade: null,
  ...(around ? { [around]: { finish: 'red' } } : {}),
});

const laid = (id: string, s: Short = {}): LaidPart => {
  const kind = s.kind ?? 'strip';
  const spec =
    kind === 'strip' || kind === 'run'
      ? { fit: s.fit ?? false }
      : { shape: { form: s.round ? 'round' : 'rectangle' } };
  return {
    id,
    part: s.part ?? id,
    name: id,
    kind,
    box: s.box ?? { x: 0, y: 0, w: 10, h: 10 },
    // No ground of their own: these parts lie on what they are said to lie on, and on nothing else.
    region: [],
    on: s.on ?? 'field',
    finish: s.finish === undefined ? 'green' : s.finish,
    spec,
    ...(kind === 'sign' ? { lettering: letteringOf(s) } : {}),
  } as unknown as LaidPart;
};

const piece = (part: string, form: Piece['form'], inPlace = false): Piece =>
  ({ id: `${part}-1`, part, form, notches: [], fit: { inPlace, allowance: 0 } }) as unknown as Piece;
const joint = (a: string, b: string): JointFound => ({
  parts: [a, b],
  kind: 'butt',
  through: b,
  at: { x: 0, y: 0 },
  decided: false,
});
/** How many parts carry this one; a circle of them is cut where it closes. */
function depthOf(id: string, parts: readonly LaidPart[], seen: readonly string[] = []): number {
  const on = parts.find((p) => p.id === id)?.on ?? '';
  const carries = parts.some((p) => p.id === on) && !seen.includes(on);
  return carries ? 1 + depthOf(on, parts, [...seen, id]) : 0;
}

/** Every part ten high, right on what carries it. */
const stacked = (parts: readonly LaidPart[]): LaidPart[] =>
  parts.map((part) => {
    const z0 = 10 * depthOf(part.id, parts);
    return { ...part, z0, z1: z0 + (part.kind === 'painted' ? 0 : 10) };
  });

const input = (parts: readonly LaidPart[], more: Partial<MarksInput> = {}): MarksInput => ({
  parts: stacked(parts),
  solids: [],
  joints: [],
  pieces: [],
  rules: [],
  measure: SIXTEENTHS,
  paints: [],
  bare: [],
  ...more,
});
const painting = (act: Painting['act'], ...parts: readonly string[]): Painting[] =>
  parts.map((part) => ({
    act,
    part,
    finish: 'green',
    of: 'part',
    face: 1,
    edge: 0,
    back: 0,
    primed: 1,
    coats: 1,
    primerCoats: 0,
  }));
const steps = (parts: readonly LaidPart[], more: Partial<MarksInput> = {}) =>
  planMarks(input(parts, more)).steps.map((s) => [s.act, s.parts.join(' ')]);

describe('running marks', () => {
  it('from the left and the bottom, each edge, from the datum on', () => {
    const box = { x: inches(2), y: inches(10), w: inches(1.5), h: inches(20) };
    const { marks } = planMarks(input([laid('a', { box })]));
    expect(marks.map((m) => [m.datum, m.axis, m.edge, +(m.shown / 25.4).toFixed(9)])).toEqual([
      ['left', 'x', 'low', 2],
      ['left', 'x', 'high', 3.5],
      ['bottom', 'y', 'low', 10],
      ['bottom', 'y', 'high', 30],
    ]);
  });

  it('the middle too, of what is set by its middle', () => {
    const edges = (part: LaidPart) =>
      planMarks(input([part]))
        .marks.filter((m) => m.axis === 'x')
        .map((m) => m.edge);
    expect(edges(laid('lamp', { kind: 'fitting' }))).toEqual(['low', 'mid', 'high']);
    expect(edges(laid('disk', { kind: 'panel', round: true }))).toEqual(['low', 'mid', 'high']);
    expect(edges(laid('door', { kind: 'panel' }))).toEqual(['low', 'high']);
  });

  it('eleven battens with gaps of 3.3 in never drift: the last mark is as true as the first', () => {
    // Chained 16ths of the pitch 4.8 (4 13/16) would be off by 1/8 in at the eleventh.
    const battens = Array.from({ length: 11 }, (_, i) =>
      laid(`b[${i},0]`, { box: { x: inches(3.3 + 4.8 * i), y: 0, w: inches(1.5), h: 100 } }),
    );
    const { marks } = planMarks(input(battens));
    const last = marks.filter((m) => m.axis === 'x' && m.edge === 'low').at(-1);
    expect(last?.at).toBeCloseTo(inches(51.3), 9);
    expect((last?.shown ?? 0) / 25.4).toBeCloseTo(51 + 5 / 16, 9);
  });

  it('rounding never is off the true place by more than half a step', () => {
    const styles: MeasureStyle[] = [
      SIXTEENTHS,
      { unit: 'in', fraction: '8' },
      { unit: 'ft-in', fraction: '64' },
      { unit: 'in', fraction: 'decimal' },
      { unit: 'mm', fraction: '16' },
      { unit: 'cm', fraction: '16' },
    ];
    const size = fc.double({ min: 0, max: 3000, noNaN: true });
    const box = fc.record({ x: size, y: size, w: size, h: size });
    fc.assert(
      fc.property(fc.array(box, { minLength: 1 }), fc.constantFrom(...styles), (boxes, measure) => {
        const parts = boxes.map((b, i) => laid(`p${i}`, { box: b }));
        for (const mark of planMarks(input(parts, { measure })).marks) {
          expect(Math.abs(mark.shown - mark.at)).toBeLessThanOrEqual(stepOf(measure) / 2 + 1e-6);
        }
      }),
    );
  });
});

describe('story sticks', () => {
  it('one line for all edges that fall on it, in order', () => {
    const parts = [
      laid('a', { box: { x: 0, y: 0, w: 100, h: 50 } }),
      laid('b', { box: { x: 100, y: 0, w: 40, h: 50 } }),
    ];
    const { sticks } = planMarks(input(parts));
    expect(sticks.map((s) => [s.axis, s.datum, s.marks.map((m) => m.at)])).toEqual([
      ['x', 'left', [0, 100, 140]],
      ['y', 'bottom', [0, 50]],
    ]);
    expect(sticks[0]?.marks[1]?.edges).toEqual([
      { part: 'a', edge: 'high' },
      { part: 'b', edge: 'low' },
    ]);
  });

  it('holds every mark once, strictly increasing', () => {
    const n = fc.integer({ min: 0, max: 60 }).map((v) => v * 5);
    const box = fc.record({ x: n, y: n, w: n, h: n });
    fc.assert(
      fc.property(fc.array(box, { minLength: 1, maxLength: 20 }), (boxes) => {
        const { marks, sticks } = planMarks(input(boxes.map((b, i) => laid(`p${i}`, { box: b }))));
        for (const stick of sticks) {
          const mine = marks.filter((m) => m.axis === stick.axis);
          expect(stick.marks.flatMap((m) => m.edges)).toHaveLength(mine.length);
          expect(stick.marks.map((m) => m.at)).toEqual([...new Set(mine.map((m) => m.at))]);
        }
      }),
    );
  });
});

describe('steps', () => {
  it('the whole order of a small design', () => {
    const parts = [
      laid('door', { kind: 'panel' }),
      laid('rail'),
      laid('brace', { fit: true }),
      laid('name', { kind: 'sign', on: 'door' }),
      laid('pane', { kind: 'painted', on: 'door' }),
      laid('handle', { kind: 'fitting', on: 'door' }),
    ];
    const pieces = [
      piece('door', 'sheet'),
      piece('name', 'sheet'),
      piece('rail', 'flat'),
      piece('brace', 'flat', true),
    ];
    const more = {
      pieces,
      joints: [joint('brace', 'rail')],
      paints: [...painting('paint-before', 'name'), ...painting('paint-after', 'door', 'rail', 'pane')],
    };
    expect(steps(parts, more)).toEqual([
      ['prepare', ''],
      ['cut-sheets', 'door name'],
      ['cut-boards', 'rail brace'],
      ['paint-before', 'name'],
      ['letter', 'name'],
      ['mark', ''],
      ['dry-fit', 'door rail name'],
      ['fix', 'door rail'],
      ['fix', 'name'],
      ['measure-in-place', 'brace'],
      ['paint-after', 'door rail pane'],
      ['fit-hardware', 'handle'],
      ['try-swing', ''],
    ]);
    expect(planMarks(input(parts, more)).steps.map((s) => s.number)).toEqual(
      Array.from({ length: 13 }, (_, i) => i + 1),
    );
  });

  it('paints the bed itself before anything covers it, and gives the last coat when all is fixed', () => {
    const parts = [laid('ground', { kind: 'painted', on: 'field' }), laid('stile', { on: 'field' })];
    const order = steps(parts, {
      paints: [
        ...painting('paint-before', 'stile'),
        ...painting('paint-ground', 'ground'),
        ...painting('last-coat', 'stile'),
      ],
    });
    const at = (act: string) => order.findIndex(([found]) => found === act);
    expect(order[at('paint-ground')]?.[1]).toBe('ground');
    expect(order[at('last-coat')]?.[1]).toBe('stile');
    expect(at('paint-ground')).toBeLessThan(at('fix'));
    expect(at('last-coat')).toBeGreaterThan(at('fix'));
    expect(at('paint-after')).toBe(-1);
  });

  it('what stays bare for glue is taped before it is painted, and each step tells what it paints', () => {
    const parts = [
      laid('ground', { kind: 'painted', on: 'field' }),
      laid('panel', { kind: 'panel' }),
      laid('knob', { on: 'panel' }),
    ];
    const paints = [...painting('paint-before', 'panel', 'knob'), ...painting('paint-ground', 'ground')];
    const more = { paints, bare: [{ on: 'panel' }, { on: 'ground' }] };
    expect(steps(parts, more).slice(1, 6)).toEqual([
      ['mask-glue', 'panel'],
      ['paint-before', 'panel knob'],
      ['mask-glue', 'ground'],
      ['paint-ground', 'ground'],
      ['mark', ''],
    ]);
    const told = planMarks(input(parts, more)).steps.flatMap((step) => step.paints);
    expect(told.map(({ act, part }) => [act, part])).toEqual(paints.map(({ act, part }) => [act, part]));
  });

  it('a sign of sawn letters has them glued on, before it is fixed', () => {
    const parts = [laid('name', { kind: 'sign', sawn: true }), laid('words', { kind: 'sign' })];
    const order = steps(parts, { paints: painting('paint-before', 'name', 'words') });
    expect(order).toContainEqual(['mount-letters', 'name']);
    expect(order).toContainEqual(['letter', 'words']);
    const acts = order.map(([act]) => act);
    expect(acts.indexOf('mount-letters')).toBeLessThan(acts.indexOf('fix'));
  });

  it('a sign of sawn letters has outline and shade painted on it before these are glued on', () => {
    const parts = [
      laid('lined', { kind: 'sign', sawn: true, around: 'outline' }),
      laid('shaded', { kind: 'sign', sawn: true, around: 'shade' }),
      laid('inlined', { kind: 'sign', sawn: true, around: 'inline' }),
      laid('painted', { kind: 'sign', around: 'shade' }),
    ];
    const order = steps(parts, {
      paints: painting('paint-before', 'lined', 'inlined', 'painted'),
    });
    const acts = order.filter(([act]) =>
      ['paint-around-letters', 'mount-letters', 'fix'].includes(act ?? ''),
    );
    expect(acts).toEqual([
      ['paint-around-letters', 'lined'],
      ['mount-letters', 'lined inlined'],
      ['fix', 'lined shaded inlined painted'],
      ['paint-around-letters', 'shaded'],
      ['mount-letters', 'shaded'],
    ]);
  });

  it('pieces halved into each other are notched once they are cut', () => {
    const parts = [laid('rail'), laid('stile')];
    const notch: Notch = { side: 'face', from: 100, to: 138, depth: 9.5, miter: 0, outline: [] };
    const pieces = [{ ...piece('rail', 'flat'), notches: [notch] }, piece('stile', 'flat')];
    const order = steps(parts, { pieces });
    const at = (act: string) => order.findIndex(([found]) => found === act);
    expect(order[at('notch')]?.[1]).toBe('rail');
    expect(at('notch')).toBe(at('cut-boards') + 1);
    expect(steps(parts).map(([act]) => act)).not.toContain('notch');
  });

  it('a sign painted in place is lettered after it', () => {
    const order = steps([laid('name', { kind: 'sign' })], { paints: painting('paint-after', 'name') }).map(
      ([act]) => act,
    );
    expect(order.indexOf('letter')).toBeGreaterThan(order.indexOf('paint-after'));
  });

  it('nothing to do without parts, and nothing to paint without finishes', () => {
    expect(steps([])).toEqual([]);
    expect(steps([laid('a', { finish: null })]).some(([act]) => act === 'paint-after')).toBe(false);
  });

  it('a piece measured between two parts by a rule waits for both, members of arrays too', () => {
    const parts = [
      laid('mid', { fit: true }),
      laid('base'),
      laid('post[0,0]', { part: 'post', on: 'base' }),
      laid('post[1,0]', { part: 'post', on: 'base' }),
    ];
    const edge = (of: string) => ({ of, side: 'high' as const });
    const rules = [
      {
        id: 'r',
        kind: 'between',
        axis: 'x',
        part: 'mid',
        low: edge('post[0,0]'),
        high: edge('post'),
        insetLow: 0,
        insetHigh: 0,
      } as Rule,
    ];
    const fixes = steps(parts, { rules }).filter(([act]) => act === 'fix' || act === 'measure-in-place');
    expect(fixes).toEqual([
      ['fix', 'base'],
      ['fix', 'post[0,0] post[1,0]'],
      ['measure-in-place', 'mid'],
    ]);
  });

  it('of two pieces measured in place that meet, the one laid first goes first', () => {
    const parts = [laid('a', { fit: true }), laid('b', { fit: true })];
    const fixes = steps(parts, { joints: [joint('a', 'b')] }).filter(([act]) => act === 'measure-in-place');
    expect(fixes).toEqual([
      ['measure-in-place', 'a'],
      ['measure-in-place', 'b'],
    ]);
  });

  it('looks through paint to what holds a part', () => {
    const parts = [laid('top', { on: 'pane' }), laid('pane', { kind: 'painted', on: 'door' }), laid('door')];
    expect(steps(parts).filter(([act]) => act === 'fix')).toEqual([
      ['fix', 'door'],
      ['fix', 'top'],
    ]);
  });

  it('a fitting that carries something is fixed in its turn', () => {
    const parts = [laid('shelf', { on: 'bracket' }), laid('bracket', { kind: 'fitting' })];
    expect(steps(parts).filter(([act]) => act === 'fix' || act === 'fit-hardware')).toEqual([
      ['fix', 'bracket'],
      ['fix', 'shelf'],
    ]);
  });

  it('a circle of supports ends, with every part once', () => {
    const parts = [laid('a', { on: 'b' }), laid('b', { on: 'a' }), laid('c', { on: 'b' })];
    const fixed = steps(parts)
      .filter(([act]) => act === 'fix')
      .flatMap(([, ids]) => (ids ?? '').split(' '));
    expect(fixed.sort()).toEqual(['a', 'b', 'c']);
  });

  const lap = (over: string, under: string): JointFound => ({
    ...joint(under, over),
    kind: 'half-lap',
    through: over,
  });
  const fixes = (parts: readonly LaidPart[], joints: readonly JointFound[]) =>
    steps(parts, { joints }).filter(([act]) =>
      ['fix', 'cut-in-place', 'assemble', 'measure-in-place'].includes(act ?? ''),
    );

  it('what is halved or mitered together is glued in one step, the face-notched piece first', () => {
    const parts = [laid('over'), laid('under'), laid('alone'), laid('left'), laid('right')];
    const miter: JointFound = { ...joint('left', 'right'), kind: 'miter', through: null };
    expect(fixes(parts, [lap('over', 'under'), miter])).toEqual([
      ['fix', 'alone'],
      ['assemble', 'under over'],
      ['assemble', 'left right'],
    ]);
  });

  it('a piece that is halved and measured in place is cut before its joint is glued', () => {
    expect(fixes([laid('over'), laid('under', { fit: true })], [lap('over', 'under')])).toEqual([
      ['cut-in-place', 'under'],
      ['assemble', 'under over'],
    ]);
  });

  it('what is coped comes after what it is coped to; a circle of copes is told', () => {
    const cope = (through: string, other: string): JointFound => ({
      ...joint(through, other),
      kind: 'cope',
      through,
    });
    const parts = [laid('a'), laid('b'), laid('c')];
    expect(fixes(parts, [cope('c', 'b'), cope('b', 'a')])).toEqual([
      ['fix', 'c'],
      ['fix', 'b'],
      ['fix', 'a'],
    ]);
    const round = planMarks(input(parts, { joints: [cope('a', 'b'), cope('b', 'c'), cope('c', 'a')] }));
    expect(round.checks.map((c) => [c.code, c.parts, c.figures.why])).toEqual([
      ['order.circle', ['a', 'c'], 'cope'],
    ]);
  });

  it('is a topological order on random support graphs', () => {
    let acyclic = 0;
    const graph = fc
      .array(
        fc.record({
          on: fc.nat(),
          fit: fc.boolean(),
          bounds: fc.array(fc.nat(), { maxLength: 2 }),
          key: fc.integer(),
        }),
        { minLength: 1, maxLength: 30 },
      )
      .map((nodes) => {
        // Node i lies on a node before it or on a level; joints of fitted pieces go to any earlier node.
        const parts = nodes.map((n, i) => {
          const on = n.on % (i + 1);
          return laid(`p${i}`, { on: on === i ? 'field' : `p${on}`, fit: n.fit });
        });
        const joints = nodes.flatMap((n, i) =>
          i > 0 ? n.bounds.map((b) => joint(`p${i}`, `p${b % i}`)) : [],
        );
        const shuffled = parts
          .map((part, i) => ({ part, key: nodes[i]?.key ?? 0, i }))
          .sort((a, b) => a.key - b.key || a.i - b.i)
          .map(({ part }) => part);
        return { parts: shuffled, joints };
      });
    fc.assert(
      fc.property(graph, ({ parts, joints }) => {
        const plan = planMarks(input(parts, { joints }));
        const at = new Map<string, number>();
        for (const s of plan.steps) {
          if (s.act !== 'fix' && s.act !== 'measure-in-place') continue;
          for (const id of s.parts) {
            expect(at.has(id)).toBe(false);
            at.set(id, s.number);
          }
        }
        expect(at.size).toBe(parts.length);
        const fits = new Set(parts.filter((p) => p.kind === 'strip' && p.spec.fit).map((p) => p.id));
        for (const part of parts) {
          if (part.on !== 'field') expect(at.get(part.on)).toBeLessThan(at.get(part.id) ?? 0);
        }
        // Fitted pieces wait for what is simply fixed beside them, unless that lies on them, or unless
        // waiting would go round in a circle.
        const onOf = (id: string) => parts.find((p) => p.id === id)?.on ?? 'field';
        const liesOn = (a: string, b: string): boolean =>
          onOf(a) === b || (onOf(a) !== 'field' && liesOn(onOf(a), b));
        const rank = new Map(parts.map((p, i) => [p.id, i]));
        const waits = joints
          .flatMap(({ parts: [a, b] }) => [[a, b] as const, [b, a] as const])
          .filter(([a, b]) => fits.has(a) && !liesOn(b, a))
          .filter(([a, b]) => !fits.has(b) || (rank.get(b) ?? 0) < (rank.get(a) ?? 0));
        const before = (id: string) => [
          ...(onOf(id) === 'field' ? [] : [onOf(id)]),
          ...waits.flatMap(([a, b]) => (a === id ? [b] : [])),
        ];
        const free = new Set<string>();
        for (let grew = true; grew; ) {
          grew = false;
          for (const { id } of parts) {
            if (free.has(id) || !before(id).every((b) => free.has(b))) continue;
            free.add(id);
            grew = true;
          }
        }
        if (free.size < parts.length) return;
        acyclic++;
        for (const [a, b] of waits) expect(at.get(b)).toBeLessThan(at.get(a) ?? 0);
      }),
      { numRuns: 300 },
    );
    expect(acyclic).toBeGreaterThan(100);
  });
});
