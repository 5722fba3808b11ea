import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openData } from '../../src/design/open.ts';
import { withFields } from '../../src/design/rule/table.ts';
import { type Bed, type PanelShape, panelShapeSchema } from '../../src/design/schema.ts';
import {
  changeBy,
  type FormField,
  labelText,
  shownIn,
  within,
} from '../../src/editor/control/form/formField.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { type Corner, madeCorner } from '../../src/editor/edit/corners.ts';
import type { MainMeasures } from '../../src/editor/edit/fitBed.ts';
import { layoutChange } from '../../src/editor/frame/layoutChange.ts';
import {
  BED_SECTIONS,
  BESIDE_FIELDS,
  frameBoardField,
  SKIN_FIELDS,
} from '../../src/editor/pane/bed/bedFields.ts';
import { FIRST_FIELDS, MATTRESS_FIELDS, UNIT_FIELDS } from '../../src/editor/pane/bed/mattressFields.ts';
import {
  FIT_FIELDS,
  IS_MEASURED,
  readingFields,
  UNMEASURED,
} from '../../src/editor/pane/bed/measuredFields.ts';
import { BARE } from '../../src/editor/pane/facts/choices.ts';
import { PHOTO_FIELDS, PLACING_FIELDS, STRAIGHT_FIELDS } from '../../src/editor/pane/layout/photoFields.ts';
import { layerFields } from '../../src/editor/pane/lettering/layerFields.ts';
import { FINISH_FIELDS } from '../../src/editor/pane/paint/finishFields.ts';
import { DIVISION_FIELDS, type Division, SIDE_FIELDS } from '../../src/editor/pane/part/divideFields.ts';
import { MADE_FIELDS, madeOf } from '../../src/editor/pane/part/madeFields.ts';
import { MEMBER_OWN_FIELDS } from '../../src/editor/pane/part/ownFields.ts';
import { ruleFields } from '../../src/editor/pane/part/RuleFields.tsx';
import {
  NEW_RULE_FIELDS,
  type NewRuleForm,
  SHARED_RULE_FIELDS,
  type SharedRuleForm,
} from '../../src/editor/pane/part/ruleFields.ts';
import { SHAPE_FIELDS, type Shaped } from '../../src/editor/pane/part/shapeFields.ts';
import {
  LENGTH_FIELDS,
  SCREW_FIELDS,
  SCREW_KIND,
  SIZE_FIELDS,
  type Size,
} from '../../src/editor/pane/wood/priceFields.ts';
import type { Photo, Placing } from '../../src/editor/state/photo.ts';
import { cornersOut } from '../../src/layout/place/drawn.ts';
import { chanceOf } from '../chance.ts';
import { kiosk, STARTERS, starter } from '../plan/starters.ts';
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

