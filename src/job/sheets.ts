import { cutKey } from '../cutting/atSaw.ts';
import type { CutSheet, SheetCut, SheetPlacement } from '../cutting/result.ts';
import { trimCuts } from '../cutting/sheets/sequence.ts';
import { blank, trimOf } from '../cutting/sheets/stock.ts';
import { factsOf } from '../design/job/record.ts';
import type { Fact } from '../design/job/schema.ts';
import type { Owned, Shop } from '../design/schema.ts';
import { surrounds } from '../geometry/box.ts';
import type { Box } from '../geometry/shape.ts';
import { SAME_PLACE } from '../geometry/tolerance.ts';
import type { Piece } from '../joinery/piece.ts';
import type { Mm } from '../measure/units.ts';
import type { JobBoard } from './boards.ts';
import type { Known } from './known.ts';

/**
 * Sheets that a saw was in. A cut goes from edge to edge, so what was sawn leaves rectangles, each as the blade left it:
 * those of cut pieces, those of pieces that are still to come out of them, and rests. Where the pieces planned in a
 * rectangle are others by now it can be laid out again, from its real edges.
 */

export interface BegunSheet {
  /** Pieces that still come out of it where they were laid. */
  readonly stays: ReadonlySet<string>;
  /** What other pieces may be cut of. */
  readonly free: readonly Owned[];
  /** Null where no piece comes out of it. */
  readonly sheet: CutSheet | null;
  /** Whether a rectangle of it has pieces that stay and others that do not: it may be left or laid out again. */
  readonly isMixed: boolean;
}

interface OnSheet {
  readonly board: JobBoard;
  readonly open: readonly Piece[];
  readonly known: Known;
  readonly facts: readonly Fact[];
  readonly shop: Shop;
  /** Whether rectangles of which some pieces stay are laid out again all the same. */
  readonly again: boolean;
}

type Lay = NonNullable<JobBoard['fact']['lay']>;
type Place = Lay['places'][number];

const rectOf = ([x, y, w, h]: readonly [number, number, number, number]): Box => ({ x, y, w, h });
const isIn = (a: Box, b: Box): boolean => surrounds(b, a, SAME_PLACE);
const isSame = (a: Box, b: Box): boolean => isIn(a, b) && isIn(b, a);

/** The rectangle that a saw sets free for a piece: its own, or the blank that it is sawn out of with others. */
const freed = ({ box, blank: from }: Place): Box => rectOf(from ?? box);

export function begunSheet(input: OnSheet): BegunSheet {
  const { board, shop } = input;
  const { fact, id, length, width = 0 } = board;
  const own = (box: Box, name: string): Owned => ({
    ...{ id: name, stock: fact.stock, length: box.w, width: box.h, count: 1, defects: [] },
  });
  if (!fact.lay) {
    const trim = trimIn(board, shop);
    const whole = { x: trim, y: trim, w: length - 2 * trim, h: width - 2 * trim };
    const free = whole.w > 0 && whole.h > 0 ? [own(whole, id)] : [];
    return { stays: new Set(), free, sheet: null, isMixed: false };
  }
  const { lay } = fact;
  const frame = frameOf(lay);
  const there = thereOf(board, frame);
  const state = stateOf(input, lay);
  const stays = new Set<string>();
  const free: Owned[] = [];
  const gone: Box[] = [];
  let isMixed = false;
  for (const leaf of leavesOf(lay, frame, state.freedBoxes, input)) {
    const places = lay.places.filter((place) => isIn(freed(place), leaf));
    const rests = lay.offcuts.map(rectOf).filter((box) => isIn(box, leaf));
    if (places.length + rests.length === 0) continue;
    const whole = leafName(id, leaf);
    if (state.used.has(whole)) {
      gone.push(leaf);
      continue;
    }
    const named = (box: Box) => restName(id, lay, box);
    const waiting = places.filter(({ piece }) => !state.isOut(piece));
    const staying = waiting.filter((place) => state.fits(place) && isIn(freed(place), there));
    const others = waiting.length - staying.length;
    const isWhole = waiting.length === places.length && rests.every((box) => !state.used.has(named(box)));
    const isUsed = places.some(({ box }) => state.used.has(named(rectOf(box))));
    if (others > 0 && staying.length > 0) isMixed = true;
    if (others > 0 && isWhole && !isUsed && (input.again || staying.length === 0)) {
      // Where no cut is made after all, its edges are still to be trimmed.
      const trim = isSame(leaf, frame) ? trimIn(board, shop) : 0;
      const clipped = clip(leaf, there);
      if (clipped && clipped.w > 2 * trim && clipped.h > 2 * trim)
        free.push(own({ ...clipped, w: clipped.w - 2 * trim, h: clipped.h - 2 * trim }, whole));
      gone.push(leaf);
      continue;
    }
    for (const { piece } of staying) stays.add(piece);
    const left = waiting
      .filter((place) => !staying.includes(place) && !place.blank)
      .map(({ box }) => rectOf(box));
    for (const box of [...left, ...rests]) {
      const clipped = clip(box, there);
      if (clipped) free.push(own(clipped, named(box)));
    }
  }
  return { stays, free, sheet: drawn(board, lay, { there, cut: state.cut, stays, gone }), isMixed };
}

