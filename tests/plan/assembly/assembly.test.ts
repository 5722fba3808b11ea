import { describe, expect, it } from 'vitest';
import { readSupplies } from '../../../src/command/supplies.ts';
import { answersOf, takenApart } from '../../../src/design/assembly/make.ts';
import type { Kept } from '../../../src/design/assembly/question.ts';
import { remade } from '../../../src/design/assembly/remake.ts';
import { ASSEMBLIES, ASSEMBLY_NAMES, type AssemblyName } from '../../../src/design/assembly/table.ts';
import { applyEdits } from '../../../src/design/edit/edit.ts';
import { editsToRemove } from '../../../src/design/removal.ts';
import { type Design, designSchema, type Group, type Part } from '../../../src/design/schema.ts';
import { shownFrom } from '../../../src/editor/document/shown.ts';
import type { Box } from '../../../src/geometry/shape.ts';
import { plan } from '../../../src/plan/plan.ts';
import { type Chance, chanceOf, pick } from '../../chance.ts';
import { runs } from '../../runs.ts';
import { edited, hasOf, madeOn, nameOf, SKINNED } from './made.ts';

const FACE = shownFrom(SKINNED).face;

/** Any space on the face that a kind may be drawn into: 0.6 to 1.8 of its usual size, each way. */
function someBox(kind: AssemblyName, chance: Chance): Box {
  const { usual } = ASSEMBLIES[kind];
  const w = Math.min(FACE.width, usual.w * (0.6 + 1.2 * chance()));
  const h = Math.min(FACE.height, usual.h * (0.6 + 1.2 * chance()));
  return { x: chance() * (FACE.width - w), y: chance() * (FACE.height - h), w, h };
}

/** Any answers: choices, counts and yes or no at random, the rest by rule. */
function someAnswers(kind: AssemblyName, box: Box, chance: Chance): Kept {
  const { questions } = ASSEMBLIES[kind];
  const given = Object.entries(questions).flatMap(([name, question]): [string, Kept[string]][] => {
    if (question.is === 'choice') return [[name, pick<string>(question.of, chance)]];
    // As many as leave each some room.
    const most = Math.min(
      question.is === 'count' ? question.most : 0,
      Math.floor(Math.min(box.w, box.h) / 160),
    );
    if (question.is === 'count') return [[name, Math.max(question.least, 1 + Math.floor(chance() * most))]];
    return question.is === 'yes' ? [[name, chance() < 0.5]] : [];
  });
  return Object.fromEntries(given);
}

const checked = ({ layout }: ReturnType<typeof shownFrom>) =>
  layout.checks.map(({ code, parts, figures }) => `${code} ${parts.join()} ${JSON.stringify(figures)}`);

/** Area that two boxes have in common: bars that lie along axes, without the room's polygons. */
const inCommon = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y));