describe('the form of a measured bed', () => {
  const shown = shownFrom(design);
  const [rim, field] = [readingFields('rim'), readingFields('field')];

  it('asks for readings only once it is measured, shows true ones until then, and keeps what is read', () => {
    const on = changeBy(IS_MEASURED, true, shown);
    if (!on) throw new Error('not measured');
    const measured = shownFrom({ ...design, bed: on });
    for (const [fields, box] of [
      [rim, shown.face.box],
      [field, shown.face.levels.find(({ id }) => id === 'field')?.box ?? shown.face.box],
    ] as const) {
      expect(fields.map((one) => one.when?.(shown, design))).toEqual(fields.map(() => false));
      expect(fields.map((one) => one.when?.(measured, design))).toEqual(fields.map(() => true));
      const across = Math.hypot(box.w, box.h);
      const is = [box.w, box.w, box.w, box.h, box.h, across, across];
      fields.forEach((one, i) => {
        expect(shownIn(one, measured)).toBeCloseTo(is[i] ?? Number.NaN, 6);
      });
      for (const one of fields) {
        const next = changeBy(one, 1234, measured);
        expect(next && shownIn(one, shownFrom({ ...design, bed: next }))).toBe(1234);
        expect(openData({ ...design, bed: next }).ok).toBe(true);
      }
    }
    expect(changeBy(IS_MEASURED, false, measured)).toEqual(bed);
  });

  it('shows what one reading makes of the others: 6 by 8 ft with one diagonal of 10 ft and 1 in has the other shorter', () => {
    const read = { bottom: 1828.8, top: 1828.8, left: 2438.4, right: 2438.4, rising: 3073.4 };
    const measured = { ...UNMEASURED, rim: read };
    const falling = rim[6];
    if (!falling) throw new Error('no diagonal');
    // The parallelogram law: both squares together are those of the four sides.
    const want = Math.sqrt(2 * (1828.8 ** 2 + 2438.4 ** 2) - 3073.4 ** 2);
    expect(shownIn(falling, shownFrom({ ...design, bed: { ...bed, measured } }))).toBeCloseTo(want, 4);
  });

  it('tells what a border along the edges cuts before it is taken', () => {
    const square = { ...bed, measured: { ...UNMEASURED, rim: { top: shown.face.width + 3.175 } } };
    const at = shownFrom({ ...design, bed: square });
    const along = FIT_FIELDS.map((one) => changeBy(one, 'along', at)).at(-1);
    if (!along) throw new Error('no border');
    const { moved, fitted } = layoutChange(at, { bed: along });
    expect(moved).toEqual([]);
    expect(fitted).toContain('casing');
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

it('gives every corner of a drawn outline sides and cuts that a design may hold, and shows what was given', () => {
  const size = fc.double({ min: 1, max: 3000, noNaN: true });
  const square = [0, 1, 2, 3].map((i) => ({ x: i === 1 || i === 2 ? 300 : 0, y: i > 1 ? 200 : 0 }));
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(), fc.nat(), size), { maxLength: 8 }), (turns) => {
      let corners = { points: square as readonly Corner[], closed: true };
      for (const [which, option, mm] of turns) {
        const made = madeOf(corners, 2);
        const shown = MADE_FIELDS.filter((field) => field.when?.(made, design) ?? true);
        const field = shown[which % shown.length];
        if (!field) throw new Error('no field');
        const values = field.is === 'choice' && Array.isArray(field.of) ? field.of : [];
        const given = field.is === 'choice' ? values[option % values.length].value : mm;
        const change = changeBy(field, given, made);
        if (!change) throw new Error('nothing changed');
        corners = madeCorner(corners, 2, change);
        expect(shownIn(field, madeOf(corners, 2))).toBe(given);
        const drawn = corners.points.map(({ x, y, ...rest }) => ({ at: { x, y }, ...rest }));
        const shape = { form: 'polygon', points: cornersOut(drawn) };
        expect(panelShapeSchema.safeParse(shape).success).toBe(true);
      }
      // What the corner is worked to and how the side runs do not change each other.
      expect(corners.points.map(({ x, y }) => ({ x, y }))).toEqual(square);
    }),
    { numRuns: runs(60) },
  );
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
          expect(same?.shape).toEqual(next.shape);
        }
        // A circle's arc over the width rises by at most half of it.
        if (next.shape.form === 'arched') expect(next.shape.rise).toBeLessThanOrEqual(Math.min(w / 2, h));
      }
    }),
    { numRuns: runs(100) },
  );
});

/** A form as its component keeps it: what it is about, and what a change makes of that. */
interface Form<T, C> {
  readonly fields: readonly FormField<T, C>[];
  readonly start: T;
  readonly taken: (value: T, change: C) => T;
}

/** Gives every field that is asked for what it may be given, and looks whether it shows it then. */
function expectToShow<T, C>({ fields, start, taken }: Form<T, C>, chance: () => number): void {
  let value = start;
  for (let round = 0; round < 40; round++) {
    const field = fields[Math.floor(chance() * fields.length)];
    if (!field || !(field.when?.(value, design) ?? true)) continue;
    const some: Readonly<Record<string, () => unknown>> = {
      length: () => 10 + chance() * 3000,
      number: () => 1 + Math.floor(chance() * 40),
      share: () => 0.05 + chance() * 0.95,
      switch: () => chance() < 0.5,
      text: () => `${1 + Math.floor(chance() * 9)}:2`,
      choice: () => {
        const offered = field.is === 'choice' ? field.of : [];
        const choices = typeof offered === 'function' ? offered(value, design) : offered;
        return choices[Math.floor(chance() * choices.length)]?.value;
      },
    };
    const next = some[field.is]?.();
    expect(next, labelText(field.label)).toBeDefined();
    const change = changeBy(field, next, value);
    // A size that is none of the table's changes nothing.
    if (change === null) continue;
    value = taken(value, change);
    const shown = shownIn(field, value);
    if (typeof next === 'number')
      expect([field.label, shown]).toEqual([field.label, expect.closeTo(next, 6)]);
    else expect([field.label, shown]).toEqual([field.label, next]);
  }
}