const trimIn = ({ fact }: Pick<JobBoard, 'fact'>, shop: Shop): Mm =>
  fact.got === 'bought' ? trimOf(shop) : 0;

const leafName = (id: string, { x, y, w, h }: Box): string =>
  `${id}/l${[x, y, w, h].map((v) => v.toFixed(1)).join(':')}`;

/** What the wood of a piece that is no longer wanted, or an offcut, is called: two devices call it alike. */
function restName(id: string, { places, offcuts }: Lay, box: Box): string {
  // By its corner: how far it goes the tape may have read otherwise since.
  const isAt = ([x, y]: Place['box']) => Math.abs(x - box.x) + Math.abs(y - box.y) <= SAME_PLACE;
  const rest = offcuts.findIndex(isAt);
  return rest >= 0 ? `${id}/r${rest}` : `${id}/p${places.findIndex((one) => isAt(one.box))}`;
}

/** What was there as the sheet was laid out: the tape may have read it otherwise before or since. */
function frameOf({ places, cuts, offcuts }: Lay): Box {
  const all = [...places.map(freed), ...cuts.map(({ of }) => rectOf(of)), ...offcuts.map(rectOf)];
  const [w, h] = [Math.max(...all.map((box) => box.x + box.w)), Math.max(...all.map((box) => box.y + box.h))];
  return { x: 0, y: 0, w, h };
}

const thereOf = ({ length, width = 0 }: JobBoard, frame: Box): Box => ({
  ...{ x: 0, y: 0, w: Math.min(length, frame.w), h: Math.min(width, frame.h) },
});

/** What of a rectangle is really there. */
function clip(box: Box, there: Box): Box | null {
  const w = Math.min(box.x + box.w, there.w) - box.x;
  const h = Math.min(box.y + box.h, there.h) - box.y;
  return w > SAME_PLACE && h > SAME_PLACE ? { ...box, w, h } : null;
}

/** What is known of the pieces of a sheet. */
function stateOf({ board, open, known, facts }: OnSheet, lay: Lay) {
  const serves = new Map([...known.byPiece].map(([piece, { id }]) => [id, piece]));
  const own = <T extends { readonly board: string | null }>(of: readonly T[]) =>
    of.filter((one) => one.board === board.id);
  const cut = new Map(own(factsOf(facts, 'cut')).map((one) => [one.piece, serves.get(one.id) ?? null]));
  const spoiled = new Set(own(factsOf(facts, 'spoiled')).map(({ piece }) => piece));
  const wanted = new Map(open.map((piece) => [piece.id, piece]));
  const isOut = (piece: string) => cut.has(piece) || spoiled.has(piece);
  return {
    cut,
    isOut,
    used: new Set(factsOf(facts, 'board').map(({ of }) => of)),
    freedBoxes: lay.places.filter(({ piece }) => isOut(piece)).map(freed),
    fits: ({ piece, box: [, , w, h], turned }: Place): boolean => {
      const is = wanted.get(piece);
      return is !== undefined && fills(is, w, h, turned);
    },
  };
}

/** The rectangles that the cuts left which are made: those that were told, and those that a cut piece cannot be without. */
function leavesOf(lay: Lay, frame: Box, out: readonly Box[], { board, facts, shop }: OnSheet): Box[] {
  const cuts = lay.cuts.map(({ of, ...cut }) => ({ ...cut, of: rectOf(of) }));
  const told = new Set(
    factsOf(facts, 'sawn')
      .filter((fact) => fact.board === board.id)
      .map(({ cut }) => cut),
  );
  const isTold = (cut: (typeof cuts)[number]) => [...told].some((id) => id.endsWith(`:${cutKey(cut)}`));
  const needed = [...out, ...cuts.filter(isTold).map(({ of }) => of)];
  const made = cuts.filter(
    (cut) => isTold(cut) || needed.some((box) => isIn(box, cut.of) && !isSame(box, cut.of)),
  );
  // A piece as large as what is cut is made by no cut of it.
  let leaves: Box[] = [frame];
  for (const { kind, of, fence } of made) {
    const leaf = leaves.find((box) => isSame(box, of));
    if (!leaf) continue;
    const beyond = fence + shop.sheetKerf;
    const parts =
      kind === 'rip'
        ? [
            { ...leaf, h: fence },
            { ...leaf, y: leaf.y + beyond, h: leaf.h - beyond },
          ]
        : [
            { ...leaf, w: fence },
            { ...leaf, x: leaf.x + beyond, w: leaf.w - beyond },
          ];
    leaves = [...leaves.filter((box) => box !== leaf), ...parts.filter(({ w, h }) => w > 0 && h > 0)];
  }
  return leaves;
}

