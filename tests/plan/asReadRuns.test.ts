import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import { unread } from '../../src/design/reading.ts';
import type { Design, Part, TapeRead } from '../../src/design/schema.ts';
import { readingEdits, readingOfAll } from '../../src/editor/edit/reading.ts';
import { plannedEdges } from '../../src/joinery/asRead.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { inches } from '../../src/measure/units.ts';
import { runs } from '../runs.ts';
import { planned } from './starters.ts';

const BED = { ...newDesign().bed, skin: { thickness: 6, material: 'plywood' } };
const { width: W, height: H } = faceOf(BED).face;

/** A frame and an open run of three lengths inside of it, both cut to fit. */
const design: Design = {
  ...newDesign(BED),
  parts: [
    {
      ...newPart('run', { id: 'frame', name: 'Frame', stock: 'pine-1x3', box: { x: 0, y: 0, w: W, h: H } }),
      ...{ path: { form: 'frame' }, side: 'inside', corner: 'miter', fit: true },
    } as Part,
    {
      ...newPart('run', {
        ...{ id: 'open', name: 'Open', stock: 'pine-1x3' },
        box: { x: 200, y: 300, w: 600, h: 500 },
      }),
      ...{ side: 'inside', corner: 'miter', fit: true },
      path: {
        form: 'points',
        points: [
          { u: 0, v: 0 },
          { u: 1, v: 0 },
          { u: 1, v: 1 },
          { u: 0.3, v: 1 },
        ],
        closed: false,
      },
    } as Part,
  ],
};
const before = planned(design);
const piecesOf = (of: Design, part: string): Piece[] =>
  planned(of).joinery.pieces.filter((piece) => piece.part === part);
const edited = (of: Design, edits: ReturnType<typeof readingEdits>): Design => {
  const done = applyEdits(of, edits);
  if (!done.ok) throw new Error('not applied');
  return done.design;
};

const distance = (p: { x: number; y: number }, q: { x: number; y: number }) =>
  Math.hypot(q.x - p.x, q.y - p.y);
/** Corners of a piece with four of them: both ends of its upper edge, then of its lower one. */
function cornersOf({ outline, width }: Piece) {
  const at = (upper: boolean) =>
    outline.filter(({ y }) => (upper ? y > width - 1e-6 : y < 1e-6)).sort((a, b) => a.x - b.x) as [
      { x: number; y: number },
      { x: number; y: number },
    ];
  return { upper: at(true), lower: at(false) };
}

const part = fc.constantFrom<[string, number]>(['frame', 4], ['open', 3]);
const off = fc.integer({ min: -32, max: 32 }).map((n) => (n * 25.4) / 64);