const merged = <T>(value: T, change: Partial<T>): T => ({ ...value, ...change });
const places = ['face', 'level:field', 'sign'].map((value) => ({ value, label: value }));

it.each<[string, (chance: () => number) => void]>([
  [
    'a division and its sides',
    (chance) => {
      const start: Division = {
        ...{ columns: 2, rows: 3, upright: 'pine-1x3', across: 'pine-1x3' },
        ...{ through: 'up', finish: BARE, framed: true },
      };
      expectToShow({ fields: DIVISION_FIELDS, start, taken: merged }, chance);
      const sides = { left: 'face', right: 'face', bottom: 'face', top: 'face', places };
      expectToShow({ fields: SIDE_FIELDS, start: sides, taken: merged }, chance);
    },
  ],
  [
    'a new rule, and one for several',
    (chance) => {
      const one: NewRuleForm = {
        ...{ kind: 'set', axis: 'x', side: 'low', to: 'face' },
        ...{ and: 'face', toSide: 'low', inner: false, places },
      };
      expectToShow({ fields: NEW_RULE_FIELDS, start: one, taken: merged }, chance);
      const several: SharedRuleForm = {
        ...{ kind: 'even', axis: 'x', mode: 'gaps', low: 'face', high: 'face', ratio: '', places, count: 3 },
      };
      expectToShow({ fields: SHARED_RULE_FIELDS, start: several, taken: merged }, chance);
    },
  ],
  [
    'a single member',
    (chance) => {
      const array = design.parts.find((part) => part.kind === 'array');
      if (array?.kind !== 'array') throw new Error('no array');
      expectToShow(
        {
          fields: MEMBER_OWN_FIELDS,
          start: { own: {}, member: array.member },
          taken: (value, own) => ({ ...value, own: { ...value.own, ...own } }),
        },
        chance,
      );
    },
  ],
  [
    'a photo',
    (chance) => {
      const photo = {
        ...{ image: { width: 640, height: 480 }, opacity: 0.5, shown: true, locked: false },
        placing: { at: { x: 0, y: 0 }, scale: 2, straight: false },
      } as unknown as Photo;
      expectToShow({ fields: PHOTO_FIELDS, start: photo, taken: merged }, chance);
      const placed: Form<Photo, Partial<Placing>> = {
        fields: [...PLACING_FIELDS, ...STRAIGHT_FIELDS],
        start: photo,
        taken: (value, placing) => ({ ...value, placing: { ...value.placing, ...placing } }),
      };
      expectToShow(placed, chance);
    },
  ],
  [
    'a size that is sold, and screws at hand',
    (chance) => {
      const size: Size = { length: 2438.4, width: 1219.2, price: 20 };
      for (const fields of [LENGTH_FIELDS, SIZE_FIELDS])
        expectToShow({ fields, start: size, taken: merged }, chance);
      const screws = { screw: 'screw-6', length: 25.4, count: 20 };
      expectToShow({ fields: [...SCREW_KIND, ...SCREW_FIELDS], start: screws, taken: merged }, chance);
    },
  ],
  [
    'what is asked before there is a face',
    (chance) => {
      const start: MainMeasures = { mattress: bed.mattress, pivotAlong: null, measure: design.measure };
      const fields = FIRST_FIELDS.filter(({ label }) => label !== 'bed.preset');
      expectToShow({ fields, start, taken: merged }, chance);
      expectToShow({ fields: UNIT_FIELDS, start: design.measure, taken: merged }, chance);
    },
  ],
  [
    'every kind of rule',
    (chance) => {
      for (const rule of new Map(
        STARTERS.flatMap((name) => starter(name).rules.map((one) => [one.kind, one])),
      ).values()) {
        const fields = ruleFields(rule);
        if (fields.length > 0) expectToShow({ fields, start: rule, taken: withFields }, chance);
      }
    },
  ],
])('the fields of %s show what they are given', (_, look) => {
  const chance = chanceOf(16);
  for (let i = 0; i < runs(12); i++) look(chance);
});

