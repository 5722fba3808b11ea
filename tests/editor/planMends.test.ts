import { describe, expect, it } from 'vitest';
import { CHECK_CODES, type CheckCode } from '../../src/check/codes.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { mendsFor } from '../../src/editor/edit/mends.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import { SUPPLIES } from '../plan/starters.ts';

const box = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });
const strip = (id: string, x: number, y: number, w: number) =>
  newPart('strip', { id, name: id, box: box(x, y, w, 38.1), stock: 'pine-1x2', finish: 'trim' });
const panel = (id: string, place: Part['box'], stock?: string) =>
  newPart('panel', { id, name: id, box: place, finish: 'trim', ...(stock ? { stock } : {}) });
const board = panel('board', box(300, 300, 400, 400), 'mdf-half');
const base: Design = { ...newDesign(), parts: [board] };
const withParts = (...parts: Part[]): Design => ({ ...base, parts: [...base.parts, ...parts] });
const fastened = (change: Partial<Design['fastening']>): Design => ({
  ...base,
  fastening: { ...base.fastening, ...change },
});
const flat = (id: string, thickness: number) =>
  ({
    form: 'flat',
    id,
    name: id,
    material: 'pine',
    width: 140,
    thickness,
    lengths: [{ length: 2400, price: 1 }],
  }) as const;
const fitting = (y: number, depth: number): Part => ({
  ...newPart('fitting', { id: 'lamp', name: 'Lamp', box: box(450, y, 40, 40) }),
  depth,
});
/** A rule that names what is not there. */
const lost = {
  id: 'lost',
  kind: 'set',
  axis: 'y',
  edge: { of: 'nobody', side: 'low' },
  from: { of: 'face', side: 'low' },
  distance: 4,
} as const;

/** For each check that buttons mend, a face of which it comes. Measures are worked out in `tests/fold` and `tests/plan`. */
const MENDED = {
  'part.off-face': withParts(strip('wide', 900, 1000, 400)),
  'part.unsupported': withParts({ ...strip('floating', 100, 900, 500), on: 'board' }),
  'part.overlap': withParts(panel('second', box(500, 500, 400, 400))),
  'part.keep-clear': {
    ...base,
    keepClears: [{ id: 'latch', name: 'Latch', why: 'latch', box: box(650, 320, 100, 60), height: 30 }],
  },
  'part.unknown-support': withParts({ ...strip('lost', 200, 900, 200), on: 'nothing-there' }),
  'part.support-cycle': withParts(
    { ...strip('one', 200, 900, 200), on: 'two' },
    { ...strip('two', 200, 900, 200), on: 'one' },
  ),
  // It stands beside the board, and under another that it may end at instead.
  'end.not-met': withParts(panel('lintel', box(80, 900, 200, 60)), {
    ...newPart('strip', { id: 'post', name: 'post', box: box(100, 300, 38.1, 300), stock: 'pine-1x2' }),
    lie: 'up',
    ends: { start: { cut: 'square' }, end: { cut: 'stop', at: 'board' } },
  }),
  'rule.unknown-part': { ...base, rules: [lost] },
  'bed.legs': { ...base, bed: { ...base.bed, legs: { ...base.bed.legs, length: 100 } } },
  'finish.primer-hides': {
    ...base,
    finishes: base.finishes.map((f) => ({ ...f, kind: 'stain', primer: { coats: 1, rate_m2_l: 8 } })),
  },
  // Standing 225 out at the lower edge, it turns over 303 around a pivot 298 above the floor.
  'fold.hits-floor': withParts(fitting(1, 225)),
  // Ends 290 below a pivot that is 152 from the wall.
  'fold.hits-wall': withParts({ ...panel('skirt', box(100, -220, 400, 400)), on: 'rim' }),
  // Ends 2030 above a pivot that is 298 above the floor.
  'fold.hits-ceiling': {
    ...withParts(panel('cornice', box(100, 1900, 400, 200))),
    bed: { ...base.bed, ceiling: 2250 },
  },
  'fold.hits-legs': {
    ...withParts({ ...strip('beam', 200, 900, 600), stock: 'beam' }),
    stocks: [flat('beam', 300), flat('plank', 19)],
  },
  'fold.hits-side': {
    ...withParts(strip('wide', 700, 1000, 400)),
    bed: { ...base.bed, beside: { left: null, right: 20 } },
  },
  'fastening.through': fastened({ lengths: [90] }),
  'fastening.no-brad': fastened({ lengths: [12.7], bite: 12 }),
  'fastening.few': withParts(panel('small', box(450, 900, 14, 14), 'mdf-half')),
  'fastening.loose-edge': {
    ...withParts(panel('flap', box(150, 900, 500, 500))),
    keepClears: [{ id: 'rail', name: 'Rail', why: 'other', box: box(140, 890, 60, 520), height: 0 }],
  },
  'fastening.screws': fastened({ screwOver_kg: 0.2 }),
  'fastening.lever': {
    ...withParts({ ...strip('shelf', 200, 880, 600), stock: 'plank', onEdge: true }),
    stocks: [flat('plank', 19)],
    fastening: { ...base.fastening, screwOver_kg: 2 },
  },
} as const satisfies Partial<Record<CheckCode, Design>>;

const MEANT = 'what was meant only the person knows: chosen in the list of its field';
const AT_ITS_FIELD = 'which of several measures is to give way only the person knows: said at its fields';
const WORDS = 'what else is written only the person knows: said beside the words';
const OTHER_FACE = 'it takes another design of the face';
const TOLD = 'nothing is wrong: a note for the work';

