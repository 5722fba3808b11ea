import type { Check } from '../check/check.ts';
import type { Shop } from '../design/schema.ts';
import { centroidOf } from '../geometry/region.ts';
import { SAME_ANGLE } from '../geometry/tolerance.ts';
import { KeptResults } from '../layout/kept.ts';
import { grouped } from '../list/grouped.ts';
import type { Deg, Mm } from '../measure/units.ts';
import type { Draft } from './draft.ts';
import type { PieceEnd } from './piece.ts';

/** Below this no saw holds a piece: it is cut off a longer one with a hand saw. Common practice, no source. */
const TOO_SHORT: Mm = 25;
/** Hands stay six inches from the blade: shorter pieces are clamped. Common practice, no source. */
const HAND_DISTANCE: Mm = 150;

/**
 * Checks on pieces, at most one of each code a part: the worst of its pieces speaks for it.
 *
 * @param partOf what a piece is judged with: its part, or the part of the design that it is one of many of
 */
export function pieceChecks(
  drafts: readonly Draft[],
  saw: Shop['saw'],
  kept: KeptResults = new KeptResults(),
  partOf: (piece: Draft) => string = ({ part }) => part,
): Check[] {
  return [...grouped(drafts, partOf).values()].flatMap((own) =>
    kept.of(own[0], 'checks', [saw.miter, saw.bevel, ...own], () => partChecks(own, saw)),
  );
}

const partChecks = (own: readonly Draft[], saw: Shop['saw']): Check[] =>
  [overMiter(own, saw.miter), overBevel(own, saw), tooShort(own), inPlace(own)].filter(
    (check) => check !== null,
  );

interface Cut {
  readonly draft: Draft;
  readonly end: PieceEnd;
  readonly angle: Deg;
}

/** The largest of the cuts that are over what the saw can be set to. */
function worstOver(drafts: readonly Draft[], most: Deg, angleOf: (end: PieceEnd) => Deg): Cut | null {
  let worst: Cut | null = null;
  for (const draft of drafts) {
    for (const end of draft.ends) {
      const angle = angleOf(end);
      if (angle > most + SAME_ANGLE && angle > (worst?.angle ?? 0)) worst = { draft, end, angle };
    }
  }
  return worst;
}

function overMiter(drafts: readonly Draft[], most: Deg): Check | null {
  const worst = worstOver(drafts, most, (end) => turned(end, most));
  return worst && overSaw('joint.over-saw', worst, { miter_deg: worst.angle, most_deg: most });
}

/** Sprung molding that the saw can cut nested is within its reach. */
function turned(end: PieceEnd, most: Deg): Deg {
  const flat = Math.max(Math.abs(end.miter), Math.abs(end.second?.miter ?? 0));
  const nested = Math.abs(end.nested?.miter ?? Number.POSITIVE_INFINITY);
  return nested <= most + SAME_ANGLE ? Math.min(flat, nested) : flat;
}

/** Sprung molding that the saw can cut nested needs no bevel. */
function overBevel(drafts: readonly Draft[], { miter, bevel: most }: Shop['saw']): Check | null {
  const tilted = ({ nested, bevel }: PieceEnd): Deg =>
    nested && Math.abs(nested.miter) <= miter + SAME_ANGLE ? 0 : Math.abs(bevel);
  const worst = worstOver(drafts, most, tilted);
  return worst && overSaw('joint.bevel-over-saw', worst, { bevel_deg: worst.angle, most_deg: most });
}

function overSaw(
  code: 'joint.over-saw' | 'joint.bevel-over-saw',
  { draft, end }: Cut,
  figures: Check['figures'],
): Check {
  const parts = end.with === null || end.with === draft.part ? [draft.part] : [draft.part, end.with];
  return { code, severity: 'warning', parts, at: placeOf(draft), figures };
}

/** A return is short by nature: it is worth a word, not a warning. */
function tooShort(drafts: readonly Draft[]): Check | null {
  const sawn = drafts.filter((draft) => draft.form !== 'sheet');
  const shortest = [...sawn].sort((a, b) => a.length - b.length)[0];
  if (!shortest || shortest.length >= HAND_DISTANCE) return null;
  const returns = shortest.ends.some((end) => end.cut === 'return');
  return {
    code: 'piece.too-short',
    severity: shortest.length < TOO_SHORT && !returns ? 'warning' : 'note',
    parts: [shortest.part],
    at: placeOf(shortest),
    figures: { length_mm: shortest.length },
  };
}

function inPlace(drafts: readonly Draft[]): Check | null {
  const longest = drafts
    .filter((draft) => draft.fit.inPlace && !draft.fit.read)
    .sort((a, b) => b.length - a.length)[0];
  if (!longest) return null;
  return {
    code: 'piece.measured-in-place',
    severity: 'note',
    parts: [longest.part],
    at: placeOf(longest),
    figures: { length_mm: longest.length },
  };
}

const placeOf = (draft: Draft): Check['at'] =>
  draft.placed.length > 0 ? centroidOf(draft.placed) : undefined;