describe('a length of a run that was measured in place', () => {
  it('has the edges that were read, and the diagonal where one was; no other length changes', () => {
    fc.assert(
      fc.property(
        part,
        fc.nat(3),
        off,
        off,
        fc.boolean(),
        fc.constantFrom('start', 'end', 'both'),
        ([id, legs], n, left, right, across, slant) => {
          const leg = n % legs;
          const all = before.joinery.pieces.filter((piece) => piece.part === id);
          const piece = all.find((one) => one.leg === leg);
          const was = piece && plannedEdges(piece);
          if (!piece || !was) throw new Error('no such length');
          const to = { left: was.left + left, right: was.right + right };
          const { upper, lower } = cornersOf(piece);
          const diagonal = distance(upper[0], lower[1]);
          const read: TapeRead = {
            left: { planned: was.left, read: to.left },
            right: { planned: was.right, read: to.right },
            ...(across ? { diagonal } : {}),
            ...{ slant, moves: 'nothing', of: piece.length },
          };
          const after = piecesOf(edited(design, readingEdits(design, id, read, { leg, legs })), id);
          const now = after.find((one) => one.leg === leg);
          if (!now) throw new Error('it is gone');
          const corners = cornersOf(now);
          expect(distance(...corners.upper)).toBeCloseTo(to.left, 6);
          expect(distance(...corners.lower)).toBeCloseTo(to.right, 6);
          if (across) expect(distance(corners.upper[0], corners.lower[1])).toBeCloseTo(diagonal, 6);
          expect(now.fit.allowance).toBe(0);
          for (const one of all)
            if (one.leg !== leg) {
              const same = after.find(({ leg: of }) => of === one.leg);
              expect(same?.outline).toEqual(one.outline);
              expect(same?.fit).toEqual(one.fit);
            }
        },
      ),
      { numRuns: runs(10) },
    );
  });

  it('of one edge keeps both its angles, is taken back, and holds only while the run has as many lengths', () => {
    const [piece] = before.joinery.pieces.filter(({ part: of, leg }) => of === 'open' && leg === 1);
    const was = piece && plannedEdges(piece);
    if (!piece || !was) throw new Error('no such length');
    const read: TapeRead = {
      ...{ left: { planned: was.left, read: was.left + inches(1 / 4) }, slant: 'end', moves: 'nothing' },
      of: piece.length,
    };
    const one = edited(design, readingEdits(design, 'open', read, { leg: 1, legs: 3 }));
    const now = piecesOf(one, 'open').find(({ leg }) => leg === 1);
    expect(now?.ends.map(({ miter }) => miter)).toEqual(piece.ends.map(({ miter }) => miter));
    expect(now?.edges.right).toBeCloseTo(was.right + inches(1 / 4), 6);
    const back = edited(one, readingEdits(one, 'open', undefined, { leg: 1, legs: 3 }));
    expect(back).toEqual(design);
    // A fourth length: which of them was read, nobody knows.
    const longer = one.parts.map((of): Part => {
      if (of.kind !== 'run' || of.path.form !== 'points') return of;
      return { ...of, path: { ...of.path, points: [...of.path.points, { u: 0.3, v: 0.6 }] } };
    });
    expect(piecesOf({ ...one, parts: longer }, 'open').every(({ fit }) => !fit.read)).toBe(true);
    for (const of of one.parts) expect('reads' in unread(of)).toBe(false);
  });
});

describe('members of a row', () => {
  it('are cut to one reading where the person says so of all that are alike', () => {
    const member = (id: string) =>
      newPart('strip', { id, name: id, stock: 'pine-1x3', box: { x: 0, y: 0, w: 1, h: 1 } });
    const { id: _, box: __, name: ___, ...strip } = member('m');
    const row = {
      ...newPart('array', { id: 'row', name: 'Row', box: { x: 100, y: 100, w: 700, h: 800 } }),
    } as Extract<Part, { kind: 'array' }>;
    const battens: Design = {
      ...newDesign(BED),
      parts: [{ ...row, member: { ...row.member, ...strip, kind: 'strip', lie: 'up', fit: true } as never }],
    };
    const plan = planned(battens);
    const pieces = plan.joinery.pieces.filter(({ part: of }) => of.startsWith('row['));
    expect(pieces.length).toBeGreaterThan(1);
    const [first] = pieces;
    const was = first && plannedEdges(first);
    if (!first || !was) throw new Error('no member');
    const longer = { left: was.left + 3, right: was.right + 3 };
    const read: TapeRead = {
      left: { planned: was.left, read: longer.left },
      right: { planned: was.right, read: longer.right },
      ...{ slant: 'end', moves: 'nothing', of: was.left },
    };
    const alone = planned(edited(battens, readingEdits(battens, first.part, read)));
    expect(alone.joinery.pieces.filter(({ fit }) => fit.read)).toHaveLength(1);
    const all = planned(
      edited(
        battens,
        readingOfAll(
          battens,
          pieces.map(({ part: of }) => of),
          read,
        ),
      ),
    );
    expect(all.joinery.pieces.filter(({ fit }) => fit.read)).toHaveLength(pieces.length);
    for (const piece of all.joinery.pieces) expect(piece.edges.left).toBeCloseTo(longer.left, 6);
  });
});