it('a mattress of the table gives width and length and keeps the thickness; one of no table changes nothing', () => {
  const [preset] = MATTRESS_FIELDS;
  const file = new URL('../../assets/materials/mattresses.json', import.meta.url);
  const listed = JSON.parse(readFileSync(file, 'utf8')) as { id: string; width: number; length: number }[];
  if (!preset) throw new Error('no field');
  for (const { id, width, length } of listed) {
    const change = changeBy(preset, id, bed);
    expect(change).toEqual({ mattress: { width, length, thickness: bed.mattress.thickness } });
    const shown = shownIn(preset, { ...bed, ...change });
    expect(listed.find((one) => one.id === shown)).toMatchObject({ width, length });
  }
  expect(changeBy(preset, 'own', bed)).toBeNull();
});

it('another kind of screw has a length that it is listed in', () => {
  const [kind] = SCREW_KIND;
  const listed = JSON.parse(
    readFileSync(new URL('../../assets/materials/screws.json', import.meta.url), 'utf8'),
  ) as { readonly id: string; readonly lengths: readonly number[] }[];
  if (!kind) throw new Error('no field');
  for (const { id, lengths } of listed)
    for (const length of listed.flatMap((other) => other.lengths)) {
      const was = { screw: 'screw-6', length, count: 1 };
      const next = { ...was, ...changeBy(kind, id, was) };
      expect(lengths).toContain(next.length);
      if (lengths.includes(length)) expect(next.length).toBe(length);
    }
});

it('both ends of a rule between go along until they are told apart', () => {
  const low = NEW_RULE_FIELDS.find(({ label }) => label === 'rules.low');
  const draft = { kind: 'between', axis: 'x', side: 'low', to: 'face', and: 'face' } as NewRuleForm;
  if (!low) throw new Error('no field');
  expect(changeBy(low, 'sign', draft)).toEqual({ to: 'sign', and: 'sign' });
  expect(changeBy(low, 'sign', { ...draft, and: 'level:field' })).toEqual({ to: 'sign' });
});

describe('what a choice brings with it', () => {
  it('takes the primer off a finish that is to show the wood, and puts none on by itself', () => {
    const kind = FINISH_FIELDS.find(({ label }) => label === 'finish.kind');
    const primed = design.finishes.find(({ primer }) => primer !== null);
    if (!kind || !primed) throw new Error('no kind of finish, or none with a primer');
    const stained = { ...primed, ...changeBy(kind, 'stain', primed) };
    expect([stained.kind, stained.primer]).toEqual(['stain', null]);
    expect({ ...stained, ...changeBy(kind, 'paint', stained) }.primer).toBeNull();
    expect({ ...primed, ...changeBy(kind, 'paint', primed) }.primer).toEqual(primed.primer);
  });

  it('puts a layer of letters on in a color that stands off the letters and, where there is one, off the board', () => {
    const ids = design.finishes.map(({ id }) => id);
    const lettering = design.parts.flatMap((part) => (part.kind === 'sign' ? [part.lettering] : []))[0];
    if (!lettering) throw new Error('no sign');
    for (const own of ids) {
      for (const board of [null, ...ids]) {
        const fields = layerFields(design.finishes, own, board);
        for (const layer of ['outline', 'inline', 'shade'] as const) {
          const on = {
            ...lettering,
            ...changeBy(fields[layer][0] as FormField<typeof lettering>, true, lettering),
          };
          const finish = on[layer]?.finish;
          expect(ids).toContain(finish);
          expect(finish).not.toBe(own);
          expect(finish).not.toBe(board);
        }
      }
    }
  });
});
