import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { designJsonSchema } from '../../src/design/jsonSchema.ts';
import { type Migration, migrate } from '../../src/design/migrate/migrate.ts';
import { MOST_DEPTH, openData, openDesign } from '../../src/design/open.ts';
import { problemMessage } from '../../src/design/problem.ts';
import { saveDesign } from '../../src/design/save.ts';

const design = () => ({
  ...newDesign(),
  parts: [newPart('strip', { id: 'left', name: 'Left stile', box: { x: 0, y: 0, w: 38, h: 900 } })],
});

/** The design as plain JSON data, changed by hand as a damaged file would be. */
function damaged(change: (data: Record<string, unknown>) => void): string {
  const data = JSON.parse(saveDesign(design())) as Record<string, unknown>;
  change(data);
  return JSON.stringify(data);
}

function refusal(text: string): string[] {
  const opened = openDesign(text);
  if (opened.ok) throw new Error('was opened');
  return opened.problems.map((p) => problemMessage(p));
}

describe('opening a design file', () => {
  it('gives back the design that was saved', () => {
    const opened = openDesign(saveDesign(design()));
    expect(opened).toEqual({ ok: true, design: design(), repairs: [], migratedFrom: 1 });
    expect(openDesign(`\uFEFF${saveDesign(design())}`).ok).toBe(true);
  });

  it('opens a file without supplies as it is, and gives back those that it holds', () => {
    expect(Object.hasOwn(design(), 'supplies')).toBe(false);
    const supplies = {
      owned: {
        primer_l: 0.5,
        glue_l: 0.2,
        tape: 12_000,
        screws: [{ screw: 'screw-8', length: 31.75, count: 40 }],
      },
      prices: { 'brad-18': 7.5 },
      primer: [{ container: 'us-quart', price: 14 }],
    };
    const held = { ...design(), supplies };
    expect(openDesign(saveDesign(held))).toEqual({ ok: true, design: held, repairs: [], migratedFrom: 1 });
    const less = damaged((d) => {
      d.supplies = { ...supplies, owned: { ...supplies.owned, tape: -1 } };
    });
    expect(refusal(less)[0]).toContain('supplies');
  });

  it('names the place where the text breaks off', () => {
    const text = saveDesign(design());
    expect(refusal(text.slice(0, 200))[0]).toMatch(
      /found .*line \d+, column \d+; expected more of a JSON text/,
    );
    expect(refusal('')[0]).toContain('the end of the text at line 1, column 1');
  });

  it('refuses files of another kind, another version and another depth', () => {
    expect(refusal('[]')[0]).toContain('no field “showface”');
    expect(refusal('{"showface": 2}')[0]).toContain(
      'found format version 2; expected a format version from 1 to 1',
    );
    expect(refusal('{"showface": 2}')[0]).toContain('newer version');
    expect(refusal('{"showface": "1"}')[0]).toContain('found the version "1"');
    expect(refusal('{"showface": 0.5}')[0]).toContain('No version of this tool wrote that');
    expect(refusal('['.repeat(100_000))[0]).toContain(`expected at most ${MOST_DEPTH}`);
  });

  it('names part, field, what was found and what is expected', () => {
    const part = (d: Record<string, unknown>) =>
      (d.parts as Record<string, Record<string, unknown>>[])[0] ?? {};
    const width = damaged((d) => {
      (part(d).box as Record<string, unknown>).w = -40;
    });
    expect(refusal(width)).toEqual([
      'parts[0].box.w (“Left stile”): found -40; expected a number of at least 0. Correct the value and open the file again.',
    ]);
    const kind = damaged((d) => {
      (part(d) as Record<string, unknown>).kind = 'tower';
    });
    expect(refusal(kind)[0]).toContain('parts[0].kind');
    const text = damaged((d) => {
      (part(d) as Record<string, unknown>).name = 7;
    });
    expect(refusal(text)[0]).toContain('found 7; expected a text. Correct the value');
    const missing = damaged((d) => {
      delete d.bed;
    });
    expect(refusal(missing)[0]).toContain('bed: found nothing; expected an object. Add the field.');
    const extra = damaged((d) => {
      d.colour = 'red';
    });
    expect(refusal(extra)[0]).toContain('found the unknown field “colour”');
  });

  it('lets no prototype key through', () => {
    const text = saveDesign(design()).replace(
      '"name": "New face"',
      '"__proto__": {"polluted": 1}, "name": "x"',
    );
    const opened = openDesign(text);
    expect(opened.ok).toBe(false);
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    const id = damaged((d) => {
      (d.parts as { id: string }[])[0]!.id = '__proto__';
    });
    expect(refusal(id)[0]).toContain('parts[0].id');
  });

  it('gives a repeated id a new one and says so', () => {
    const twice = damaged((d) => {
      const parts = d.parts as object[];
      parts.push(...structuredClone(parts), ...structuredClone(parts));
    });
    const opened = openDesign(twice);
    if (!opened.ok) throw new Error('refused');
    expect(opened.design.parts.map((p) => p.id)).toEqual(['left', 'left-2', 'left-3']);
    expect(opened.repairs).toEqual([
      'parts: a second “left” was given the id “left-2”',
      'parts: a second “left” was given the id “left-3”',
    ]);
  });

  it('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(openDesign(text).ok).toBe(false);
      }),
    );
    const text = saveDesign(design());
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(6), fc.string({ maxLength: 4 }), (at, cut, put) => {
        const opened = openDesign(text.slice(0, at) + put + text.slice(at + cut));
        if (opened.ok) expect(openDesign(saveDesign(opened.design)).ok).toBe(true);
        else expect(opened.problems.map((p) => problemMessage(p)).every((m) => m.length > 0)).toBe(true);
      }),
    );
    fc.assert(
      fc.property(fc.object({ maxDepth: 4 }), (data) => {
        expect(openData({ showface: 1, ...data }).ok).toBe(false);
      }),
    );
  });
});

describe('migration', () => {
  it('walks from version to version and stops where a step is missing', () => {
    const steps = new Map<number, Migration>([
      [1, (d) => ({ ...d, one: true })],
      [2, (d) => ({ ...d, two: d.one })],
    ]);
    expect(migrate({ showface: 1 }, steps, 3)).toEqual({
      ok: true,
      from: 1,
      data: { showface: 3, one: true, two: true },
    });
    expect(migrate({ showface: 1 }, new Map(), 2)).toMatchObject({ ok: false, why: 'unknown-version' });
  });
});

describe('the JSON Schema in assets', () => {
  it('is the one that the code generates (npm run schema)', () => {
    const file = readFileSync(new URL('../../assets/design.schema.json', import.meta.url), 'utf8');
    expect(JSON.parse(file)).toEqual(JSON.parse(JSON.stringify(designJsonSchema())));
  });
});
