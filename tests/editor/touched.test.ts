import { afterAll, describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Edit } from '../../src/design/edit/edit.ts';
import { type Saying, saying } from '../../src/design/job/record.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { type Document, freshDocument, tried } from '../../src/editor/document/document.ts';
import type { Shown } from '../../src/editor/document/shown.ts';
import { createTouching } from '../../src/editor/document/touching.ts';
import { keepingDone } from '../../src/editor/edit/keepDone.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { cutSaying } from '../../src/job/acts.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { createSawing } from '../../src/plan/sawing.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { STARTERS, starter } from '../plan/starters.ts';
import { runs } from '../runs.ts';

/**
 * Random changes of the starters with some pieces cut. The twin compares the cut lists before and after as a person with
 * a tape and a bevel gauge would: sides and corners of each piece's outline, its thickness, its bevels and notches. Piece
 * marks of the job are not asked.
 */

/** Sides and angles of a ring in their order from each corner, so that it does not matter where it lies or begins. */
function shapeOf(ring: readonly Point[]): string[] {
  const corners = ring.filter((p, i) => {
    const [a, b] = [ring.at(i - 1), ring[(i + 1) % ring.length]] as [Point, Point];
    const [ax, ay, bx, by] = [p.x - a.x, p.y - a.y, b.x - p.x, b.y - p.y];
    return Math.abs(ax * by - ay * bx) > 1e-4 * (Math.hypot(ax, ay) * Math.hypot(bx, by) + 1e-9);
  });
  const told = corners.map((p, i) => {
    const [a, b] = [corners.at(i - 1), corners[(i + 1) % corners.length]] as [Point, Point];
    const turn = Math.atan2(b.y - p.y, b.x - p.x) - Math.atan2(p.y - a.y, p.x - a.x);
    return [Math.hypot(b.x - p.x, b.y - p.y), Math.atan2(Math.sin(turn), Math.cos(turn))] as const;
  });
  return told.map((_, i) =>
    [...told.slice(i), ...told.slice(0, i)]
      .map(([side, turn]) => `${Math.round(side * 2) / 2}/${Math.round(turn * 200)}`)
      .join(' '),
  );
}

const restOf = ({ thickness, width, stock, ends, notches, holes }: Piece): string =>
  JSON.stringify([
    ...[stock, thickness.toFixed(2), width.toFixed(2), holes.length],
    notches.map(({ side, depth }) => `${side} ${depth.toFixed(1)}`).sort(),
    // Turned end for end it is the same wood.
    ends
      .map(({ cut, bevel, second }) => `${cut} ${bevel.toFixed(1)} ${second?.bevel.toFixed(1) ?? ''}`)
      .sort(),
  ]);

/** The same wood, as far as the gauge can tell. */
function isSame(a: Piece, b: Piece): boolean {
  if (restOf(a) !== restOf(b)) return false;
  const [first] = shapeOf(a.outline);
  return shapeOf(b.outline).includes(first ?? '');
}

/** Clearly another piece: longer or shorter by what a tape reads, or cut at another angle. */
function isOther(a: Piece, b: Piece | undefined): boolean {
  if (!b || a.stock !== b.stock) return true;
  const size = (p: Piece) => [p.overall, p.width, p.thickness];
  if (size(a).some((v, i) => Math.abs(v - (size(b)[i] ?? 0)) > 0.5)) return true;
  const angles = (p: Piece) => p.ends.map(({ miter }) => Math.abs(miter)).sort((x, y) => x - y);
  return angles(a).some((v, i) => Math.abs(v - (angles(b)[i] ?? 0)) > 0.5);
}

const cutOf = (piece: Piece): readonly Saying[] =>
  cutSaying(
    { kind: 'loose-piece', id: piece.id, piece, from: null, lies: { from: 0, to: 0, flipped: false } },
    {
      cutting: { boards: [], boardsBound: [], sheets: [], sheetsBound: [], checks: [] },
      ...{ stocks: new Map(), shop: starter('bread-shop').shop, planned: [], facts: [] },
    },
  );

type Change = (doc: Document, chance: Chance) => readonly Edit[];

const replaced = (item: Part): Edit[] => [{ kind: 'replace', list: 'parts', id: item.id, item }];
const somePart = ({ design }: Document, chance: Chance): Part => pick(design.parts, chance);
const by = (chance: Chance) => (chance() < 0.5 ? -1 : 1) * (4 + chance() * 50);

