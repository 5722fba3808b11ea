import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { slotsOf } from '../src/design/rule/table.ts';
import type { Rule } from '../src/design/schema.ts';
import { RULE_WORDS } from '../src/editor/edit/ruleWords.ts';

const SRC = new URL('../src/', import.meta.url).pathname;

const files = readdirSync(SRC, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
  .map((entry) => join(entry.parentPath, entry.name));

/** The files of the source that name a kind. */
const naming = (pattern: RegExp): string[] =>
  files
    .filter((file) => pattern.test(code(file)))
    .map((file) => relative(SRC, file))
    .sort();

/** Sentences apart, since they are read by people. */
const code = (file: string): string =>
  readFileSync(file, 'utf8')
    .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
    .replace(/(['"`])(?:[^'"`\n]* [^'"`\n]*)\1/g, '');

/** Where a part is asked for one kind by its name: what a bar is drawn or joined as, a hand's own gesture, a form. */
const PARTS_ASKED: Readonly<Record<string, readonly string[]>> = {
  strip: [
    'design/ends.ts',
    'design/reading.ts',
    'editor/drawing/handles.ts',
    'editor/edit/create.ts',
    'editor/edit/member.ts',
    'editor/edit/naming.ts',
    'editor/edit/stopHere.ts',
    'editor/edit/swingMends.ts',
    'editor/edit/whereabouts.ts',
    'editor/gesture/snapping.ts',
    'editor/gesture/turn.ts',
    'editor/pane/part/RepeatSection.tsx',
    'joinery/natural.ts',
    'layout/along.ts',
    'layout/arrange/space.ts',
    'layout/check/unsupported.ts',
    'layout/place/stop.ts',
    'layout/structure.ts',
  ],
  run: [
    'editor/drawing/drawPart.ts',
    'editor/edit/corners.ts',
    'editor/edit/naming.ts',
    'editor/gesture/path.ts',
    'editor/pane/part/CornerFields.tsx',
    'editor/pane/wood/Joints.tsx',
    'joinery/arch.ts',
    'joinery/bar.ts',
    'joinery/joinery.ts',
    'joinery/meet.ts',
    'joinery/stops.ts',
    'layout/along.ts',
    'layout/place/place.ts',
    'layout/place/stop.ts',
    'output/packet/assembled.ts',
  ],
  panel: [
    'editor/edit/create.ts',
    'editor/pane/part/ownFields.ts',
    'joinery/shown.ts',
    'joinery/spans.ts',
    'layout/arrange/space.ts',
  ],
  sign: ['design/made.ts', 'editor/edit/create.ts', 'measure/parse.ts'],
  lettering: ['design/made.ts', 'editor/canvas/CanvasFields.tsx'],
  fitting: ['editor/edit/create.ts', 'editor/edit/member.ts'],
  painted: ['editor/edit/create.ts', 'finish/jobs.ts', 'finish/tape.ts'],
  fill: ['editor/edit/members.ts', 'editor/edit/places.ts'],
  array: [
    'editor/canvas/CanvasFields.tsx',
    'editor/drawing/dimensions.ts',
    'editor/edit/members.ts',
    'editor/edit/places.ts',
    'layout/arrange/mirror.ts',
    'layout/reference.ts',
    'layout/solve/lines.ts',
  ],
};

/** Where a rule is asked for its kind: what snapping offers, what lets go or follows, what the solver chooses. */
const RULES_ASKED: Readonly<Record<string, readonly string[]>> = {
  set: [
    'editor/edit/evenCount.ts',
    'editor/edit/ownMake.ts',
    'editor/edit/stopHere.ts',
    'editor/gesture/snapping.ts',
    'layout/arrange/recount.ts',
    'layout/snap/ranking.ts',
  ],
  gap: ['editor/drawing/dimensions.ts', 'editor/gesture/snapping.ts'],
  center: [
    'editor/canvas/CanvasFields.tsx',
    'layout/solve/attempt.ts',
    'layout/solve/blocks.ts',
    'layout/solve/solution.ts',
  ],
  between: ['editor/edit/ownMake.ts', 'layout/snap/sized.ts', 'marks/order.ts'],
  even: ['editor/canvas/CanvasFields.tsx', 'editor/edit/ownMake.ts', 'editor/pane/part/RuleFields.tsx'],
  mirror: ['editor/edit/arrange.ts', 'editor/edit/lay.ts'],
  reveal: ['layout/snap/sized.ts'],
};

/** The files that compare a kind with a name, by name. */
function asked(names: readonly string[]): Readonly<Record<string, readonly string[]>> {
  const compared = new RegExp(`\\bkind [!=]== '(${names.join('|')})'`, 'g');
  const found: Record<string, string[]> = {};
  for (const file of files) {
    const source = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
    const named = new Set([...source.matchAll(compared)].map(([, name]) => name ?? ''));
    for (const name of named) found[name] = [...(found[name] ?? []), relative(SRC, file)].sort();
  }
  return found;
}

describe('a kind is declared, not told again in every room', () => {
  // The experiment: a rule that says what sizes parts have against each other, as if it were to be added now.
  it('a rule is its schema and shape, its equations, its sentence in each language, and how a hand makes it', () => {
    expect(naming(/\bgraded(?![a-z])/)).toEqual([
      'design/assembly/building.ts',
      'design/rule/graded.ts',
      'design/rule/schema.ts',
      'design/rule/table.ts',
      'editor/edit/sharedRule.ts',
      'editor/words/de/parts.ts',
      'editor/words/en/parts.ts',
      'editor/words/es/parts.ts',
      'layout/rule/graded.ts',
      'layout/rule/table.ts',
      'plan/words/de/rules.ts',
      'plan/words/en/rules.ts',
      'plan/words/es/rules.ts',
    ]);
  });

  it('every measure and choice of a rule has a name in the editor', () => {
    const end = { of: 'face', side: 'low' } as const;
    const ends = { low: end, high: end };
    const rules: readonly Rule[] = [
      { id: 'r', kind: 'set', axis: 'x', edge: end, from: end, distance: 0 },
      { id: 'r', kind: 'between', axis: 'x', part: 'p', ...ends, insetLow: 0, insetHigh: 0 },
      { id: 'r', kind: 'even', axis: 'x', parts: ['p'], ...ends, mode: 'gaps' },
      { id: 'r', kind: 'reveal', part: 'p', inside: 'face', inner: false, margin: 0 },
      { id: 'r', kind: 'graded', axis: 'x', parts: ['p'], ...ends, ratio: [1], gap: 0 },
    ];
    for (const rule of rules) {
      for (const slot of slotsOf(rule)) {
        if (slot.is !== 'measure' && slot.is !== 'choice') continue;
        expect(Object.keys(RULE_WORDS), rule.kind).toContain(slot.field);
      }
    }
  });

  // Its body, its place, its image, its look and its fields: each room treats it in one file of its own or in a line.
  it('a part is told by what it is made as, but where a room truly treats its kind', () => {
    expect(naming(/'fitting'|\bfitting:/)).toEqual([
      'design/assembly/building.ts',
      'design/defaults.ts',
      'design/made.ts',
      'design/schema.ts',
      'editor/control/kindIcons.ts',
      'editor/edit/create.ts',
      'editor/edit/member.ts',
      'editor/edit/whereabouts.ts',
      'editor/pane/part/MemberFields.tsx',
      'editor/pane/part/PartFields.tsx',
      'editor/state/tools.ts',
      'layout/arrange/reflect.ts',
      'layout/laid.ts',
      'layout/place/body.ts',
      'layout/structure.ts',
      'load/mass.ts',
      'output/packet/words/de.ts',
      'output/packet/words/en.ts',
      'output/packet/words/es.ts',
      'plan/shopping.ts',
      'plan/types.ts',
      'plan/words/de.ts',
      'plan/words/en.ts',
      'plan/words/es.ts',
    ]);
  });

  // What it is made as, whether it has letters, whether it is many: `design/made.ts` says it of every kind.
  it('no other file asks for a kind by its name', () => {
    const parts = ['strip', 'run', 'panel', 'sign', 'fitting', 'painted', 'lettering', 'fill', 'array'];
    expect(asked(parts)).toEqual(PARTS_ASKED);
    expect(asked(['set', 'gap', 'center', 'between', 'even', 'mirror', 'same', 'reveal', 'graded'])).toEqual(
      RULES_ASKED,
    );
  });
});
