import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import type { Axis, Design, Part } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { arrangingOf, editsToArrange } from '../../src/editor/edit/arrange.ts';
import { arrangeSelection } from '../../src/editor/edit/arrangeSelection.ts';
import { duplicateSelection } from '../../src/editor/edit/selection.ts';
import { commit, select } from '../../src/editor/state/commit.ts';
import type { EditorStore } from '../../src/editor/state/store.ts';
import { speak } from '../../src/editor/words/t.ts';
import { copyByRule } from '../../src/layout/arrange/copy.ts';
import { divide } from '../../src/layout/arrange/divide.ts';
import { mirrorCopy } from '../../src/layout/arrange/mirror.ts';
import { runs } from '../runs.ts';
import { benchOf, perform } from './intent/hand.ts';

const design = newDesign();
const { face } = shownFrom(design);
const [W, H] = [face.width, face.height];

const partsOf = (store: EditorStore): readonly Part[] => store.getState().edit.design.parts;
const last = (store: EditorStore): string => partsOf(store).at(-1)?.name ?? '';

type Shares = readonly [number, number, number, number];

/** Draws by shares of the face, held by nothing. */
function drawn(store: EditorStore, tool: string, [x, y, w, h]: Shares): string {
  const gesture = { tool, pixels_per_mm: 0.5, jitter_px: [0, 0, 0, 0], modifier: 'free' } as const;
  perform(store, { ...gesture, from_mm: [x * W, y * H], to_mm: [(x + w) * W, (y + h) * H] }, new Map());
  return last(store);
}

function mirror(store: EditorStore, axis: Axis): string {
  arrangeSelection(store, (on, ids) => mirrorCopy(on, ids, { axis, about: { of: 'face', side: 'mid' } }));
  return last(store);
}

const DIVIDE = {
  left: { of: 'face', side: 'low' },
  right: { of: 'face', side: 'high' },
  bottom: { of: 'face', side: 'low' },
  top: { of: 'face', side: 'high' },
  framed: false,
  through: 'up',
  upright: 'pine-1x3',
  across: 'pine-1x3',
  names: { upright: 'stile', across: 'rail' },
  like: {
    on: 'face',
    finish: null,
    fixing: { how: 'brads', glue: true },
    onEdge: false,
    ends: { start: { cut: 'square' }, end: { cut: 'square' } },
    fit: false,
    locked: false,
  },
} as const;

function divided(store: EditorStore, columns: number, rows: number): string[] {
  const { shown } = store.getState().edit;
  const made = divide(arrangingOf(shown), { ...DIVIDE, columns, rows });
  commit(store, editsToArrange(shown, made), 'divide');
  return partsOf(store)
    .slice(-made.add.length)
    .map(({ name }) => name);
}

describe('names by what a thing is and where', () => {
  it('are those that a person would give', () => {
    const store = benchOf(design);
    expect(drawn(store, 'frame', [0.02, 0.02, 0.96, 0.96])).toBe('Border');
    expect(drawn(store, 'panel', [0.1, 0.1, 0.3, 0.6])).toBe('Left door');
    expect(mirror(store, 'x')).toBe('Right door');
    expect(drawn(store, 'strip', [0.1, 0.9, 0.8, 0.02])).toBe('Top rail');
    expect(mirror(store, 'y')).toBe('Bottom rail');
    expect(drawn(store, 'strip', [0.48, 0.1, 0.03, 0.6])).toBe('Center stile');
    expect(drawn(store, 'sign', [0.35, 0.75, 0.3, 0.1])).toBe('Top sign');
  });

  it('begin with what a part lies on or frames, and go along to its mirror image', () => {
    const store = benchOf(design);
    drawn(store, 'panel', [0.1, 0.1, 0.3, 0.6]);
    expect(drawn(store, 'strip', [0.12, 0.62, 0.26, 0.02])).toBe('Left door top rail');
    expect(drawn(store, 'strip', [0.12, 0.12, 0.26, 0.02])).toBe('Left door bottom rail');
    expect(drawn(store, 'frame', [0.1, 0.1, 0.3, 0.6])).toBe('Left door frame');
    expect(drawn(store, 'fitting', [0.33, 0.38, 0.02, 0.02])).toBe('Left door hardware');
    expect(drawn(store, 'fitting', [0.33, 0.5, 0.02, 0.02])).toBe('Left door right hardware');
    select(
      store,
      partsOf(store).map(({ id }) => id),
    );
    mirror(store, 'x');
    expect(
      partsOf(store)
        .slice(6)
        .map(({ name }) => name),
    ).toEqual([
      'Right door',
      'Right door top rail',
      'Right door bottom rail',
      'Right door frame',
      'Right door hardware',
      'Right door left hardware',
    ]);
  });

  it('tell a few by their place and count many in reading order', () => {
    expect(divided(benchOf(design), 3, 1)).toEqual(['Left stile', 'Right stile']);
    expect(divided(benchOf(design), 6, 1)).toEqual(['Stile 1', 'Stile 2', 'Stile 3', 'Stile 4', 'Stile 5']);
    expect(divided(benchOf(design), 2, 3)).toEqual([
      'Center stile',
      'Bottom left rail',
      'Bottom right rail',
      'Top left rail',
      'Top right rail',
    ]);
  });

  it('are kept in copies where a person gave them', () => {
    const store = benchOf(design);
    drawn(store, 'panel', [0.1, 0.1, 0.3, 0.3]);
    const [part] = partsOf(store);
    if (!part) throw new Error('nothing was drawn');
    commit(
      store,
      [{ kind: 'replace', list: 'parts', id: part.id, item: { ...part, name: 'Hatch' } }],
      'name',
    );
    duplicateSelection(store);
    duplicateSelection(store);
    expect(partsOf(store).map(({ name }) => name)).toEqual(['Hatch', 'Hatch 2', 'Hatch 3']);
  });
});