const CHANGES: readonly Change[] = [
  (doc, chance) => {
    const part = somePart(doc, chance);
    const box = doc.shown.layout.boxes.get(part.id) ?? part.box;
    return replaced({ ...part, box: { ...box, x: box.x + by(chance) } } as Part);
  },
  (doc, chance) => {
    const part = somePart(doc, chance);
    const box = doc.shown.layout.boxes.get(part.id) ?? part.box;
    return replaced({ ...part, box: { ...box, w: Math.max(20, box.w + by(chance)) } } as Part);
  },
  (doc, chance) => {
    const part = somePart(doc, chance);
    const rules = doc.design.rules.filter((rule) => JSON.stringify(rule).includes(`"${part.id}"`));
    return [
      ...rules.map(({ id }): Edit => ({ kind: 'remove', list: 'rules', id })),
      { kind: 'remove', list: 'parts', id: part.id },
    ];
  },
  // A strip across the face, which meets what it lies beside.
  (doc, chance) => {
    const beside = pick(doc.shown.layout.parts, chance);
    const stock = 'stock' in beside && beside.kind === 'strip' ? beside.stock : 'pine-1x3';
    const { x, y, w, h } = beside.box;
    const at = { x: x + w * chance(), y: y + h * chance() };
    const box = chance() < 0.5 ? { ...at, w: 300, h: 63.5 } : { ...at, w: 63.5, h: 300 };
    const id = 'new-strip';
    const item = newPart('strip', { id, name: 'New', stock: stock ?? 'pine-1x3', finish: null, box });
    return [{ kind: 'insert', list: 'parts', item: { ...item, on: beside.on } as Part }];
  },
  (doc, chance) => {
    const rules = doc.design.rules.filter((rule) => rule.kind === 'set');
    if (rules.length === 0) return [];
    const rule = pick(rules, chance);
    const item = { ...rule, distance: rule.distance + by(chance) };
    return [{ kind: 'replace', list: 'rules', id: rule.id, item } as Edit];
  },
  ({ design }, chance) => {
    const width = design.bed.mattress.width + by(chance);
    return [
      { kind: 'set', field: 'bed', value: { ...design.bed, mattress: { ...design.bed.mattress, width } } },
    ];
  },
];

/** Decides a joint that is there otherwise: nothing of either part changes but its end. */
const decided = (doc: Document, sawing: ReturnType<typeof createSawing>, chance: Chance): readonly Edit[] => {
  const { joints } = sawing(doc.shown);
  if (joints.length === 0) return [];
  const { parts, kind } = pick(joints, chance);
  const [a, b] = parts;
  const item = { id: 'new-joint', parts, kind: kind === 'miter' ? 'butt' : 'miter' } as const;
  return [
    { kind: 'insert', list: 'joints', item: kind === 'miter' && a !== b ? { ...item, through: b } : item },
  ];
};

const ownFields = ({ design, layout }: Shown, id: string) => {
  const laid = layout.parts.find((part) => part.id === id);
  return JSON.stringify([design.parts.find((part) => part.id === laid?.part), laid?.box]);
};

describe('a change of what is cut', () => {
  let asked = 0;
  let byNeighbor = 0;

  it.each(STARTERS)('%s: is asked about wherever a cut piece would be another', (name) => {
    const chance = chanceOf(name.length * 31 + 5);
    const bare = freshDocument(starter(name));
    const touching = createTouching();
    const twin = createSawing();
    const pieces = twin(bare.shown).pieces.filter(({ form }) => form !== 'sheet');
    for (let n = 0; n < runs(4); n++) {
      const cut = pieces.filter(() => chance() < 0.25);
      const job = saying(undefined, cut.flatMap(cutOf));
      const doc = freshDocument({ ...bare.design, job } as Design);
      const edits = chance() < 0.3 ? decided(doc, twin, chance) : pick(CHANGES, chance)(doc, chance);
      const after = tried(doc, edits);
      const touched = touching.of(doc.shown, after);
      const told = new Map(touched.map(({ part, how }) => [part, how]));
      const now = new Map(createSawing()(after).pieces.map((piece) => [piece.id, piece]));
      const partOf = new Map(doc.shown.layout.parts.map(({ id, part }) => [id, part]));
      for (const piece of cut) {
        const part = partOf.get(piece.part) ?? '';
        const is = now.get(piece.id);
        // Wood that lies there cut for another piece may serve as this one.
        const spare = cut.some((one) => one.id !== piece.id && is && isSame(one, is));
        if (isOther(piece, is) && !spare) {
          expect([...told.keys()], `${name} ${n}: ${piece.id}`).toContain(part);
          if (ownFields(doc.shown, piece.part) === ownFields(after, piece.part)) byNeighbor++;
        }
      }
      // And nothing is asked where all that is cut is as it was.
      for (const [part] of told) {
        const own = cut.filter((piece) => partOf.get(piece.part) === part);
        expect(
          own.some((piece) => {
            const is = now.get(piece.id);
            return !is || !isSame(piece, is);
          }),
          `${name} ${n}: ${part} is as it was`,
        ).toBe(true);
      }
      if (touched.length === 0) continue;
      asked++;
      const ways = keepingDone(doc, edits, touched, touching);
      if (!ways) continue;
      const held = new Set(touched.map(({ part }) => part));
      const then = new Map(createSawing()(tried(doc, ways, held)).pieces.map((piece) => [piece.id, piece]));
      for (const piece of cut) {
        const is = then.get(piece.id);
        expect(is !== undefined && !isOther(piece, is), `${name} ${n}: ${piece.id} is kept`).toBe(true);
      }
    }
  });

  afterAll(() => {
    expect(asked).toBeGreaterThan(runs(4));
    expect(byNeighbor).toBeGreaterThan(0);
  });
});
