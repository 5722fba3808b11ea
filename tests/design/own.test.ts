import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  isOwnAssembly,
  type OwnAssembly,
  openOwn,
  ownJsonSchema,
  saveOwn,
} from '../../src/design/assembly/own.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import { ENGLISH_FILE } from '../../src/design/fileWords.ts';
import { designJsonSchema } from '../../src/design/jsonSchema.ts';
import { MOST_DEPTH, readText } from '../../src/design/open.ts';
import { problemMessage } from '../../src/design/problem.ts';
import type { Design } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { createOwn } from '../../src/editor/edit/own.ts';
import { ownOf } from '../../src/editor/edit/ownMake.ts';
import { chanceOf } from '../chance.ts';
import { SKINNED } from '../plan/assembly/made.ts';
import { starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';
import { mildlyDamaged, rudelyDamaged, tornText } from './damage.ts';

const whole = (() => {
  const design = starter('lighthouse-keeper');
  const own = ownOf(shownFrom(design), design.groups[1]?.parts ?? [], 'Keeper’s door');
  if (!own) throw new Error('nothing selected');
  return own;
})();

type Data = Record<string, never> & { parts: { on: string }[]; rules: unknown[]; groups: unknown[] };

/** The file as plain data, changed as a damaged one would be. */
function changed(change: (data: Data) => void): object {
  const data = JSON.parse(saveOwn(whole)) as Data;
  change(data);
  return data;
}

function refusal(data: object): string {
  const opening = openOwn(data);
  if (opening.ok) throw new Error('was opened');
  return opening.problems.map((p) => problemMessage(p)).join(' ');
}

describe('a file of a building part of one’s own', () => {
  it('gives back what was saved, and is told from a design', () => {
    const read = readText(saveOwn(whole), ENGLISH_FILE);
    expect(read.ok && isOwnAssembly(read.data) && openOwn(read.data)).toEqual({
      ok: true,
      opened: whole,
      repairs: [],
    });
    expect([SKINNED, null, 7, [], 'showfaceAssembly'].some(isOwnAssembly)).toBe(false);
    expect(readText('['.repeat(MOST_DEPTH + 1), ENGLISH_FILE).ok).toBe(false);
  });

  it('is refused when another version wrote it, and when it names what it does not bring', () => {
    expect(refusal({ showfaceAssembly: 2 })).toContain('newer version');
    expect(refusal({ showfaceAssembly: '1' })).toContain('No version of this tool wrote that');
    const outside: ((data: Data) => void)[] = [
      (data) => Object.assign(data, { ground: 'elsewhere' }),
      (data) => Object.assign(data.parts[1] ?? {}, { on: 'elsewhere' }),
      (data) =>
        data.rules.push({
          ...{ id: 'r', kind: 'set', axis: 'x', distance: 0 },
          ...{ edge: { of: whole.ground, side: 'low' }, from: { of: 'face', side: 'low' } },
        }),
      (data) => data.groups.push({ id: 'g', name: 'G', parts: ['elsewhere'] }),
    ];
    for (const change of outside)
      expect(refusal(changed(change))).toContain('names of parts of this file alone');
    expect(refusal(changed((data) => Object.assign(data, { bed: {} })))).toContain('unknown field “bed”');
  });

  it('is described by its JSON Schema in assets (npm run schema), by the lists of a design', () => {
    const file = readFileSync(new URL('../../assets/assembly.schema.json', import.meta.url), 'utf8');
    expect(JSON.parse(file)).toEqual(JSON.parse(JSON.stringify(ownJsonSchema())));
    const schema = designJsonSchema() as { properties: object };
    const refs = [...file.matchAll(/"\$ref": "([^#]*)#\/properties\/(\w+)"/g)].map(([, of, list]) => [
      of,
      list,
    ]);
    expect(refs).toHaveLength(9);
    for (const [of, list] of refs) {
      expect(of).toBe('showface-design-1');
      expect(Object.keys(schema.properties)).toContain(list);
    }
  });

  it('never throws however it is damaged, and what opens is laid on a face', () => {
    for (let seed = 0; seed < runs(300); seed++) {
      const chance = chanceOf(seed);
      const way = chance();
      const as = whole as unknown as Design;
      const text =
        way < 0.2
          ? tornText(saveOwn(whole), chance)
          : JSON.stringify(way < 0.6 ? rudelyDamaged(as, chance) : mildlyDamaged(as, chance));
      const read = readText(text, ENGLISH_FILE);
      const opening = read.ok && isOwnAssembly(read.data) ? openOwn(read.data) : null;
      if (!opening?.ok) {
        expect(opening?.problems.length ?? 1, `${seed}`).toBeGreaterThan(0);
        continue;
      }
      const own: OwnAssembly = opening.opened;
      const done = applyEdits(SKINNED, createOwn(SKINNED, own, { x: 50, y: 60, w: 500, h: 900 }).edits);
      expect(done.ok, `${seed}`).toBe(true);
      if (done.ok) shownFrom(done.design);
    }
    expect(({} as { extra?: unknown }).extra).toBeUndefined();
  });
});