/** Why no button mends the other checks. */
const NOT_MENDED: Readonly<Record<Exclude<CheckCode, keyof typeof MENDED>, string>> = {
  'part.no-size': AT_ITS_FIELD,
  'part.measures-eased': AT_ITS_FIELD,
  'part.unknown-stock': MEANT,
  'part.unknown-finish': MEANT,
  'rule.impossible': 'has buttons of its own: each rule of the fight can be removed',
  'rule.gap-negative': 'which part is too many only the person knows: the rule is named',
  'rule.gap-over-most': 'has a button of its own in the list of rules, which adds the parts',
  'array.count': AT_ITS_FIELD,
  'run.no-room': 'the other side, narrower stock or segments: all look otherwise, and the person chooses',
  'run.head-not-flush': MEANT,
  'run.bent-tight': 'thinner stock, kerfs, sawn arcs or segments: all look otherwise, and the person chooses',
  'fill.between-stiles': TOLD,
  'fill.starter': AT_ITS_FIELD,
  'fill.uncovered': AT_ITS_FIELD,
  'bed.no-room': 'the bed is built, and only a tape tells which measure is wrong: said at its field',
  'bed.not-closing': 'only a tape tells what the reading is: said at its field',
  'bed.out-of-square': TOLD,
  'bed.bowed': TOLD,
  'bed.edge': TOLD,
  'bed.datum': TOLD,
  'bed.corner': TOLD,
  'part.ripped': 'wider stock is bought, or the border takes the reveal: both are the person’s choice',
  'joint.overlap': 'which of the joints is meant is chosen under Wood, on a drawing of each',
  'joint.not-made': 'which other joint is meant is chosen under Wood, on a drawing of each',
  'joint.stops': TOLD,
  'joint.over-saw': TOLD,
  'joint.bevel-over-saw': TOLD,
  'piece.nothing-left': OTHER_FACE,
  'piece.too-long': 'longer stock is bought, or the face is drawn with a joint: both are the person’s choice',
  'piece.too-big':
    'a larger sheet is bought, or the face is drawn with a joint: both are the person’s choice',
  'piece.too-short': TOLD,
  'piece.not-as-read': TOLD,
  'piece.measured-in-place': TOLD,
  'cutting.not-proved': TOLD,
  'lettering.missing-glyph': WORDS,
  'lettering.unknown-font': MEANT,
  'lettering.off-sign': AT_ITS_FIELD,
  'lettering.crosses': MEANT,
  'lettering.no-room': AT_ITS_FIELD,
  'lettering.corner': AT_ITS_FIELD,
  'lettering.photo': MEANT,
  'lettering.photo-coarse': AT_ITS_FIELD,
  'lettering.script': WORDS,
  'lettering.low-contrast': 'colors are the person’s choice',
  'stencil.loose-island': 'bridges are drawn where they look right',
  'stencil.thin-tongue': 'bridges are drawn where they look right',
  'stencil.one-bridge': 'there is no room for another bridge',
  'stencil.letter-lost': AT_ITS_FIELD,
  'stencil.placed-lost': TOLD,
  'patterns.too-many-pages': AT_ITS_FIELD,
  'patterns.no-room': AT_ITS_FIELD,
  'patterns.no-margin': AT_ITS_FIELD,
  'patterns.unknown-paper': MEANT,
  'finish.no-containers': MEANT,
  'fold.tight': 'only a measure taken there tells whether anything is wrong',
  'load.heavy': OTHER_FACE,
  'load.lift': OTHER_FACE,
  'load.no-density': MEANT,
  'fastening.nothing-solid': OTHER_FACE,
  'fastening.unknown': MEANT,
  'order.circle': 'which of the joints gives way only the person knows',
  'limit.parts': OTHER_FACE,
  'limit.rules': OTHER_FACE,
  'limit.letters': OTHER_FACE,
};

describe('the mends of every kind of check', () => {
  // What a design shares with the one before it is not worked out again.
  const planner = createPlanner();
  const isOfFace = (code: string) => /^(part|rule|end)\./.test(code);
  /** Of the face alone where it says them: a plan takes longer. */
  const checksOf = (design: Design, code: string) => {
    const ofFace = shownFrom(design).layout.checks;
    const all = isOfFace(code) ? ofFace : planner(design, SUPPLIES, { effort: { nodes: 1 } }).checks;
    return all.filter((one) => one.code === code);
  };
  it('stand in one of two tables: as buttons, or with the reason why there are none', () => {
    expect([...Object.keys(MENDED), ...Object.keys(NOT_MENDED)].sort()).toEqual([...CHECK_CODES].sort());
    for (const code of Object.keys(NOT_MENDED) as CheckCode[]) {
      const check = { code, severity: 'error', parts: ['board'], figures: {} } as const;
      expect(mendsFor(shownFrom(base), [check]), code).toEqual([]);
    }
  });

  it.each(Object.entries(MENDED))('leave nothing of %s at its part, or make it a note', (code, design) => {
    const [first] = checksOf(design, code);
    if (!first) throw new Error(`${code} does not come`);
    const mends = mendsFor(shownFrom(design), [first]);
    if (mends.length === 0) throw new Error(`${code} has no mend`);
    for (const mend of mends) {
      const done = applyEdits(design, mend.edits);
      if (!done.ok) throw new Error('refused');
      const left = checksOf(done.design, code).filter(
        (one) => one.parts.join() === first.parts.join() && one.severity !== 'note',
      );
      expect(left, mend.how).toEqual([]);
    }
  });
});
