import type { BenchStep } from '../../cutting/atSaw.ts';
import { fencedFrom, wayOf } from '../../cutting/sheets/way.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { ENDS, type End } from '../../joinery/bar.ts';
import { endCurve } from '../../joinery/lengths.ts';
import type { Piece } from '../../joinery/piece.ts';
import { curveWords } from '../../plan/words/tape.ts';
import type { useWords } from '../words/t.ts';
import type { PaneSay } from './useSay.ts';

type Words = ReturnType<typeof useWords>;

/** A step in a few words, for buttons and announcements. */
export function stepName(step: BenchStep, t: Words): string {
  return step.kind === 'sheet-cut'
    ? t('bench.sheetCut', { sheet: step.from.number, number: step.cut.number })
    : t('bench.piece', { label: step.piece.label });
}

/** How an end is cut; a butt or miter at no angle is what the saw calls square, and so is the line straight across. */
export function endName(piece: Piece, end: End, t: Words): string {
  const { miter, bevel, cut } = piece.ends[end === 'start' ? 0 : 1];
  const line = endCurve(piece, end);
  const across = line !== null && line.depth <= SAME_PLACE && line.chord - piece.width <= SAME_PLACE;
  const straight = miter === 0 && bevel === 0 && (cut === 'butt' || cut === 'miter' || across);
  return t(`bench.end.${straight ? 'square' : cut}`);
}

/** Which board or sheet it is, and of how many; what is on none is called by `none`. */
export const fromName = (
  from: BenchStep['from'],
  t: Words,
  none: 'bench.notOnBoard' | 'bench.others' = 'bench.notOnBoard',
): string => (from ? t(`bench.${from.kind}`, { number: from.number, all: from.all }) : t(none));

/** How long a piece is, of a sheet how wide too. */
export function sizeName({ form, shown }: Piece, say: Pick<PaneSay, 'short'>): string {
  const length = say.short(shown.length);
  return form === 'sheet' ? `${length} × ${say.short(shown.width)}` : length;
}

/** All that is sawn by, as it is spoken when the step comes up: label, length, ends, board. */
export function stepSpoken(
  step: BenchStep,
  names: ReadonlyMap<string, string>,
  say: PaneSay,
  t: Words,
): string {
  const from = fromName(step.from, t);
  if (step.kind === 'sheet-cut') {
    const { cut } = step;
    const way = t(wayOf(cut) === 'rip' ? 'bench.rip' : 'bench.cross');
    const hint = t('bench.fenceHint', { edge: t(`bench.edge.${fencedFrom(cut)}`) });
    return [stepName(step, t), way, `${t('bench.fence')} ${say.short(cut.fence)} ${hint}`, from].join('. ');
  }
  const { piece } = step;
  const ends = ENDS.map((at, i) => {
    const end = piece.ends[i === 0 ? 0 : 1];
    const turns = [
      end.miter === 0 ? '' : `${t('end.angle')} ${say.angle(Math.abs(end.miter))}`,
      end.bevel === 0 ? '' : `${t('bench.bevel')} ${say.angle(Math.abs(end.bevel))}`,
    ];
    // A miter is told by its angle alone.
    const named = end.cut === 'miter' && end.miter !== 0 ? '' : endName(piece, at, t);
    return `${t(i === 0 ? 'wood.startEnd' : 'wood.endEnd')}: ${[named, ...turns].filter(Boolean).join(', ')}`;
  });
  const what = `${stepName(step, t)}, ${names.get(piece.id)}: ${sizeName(piece, say)}`;
  return [what, ...(piece.form === 'sheet' ? [] : ends), curveWords(piece, say.words.tape, say.measure), from]
    .filter(Boolean)
    .join('. ');
}