/** The words by which the names of a language say places, and how a name begins that says what its part lies on. */
const SAID = {
  en: { left: 'left', right: 'right', top: 'top', bottom: 'bottom', after: ' ' },
  de: { left: 'links', right: 'rechts', top: 'oben', bottom: 'unten', after: ', ' },
} as const;

/** Places that names say and that are not so: an own reading of names and boxes. */
function untrue(design: Design, language: keyof typeof SAID): string[] {
  const { left, right, top, bottom, after } = SAID[language];
  const { boxes } = shownFrom(design).layout;
  const boxOf = (part: Part) => boxes.get(part.id) ?? part.box;
  return design.parts.flatMap((part) => {
    const carriers = design.parts.filter((one) => part.name.startsWith(one.name + after));
    const [carrier] = carriers.sort((a, b) => b.name.length - a.name.length);
    const within = carrier ? boxOf(carrier) : { x: 0, y: 0, w: W, h: H };
    const said = part.name.slice(carrier ? carrier.name.length : 0).toLowerCase();
    const box = boxOf(part);
    const x = box.x + box.w / 2 - within.x - within.w / 2;
    const y = box.y + box.h / 2 - within.y - within.h / 2;
    const says = (word: string) => new RegExp(`(^|\\s|,)${word}(\\s|,|$)`).test(said);
    const wrong =
      (says(left) && x >= 0) || (says(right) && x <= 0) || (says(bottom) && y >= 0) || (says(top) && y <= 0);
    return wrong ? [`${part.name} at ${x.toFixed()}, ${y.toFixed()}`] : [];
  });
}

const share = fc.integer({ min: 0, max: 19 }).map((n) => n / 20);
const size = fc.integer({ min: 1, max: 18 }).map((n) => n / 20);
const act = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      tool: fc.constantFrom('strip', 'panel', 'frame', 'sign', 'painted', 'fitting', 'row'),
      box: fc.tuple(share, share, size, size),
    }),
  },
  fc.record({ mirror: fc.constantFrom('x', 'y') }),
  fc.record({
    copies: fc.integer({ min: 1, max: 6 }),
    axis: fc.constantFrom('x', 'y'),
    gap: fc.integer({ min: -60, max: 60 }),
  }),
  fc.record({ columns: fc.integer({ min: 1, max: 5 }), rows: fc.integer({ min: 1, max: 4 }) }),
  fc.constant('duplicate' as const),
);

it.each(['en', 'de'] as const)(
  'random faces have no two names alike, and none that is untrue (%s)',
  async (language) => {
    vi.stubGlobal('document', { documentElement: {} });
    await speak(language);
    fc.assert(
      fc.property(fc.array(act, { minLength: 2, maxLength: 7 }), (acts) => {
        const store = benchOf(design);
        for (const one of acts) {
          const before = partsOf(store).map(({ id, name }) => [id, name]);
          if (one === 'duplicate') duplicateSelection(store);
          else if ('tool' in one) drawn(store, one.tool, one.box);
          else if ('mirror' in one) mirror(store, one.mirror);
          else if ('columns' in one) divided(store, one.columns, one.rows);
          else
            arrangeSelection(store, (on, ids) =>
              copyByRule(on, ids, { axis: one.axis, gap: one.gap, count: one.copies }),
            );
          const now = new Map(partsOf(store).map(({ id, name }) => [id, name]));
          for (const [id, name] of before) expect(now.get(id ?? '')).toBe(name);
        }
        const there = store.getState().edit.design;
        const names = there.parts.map(({ name }) => name);
        expect(new Set(names).size).toBe(names.length);
        expect(untrue(there, language)).toEqual([]);
      }),
      { numRuns: runs(10) },
    );
    await speak('en');
    vi.unstubAllGlobals();
  },
);
