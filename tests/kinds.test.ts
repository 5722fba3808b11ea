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

describe('a kind is declared, not told again in every room', () => {
  // The experiment: a rule that says what sizes parts have against each other, as if it were to be added now.
  it('a rule is its schema and shape, its equations, its sentence in each language, and how a hand makes it', () => {
    expect(naming(/\bgraded(?![a-z])/)).toEqual([
      'design/rule/graded.ts',
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
});
