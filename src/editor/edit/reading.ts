import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import { isMany } from '../../design/made.ts';
import { isStraight } from '../../design/reading.ts';
import type { Design, Part, TapeRead } from '../../design/schema.ts';
import { isReadable } from '../../joinery/asRead.ts';
import type { Piece } from '../../joinery/piece.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { readReference } from '../../layout/reference.ts';
import { withSpan } from '../../layout/span.ts';
import { under } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Shown } from '../document/shown.ts';
import { overrideOf, withOverride } from './members.ts';

/** Whether what a tape reads of a piece can be kept: of a strip, of one in a row, or of a straight length of a run. */
export function takesReading(piece: Piece, { layout }: Shown): boolean {
  const laid = layout.parts.find(({ id }) => id === piece.part);
  if (!laid || !isReadable(piece)) return false;
  return isStraight(laid) || ('legs' in laid && laid.member === null && piece.leg !== undefined);
}

/** How long the box of a strip is, the way it lies. */
export function longSide({ box }: Pick<LaidPart, 'box'>, lie: string): Mm {
  return lie === 'up' ? box.h : lie === 'across' ? box.w : Math.max(box.w, box.h);
}

/** Which straight length of a run, and of how many. */
export interface LegOfRun {
  readonly leg: number;
  readonly legs: number;
}

/** What keeps a reading of a laid part with the design, or takes it back; nothing where the part is not there. */
export function readingEdits(
  design: Design,
  laid: string,
  read: TapeRead | undefined,
  of?: LegOfRun,
): Edit[] {
  const reference = readReference(laid);
  const id = reference.to === 'member' ? reference.part : laid;
  const part = design.parts.find((one) => one.id === id);
  const next = part && (of ? withLegRead(part, of, read) : withReading(part, reference, read));
  return next ? [replacing('parts', next)] : [];
}

/** The same reading for several members of a row. */
export function readingOfAll(design: Design, members: readonly string[], read: TapeRead): Edit[] {
  const parts = new Map(design.parts.map((part) => [part.id, part]));
  const changed = new Set<string>();
  for (const laid of members) {
    const reference = readReference(laid);
    const part = reference.to === 'member' ? parts.get(reference.part) : undefined;
    const next = part && withReading(part, reference, read);
    if (!next) continue;
    parts.set(next.id, next);
    changed.add(next.id);
  }
  return [...changed].map((id) => replacing('parts', under(parts, id)));
}

/** Readings of a run hold for as many straight lengths as it had; those of another path fall away. */
function withLegRead(part: Part, { leg, legs }: LegOfRun, read: TapeRead | undefined): Part | null {
  if (!('path' in part)) return null;
  const { reads, ...rest } = part;
  const { [leg]: _, ...others } = reads?.legs === legs ? reads.at : {};
  const at = read ? { ...others, [leg]: read } : others;
  return Object.keys(at).length > 0 ? { ...rest, reads: { legs, at } } : rest;
}

function withReading(
  part: Part,
  reference: ReturnType<typeof readReference>,
  read: TapeRead | undefined,
): Part | null {
  if (isMany(part) && reference.to === 'member') {
    const { read: _, ...own } = overrideOf(part, reference) as { read?: TapeRead };
    return withOverride(part, reference, read ? { ...own, read } : own);
  }
  if (!isStraight(part)) return null;
  const { read: was, ...rest } = part;
  if (read) return { ...rest, read };
  // As long as it was before it was read, where nothing else says how long it is.
  const { lie, box } = rest;
  const axis = lie === 'up' ? 'y' : lie === 'across' ? 'x' : null;
  if (!was || !axis) return rest;
  return { ...rest, box: withSpan(box, axis, axis === 'x' ? box.x : box.y, was.of) };
}
