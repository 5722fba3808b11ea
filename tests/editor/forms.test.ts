import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openData } from '../../src/design/open.ts';
import { type Bed, type PanelShape, panelShapeSchema } from '../../src/design/schema.ts';
import { changeBy, type FormField, shownIn, within } from '../../src/editor/control/form/formField.ts';
import {
  BED_SECTIONS,
  BESIDE_FIELDS,
  frameBoardField,
  SKIN_FIELDS,
} from '../../src/editor/pane/bed/bedFields.ts';
import { SHAPE_FIELDS, type Shaped } from '../../src/editor/pane/part/shapeFields.ts';
import { kiosk } from '../plan/starters.ts';
import { runs } from '../runs.ts';

const design = kiosk();
const { bed } = design;

/** Paths of all that differs, walked by this test's own hand. */
function differing(a: unknown, b: unknown, path = ''): string[] {
  if (Object.is(a, b)) return [];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return [path];
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].flatMap((name) =>
    differing((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name], `${path}/${name}`),
  );
}

const given = (field: FormField<Bed>, next: unknown, on: Bed): Bed => ({
  ...on,
  ...changeBy(field, next, on),
});

const opens = (next: Bed) => openData(JSON.parse(JSON.stringify({ ...design, bed: next }))).ok;

describe('the fields of the bed', () => {
  const fields = BED_SECTIONS.flatMap((section) => section.fields);
  const measures = fields.filter(({ is }) => is === 'length');

  it('show what they are given, each changes one thing, and no two the same one', () => {
    const places = new Map<FormField<Bed>, string>();
    fc.assert(
      fc.property(
        fc.constantFrom(...measures),
        fc.double({ min: 101, max: 4000, noNaN: true }),
        (field, mm) => {
          fc.pre(shownIn(field, bed) !== mm);
          const next = given(field, mm, bed);
          expect(shownIn(field, next)).toBe(mm);
          const changed = differing(bed, next);
          expect(changed).toHaveLength(1);
          places.set(field, changed[0] ?? '');
          // Given back what stood there, the bed is as it was.
          expect(given(field, shownIn(field, bed), next)).toEqual(bed);
        },
      ),
      { numRuns: runs(300) },
    );
    expect(places.size).toBe(measures.length);
    expect(new Set(places.values()).size).toBe(measures.length);
  });

  it('take what their lists offer and their least measures, and the design opens with it', () => {
    const all = [...fields, ...SKIN_FIELDS, frameBoardField('in'), frameBoardField('mm')];
    for (const field of all) {
      if (field.is === 'length') {
        const { min = 0 } = field;
        if (typeof min === 'number' && (field.when?.(bed, design) ?? true))
          expect([field.label, opens(given(field, min, bed))]).toEqual([field.label, true]);
      } else if (field.is === 'choice') {
        const offered = typeof field.of === 'function' ? field.of(bed, design) : field.of;
        expect(offered.length).toBeGreaterThan(1);
        for (const { value } of offered) {
          const next = given(field, value, bed);
          expect([field.label, value, opens(next)]).toEqual([field.label, value, true]);
          if (value !== 'own') expect(shownIn(field, next)).toBe(value);
        }
      }
    }
  });

  it('ask for what belongs to a skin, and to what stands beside, only where there is one', () => {
    const [skin, thickness] = SKIN_FIELDS;
    const [there, room] = BESIDE_FIELDS[0] ?? [];
    if (!skin || !thickness || !there || !room) throw new Error('fields are missing');
    for (const on of [true, false]) {
      const next = given(skin, on, bed);
      expect(thickness.when?.(next, design)).toBe(on);
      expect(shownIn(skin, next)).toBe(on);
      const beside = { ...bed.beside, ...changeBy(there, on, bed.beside) };
      expect(room.when?.(beside, design)).toBe(on);
      expect(beside.right).toBe(bed.beside.right);
    }
  });
});

it('lifts fields of what stands under a name, with what they say by it', () => {
  interface Inner {
    readonly least: number;
    readonly length: number;
  }
  interface Outer {
    readonly inner: Inner | null;
    readonly other: string;
  }
  const [field] = within<Outer, 'inner'>('inner', [
    {
      is: 'length',
      label: 'bed.room',
      field: 'length',
      min: ({ least }) => least,
      off: ({ length }) => length > 9,
    },
  ]);
  if (field?.is !== 'length' || typeof field.min !== 'function') throw new Error('no length');
  const outer: Outer = { inner: { least: 3, length: 7 }, other: 'stays' };
  expect(field.min(outer, design)).toBe(3);
  expect(field.off?.(outer)).toBe(false);
  expect(field.when?.(outer, design)).toBe(true);
  expect(field.when?.({ ...outer, inner: null }, design)).toBe(false);
  expect(changeBy(field, 12, outer)).toEqual({ inner: { least: 3, length: 12 } });
});

it('gives every shape on its list measures that a design may hold, and asks for each of them', () => {
  const [form, ...asked] = SHAPE_FIELDS;
  if (form?.is !== 'choice' || typeof form.of !== 'function') throw new Error('no list of shapes');
  const { of } = form;
  const side = fc.double({ min: 4, max: 3000, noNaN: true });
  fc.assert(
    fc.property(side, side, (w, h) => {
      const was: Shaped = { shape: { form: 'rectangle' } as PanelShape, box: { w, h } };
      for (const { value } of of(was, design)) {
        const next: Shaped = { ...was, ...changeBy(form, value, was) };
        expect(panelShapeSchema.safeParse(next.shape).success).toBe(true);
        expect(shownIn(form, next)).toBe(value);
        const shown = asked.filter((field) => field.when?.(next, design));
        const measures = Object.keys(next.shape).filter((key) => key !== 'form' && key !== 'toward');
        const looks = shown.filter((field) => field.label === 'shape.toward').length;
        // The corners of a polygon are set in the drawing.
        expect(shown).toHaveLength((value === 'polygon' ? 0 : measures.length) + looks);
        for (const field of shown) {
          const same = changeBy(field, shownIn(field, next), next);
          expect(same.shape).toEqual(next.shape);
        }
        // A circle's arc over the width rises by at most half of it.
        if (next.shape.form === 'arched') expect(next.shape.rise).toBeLessThanOrEqual(Math.min(w / 2, h));
      }
    }),
    { numRuns: runs(100) },
  );
});