interface Left {
  readonly there: Box;
  /** What is cut of it as it was laid out, and which piece that is now. */
  readonly cut: ReadonlyMap<string, string | null>;
  readonly stays: ReadonlySet<string>;
  /** Rectangles that are laid out again. */
  readonly gone: readonly Box[];
}

/** The sheet with what is cut of it and what stays as it was laid out; what is laid out again is sheets of its own. */
function drawn({ fact, id }: JobBoard, lay: Lay, { there, cut, stays, gone }: Left): CutSheet | null {
  const placements = lay.places.flatMap(({ piece, box, turned, blank: from }): SheetPlacement[] => {
    const now = cut.has(piece) ? cut.get(piece) : stays.has(piece) ? piece : null;
    if (!now) return [];
    return [{ piece: now, ...rectOf(box), turned, ...(from ? { from: rectOf(from) } : {}) }];
  });
  if (placements.length === 0) return null;
  const isLeft = (box: Box) => !gone.some((leaf) => isIn(box, leaf));
  const sequence = lay.cuts
    .flatMap(({ kind, of, fence }) => {
      const is = isLeft(rectOf(of)) ? clip(rectOf(of), there) : null;
      return is && fence < (kind === 'rip' ? is.h : is.w) ? [{ kind, of: is, fence }] : [];
    })
    .map((one, i): SheetCut => ({ number: i + 1, ...one }));
  const offcuts = lay.offcuts.flatMap((box) => {
    const is = isLeft(rectOf(box)) ? clip(rectOf(box), there) : null;
    return is ? [is] : [];
  });
  const size = { length: there.w, width: there.h };
  return { ...{ stock: fact.stock, ...size, owned: id, placements, cost: 0 }, sequence, offcuts };
}

/** Whether a sheet is laid out and sawn just as one was that a saw was in. */
export const isLaidSo = ({ placements, sequence }: CutSheet, { places, cuts }: Lay): boolean =>
  placements.length === places.length &&
  sequence.length === cuts.length &&
  places.every(({ piece, box }) =>
    placements.some((place) => place.piece === piece && isSame(place, rectOf(box))),
  ) &&
  cuts.every((cut, i) => {
    const is = sequence[i];
    return is !== undefined && cutKey(is) === cutKey({ ...cut, of: rectOf(cut.of) });
  });

/** A begun sheet without the rests that the plan cuts other pieces of. */
export const withoutRests = (
  sheet: CutSheet,
  { fact, id }: JobBoard,
  cutUp: ReadonlySet<string | null>,
): CutSheet => {
  const { lay } = fact;
  return lay
    ? { ...sheet, offcuts: sheet.offcuts.filter((box) => !cutUp.has(restName(id, lay, box))) }
    : sheet;
};

/** A sheet that is there whole, planned within the edges that are to be trimmed, as it lies there. */
export function trimmed(sheet: CutSheet, { fact, length, width = 0 }: JobBoard, shop: Shop): CutSheet {
  const trim = fact.lay ? 0 : trimIn({ fact }, shop);
  if (trim === 0) return sheet;
  const on = <B extends { readonly x: Mm; readonly y: Mm }>(box: B): B => ({
    ...box,
    x: box.x + trim,
    y: box.y + trim,
  });
  const first = trimCuts({ length, width, trim, kerf: shop.sheetKerf });
  return {
    ...{ ...sheet, length, width, offcuts: sheet.offcuts.map(on) },
    placements: sheet.placements.map((place) => ({
      ...on(place),
      ...(place.from ? { from: on(place.from) } : {}),
    })),
    sequence: [
      ...first,
      ...sheet.sequence.map((cut) => ({ ...cut, number: cut.number + first.length, of: on(cut.of) })),
    ],
  };
}

function fills(piece: Piece, w: number, h: number, turned: boolean): boolean {
  const size = blank(piece);
  const [along, across] = turned ? [size.h, size.w] : [size.w, size.h];
  return Math.abs(along - w) <= SAME_PLACE && Math.abs(across - h) <= SAME_PLACE;
}