describe.each(ASSEMBLY_NAMES)('%s', (kind) => {
  it('lies in any space without a check, its bars beside each other, and follows the bed', () => {
    for (let seed = 0; seed < runs(3); seed++) {
      const chance = chanceOf(seed * 7 + kind.length);
      const box = someBox(kind, chance);
      const given = someAnswers(kind, box, chance);
      const { design, group, shown } = madeOn(SKINNED, kind, box, given);
      const told = `${seed} ${JSON.stringify(given)} ${JSON.stringify(box)}`;
      expect(designSchema.safeParse(design).success, told).toBe(true);
      expect(checked(shown), told).toEqual([]);
      expect(
        shown.layout.rules.filter((rule) => !rule.holds),
        told,
      ).toEqual([]);
      const parts = design.parts.filter(({ id }) => group.parts.includes(id));
      const wide = { ...design, bed: { ...design.bed, mattress: { ...design.bed.mattress } } };
      wide.bed.mattress.width += 40 + chance() * 100;
      wide.bed.mattress.length += chance() * 150;
      const later = shownFrom(wide);
      expect(checked(later), `wider ${told}`).toEqual([]);
      for (const { layout, face } of [shown, later]) {
        const ground = layout.boxes.get(parts[0]?.id ?? '');
        expect(ground?.w, told).toBeCloseTo(face.width - (FACE.width - box.w), 6);
        expect(ground?.h, told).toBeCloseTo(face.height - (FACE.height - box.h), 6);
        const bars = parts.filter((part): part is Extract<Part, { kind: 'strip' }> => part.kind === 'strip');
        const level = bars.filter(
          ({ on, ends, lie }) =>
            on === parts[0]?.id && ends.end.cut === 'square' && (lie === 'across' || lie === 'up'),
        );
        level.forEach((a, i) => {
          for (const b of level.slice(i + 1)) {
            const area = inCommon(layout.boxes.get(a.id) ?? a.box, layout.boxes.get(b.id) ?? b.box);
            expect(area, `${a.name} over ${b.name}: ${told}`).toBeLessThan(0.01);
          }
        });
      }
    }
  });

  // Joinery, cutting and the rest take longest; one is enough for every day.
  it('plans without an error', () => {
    const { design } = madeOn(SKINNED, kind, { x: 120, y: 200, w: 640, h: 900 });
    const made = plan(design, readSupplies(design), { effort: { nodes: 2000 } });
    expect(made.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('is what other answers would have made at once, and comes back by one undo', () => {
    for (let seed = 0; seed < runs(3); seed++) {
      const chance = chanceOf(seed * 13 + kind.length);
      const box = someBox(kind, chance);
      const [one, other] = [someAnswers(kind, box, chance), someAnswers(kind, box, chance)];
      const { design, group } = madeOn(SKINNED, kind, box, one);
      const made = remade(design, group, other, { box, has: hasOf(design), nameOf });
      const next = edited(design, made?.edits ?? []);
      expect(made?.lost).toEqual([]);
      const direct = madeOn(SKINNED, kind, box, { ...one, ...other });
      const told = `${seed} ${JSON.stringify([one, other])}`;
      expect(sorted(next), told).toEqual(sorted(direct.design));
      const done = applyEdits(design, made?.edits ?? []);
      expect(done.ok && edited(done.design, done.inverse), told).toEqual(design);
    }
  });
});

describe.each(ASSEMBLY_NAMES)('%s, altered', (kind) => {
  it('keeps what a person gave any part under any other answers, or names the part as lost', () => {
    for (let seed = 0; seed < runs(3); seed++) {
      const chance = chanceOf(seed * 17 + kind.length);
      const box = someBox(kind, chance);
      const { design, group } = madeOn(SKINNED, kind, box, someAnswers(kind, box, chance));
      const altered = pick(design.parts, chance).id;
      const own = {
        ...design,
        parts: design.parts.map((part) =>
          part.id === altered ? { ...part, name: 'Mine', locked: true } : part,
        ),
      };
      const other = someAnswers(kind, box, chance);
      const made = remade(own, group, other, { box, has: hasOf(own), nameOf });
      const now = edited(own, made?.edits ?? []).parts.find(({ id }) => id === altered);
      const told = `${seed} ${altered} ${JSON.stringify(other)}`;
      expect(made?.lost, told).toEqual(now ? [] : ['Mine']);
      if (now) expect(now, told).toMatchObject({ name: 'Mine', locked: true });
    }
  });
});

/** A design but for the order in which its parts and rules stand. */
const sorted = (design: Design) => {
  const byId = <T extends { id: string }>(list: readonly T[]) =>
    [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
  const groups = design.groups.map((group) => ({ ...group, parts: [...group.parts].sort() }));
  return { ...design, parts: byId(design.parts), rules: byId(design.rules), groups };
};

describe('an assembly that was altered', () => {
  const box = { x: 100, y: 150, w: 600, h: 1300 };
  const idOf = (group: Group, role: string) => group.assembly?.parts[role] ?? '';
  const again = (design: Design, answers: Kept) => {
    const [group] = design.groups;
    const made = group && remade(design, group, answers, { box, has: hasOf(design), nameOf });
    if (!made) throw new Error('not made');
    return { lost: made.lost, design: edited(design, made.edits) };
  };
  const withPart = (design: Design, id: string, change: (part: Part) => Part): Design => ({
    ...design,
    parts: design.parts.map((part) => (part.id === id ? change(part) : part)),
  });
  const of = (design: Design, id: string) => design.parts.find((part) => part.id === id);

  it('keeps what the person gave a part, and takes the rest from the new answers', () => {
    const { design, group } = madeOn(SKINNED, 'panel-door', box, { panels: 2 });
    const left = idOf(group, 'stile-left');
    const own = withPart(design, left, (part) => ({ ...part, finish: null, name: 'My stile' }));
    const { lost, design: now } = again(own, { stile: 'pine-1x3', panels: 6 });
    expect(lost).toEqual([]);
    expect(of(now, left)).toMatchObject({ finish: null, name: 'My stile', stock: 'pine-1x3' });
    expect(of(now, idOf(group, 'stile-right'))).toMatchObject({ finish: 'trim', stock: 'pine-1x3' });
    expect(shownFrom(now).layout.checks).toEqual([]);
  });

  it('tells what is lost where an altered part has no place any more', () => {
    const { design, group } = madeOn(SKINNED, 'panel-door', box, { panels: 6 });
    const own = withPart(design, idOf(group, 'rail-2'), (part) => ({
      ...part,
      finish: null,
      name: 'Frieze rail',
    }));
    const { lost, design: now } = again(own, { panels: 4 });
    expect(lost).toEqual(['Frieze rail']);
    expect(of(now, idOf(group, 'rail-2'))).toBeUndefined();
    expect(shownFrom(now).layout.checks).toEqual([]);
  });

  it('leaves a part where a hand put it, and away what was taken away', () => {
    const { design, group } = madeOn(SKINNED, 'panel-door', box, { panels: 2 });
    const rail = idOf(group, 'rail-1');
    const held = design.rules.filter((rule) => rule.kind === 'set' && rule.edge.of === rail);
    const carried = withPart(
      edited(
        design,
        held.map(({ id }) => ({ kind: 'remove', list: 'rules', id })),
      ),
      rail,
      (part) => ({ ...part, box: { ...part.box, y: 400, h: 0 } }),
    );
    const gone = edited(carried, editsToRemove(carried, [idOf(group, 'rail-top')]));
    const { design: now } = again(gone, { bottom: 'pine-1x8' });
    expect(shownFrom(now).layout.boxes.get(rail)?.y).toBeCloseTo(
      shownFrom(gone).layout.boxes.get(rail)?.y ?? 0,
      6,
    );
    expect(now.rules.some((rule) => rule.kind === 'set' && rule.edge.of === rail)).toBe(false);
    expect(of(now, idOf(group, 'rail-top'))).toBeUndefined();
    expect(of(now, idOf(group, 'rail-bottom'))).toMatchObject({ stock: 'pine-1x8' });
  });

  it('keeps the letters that a person wrote, and moves them in from a wider frame', () => {
    const board = { x: 100, y: 200, w: 700, h: 200 };
    const { design, group } = madeOn(SKINNED, 'sign-board', board);
    const ground = idOf(group, 'ground');
    const lettered = withPart(design, ground, (part) =>
      part.kind === 'sign'
        ? { ...part, lettering: { ...part.lettering, lines: [{ text: 'BAKERY' }], kerning: false } }
        : part,
    );
    const { lost, design: now } = again(lettered, { frame: 'crown-38' });
    const width = hasOf(design).stocks.get('crown-38');
    const sign = of(now, ground);
    if (sign?.kind !== 'sign' || width?.form !== 'shaped') throw new Error('a sign and a molding');
    expect(lost).toEqual([]);
    expect(sign.lettering).toMatchObject({ lines: [{ text: 'BAKERY' }], kerning: false });
    expect(sign.lettering.margin).toBeGreaterThan(width.width);
  });

  it.each([['walnut'], ['walnut', 'chalk'], ['chalk', 'walnut', 'tar']])(
    'letters a sign in a color that the design has and the board has not: %s',
    (...ids) => {
      const finishes = ids.map((id) => ({ ...pick(SKINNED.finishes, () => 0), id }));
      for (const given of [{}, { finish: null }]) {
        const { design } = madeOn({ ...SKINNED, finishes }, 'sign-board', box, given);
        const sign = design.parts.find((part) => part.kind === 'sign');
        expect(ids).toContain(sign?.lettering.finish);
        expect(sign?.lettering.finish).not.toBe(sign?.finish);
      }
    },
  );

  it.each([
    [2, 9 / 22],
    [3, 1 / 3],
    [5, 2 / 5],
    [6, 11 / 25],
  ])('has its knob at the rail nearest to 36 in of a door of 80 in: %i panels', (panels, share) => {
    const { group, shown } = madeOn(SKINNED, 'panel-door', box, { panels, knob: 'left' });
    const at = shown.layout.boxes.get(idOf(group, 'knob'));
    // Rails at the foot and the head move it by less than half a panel of five.
    expect(Math.abs(((at?.y ?? 0) + (at?.h ?? 0) / 2 - box.y) / box.h - share)).toBeLessThan(0.06);
  });

  it('is a plain group once it is taken apart', () => {
    const { group } = madeOn(SKINNED, 'window', box);
    expect(takenApart(group)).toEqual({ id: group.id, name: group.name, parts: group.parts });
  });

  it('answers as at first what a question does not allow', () => {
    const has = hasOf(SKINNED);
    const kept = { panels: 40, stile: 'driftwood', finish: 'tar', style: 'molded', more: 1 };
    expect(answersOf(ASSEMBLIES['panel-door'], kept, box, has)).toEqual({
      ...answersOf(ASSEMBLIES['panel-door'], {}, box, has),
      style: 'molded',
    });
  });
});

/** Building Trades Pocketbook, Doors: stiles and top rail 1/7 of the width, bottom rail 1/10 of the height. */
describe('proportions of a door', () => {
  it('are met as nearly as boards of one thickness allow', () => {
    const has = hasOf(SKINNED);
    const widths = [1.5, 2.5, 3.5, 4.5, 5.5, 7.25, 9.25, 11.25].map((inch) => inch * 25.4);
    const nearest = (wanted: number, most: number) =>
      Math.min(...widths.filter((w) => w <= Math.max(most, 38.1)).map((w) => Math.abs(w - wanted)));
    for (let seed = 0; seed < runs(100); seed++) {
      const box = someBox('panel-door', chanceOf(seed));
      const answers = answersOf(ASSEMBLIES['panel-door'], {}, box, has) as Readonly<
        Record<'stile' | 'bottom', string>
      >;
      const widthOf = (id: string) => {
        const stock = has.stocks.get(id);
        return stock?.form === 'flat' ? stock.width : Number.NaN;
      };
      const { stile, bottom } = { stile: widthOf(answers.stile), bottom: widthOf(answers.bottom) };
      expect(Math.abs(stile - box.w / 7)).toBeCloseTo(nearest(box.w / 7, box.w / 4), 6);
      expect(Math.abs(bottom - Math.max(box.h / 10, box.w / 7))).toBeCloseTo(
        nearest(Math.max(box.h / 10, box.w / 7), box.h / 4),
        6,
      );
      expect(bottom).toBeGreaterThanOrEqual(stile);
    }
  });
});
