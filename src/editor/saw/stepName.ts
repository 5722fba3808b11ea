import type { BenchStep } from '../../cutting/atSaw.ts';
import { fencedFrom, wayOf } from '../../cutting/sheets/way.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { ENDS, type End } from '../../joinery/bar.ts';
import { endCurve } from '../../joinery/lengths.ts';
import type { Piece } from '../../joinery/piece.ts';
import type { Plan } from '../../plan/types.ts';
import { curveWords } from '../../plan/words/tape.ts';
import type { PaneSay } from '../control/useSay.ts';
import type { useWords } from '../words/t.ts';

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

/** Where a step's wood comes from, of how many boards and sheets there are. */
export function fromName(step: BenchStep, count: { boards: number; sheets: number }, t: Words): string {
  if (step.from === null) return t('bench.notOnBoard');
  const { kind, number } = step.from;
  return t(`bench.${kind}`, { number, all: kind === 'board' ? count.boards : count.sheets });
}

/** All that is sawn by, as it is spoken when the step comes up: label, length, ends, board. */
export function stepSpoken(
  step: BenchStep,
  plan: Plan,
  names: ReadonlyMap<string, string>,
  say: PaneSay,
  t: Words,
): string {
  const { boards, sheets } = plan.cutting;
  const from = fromName(step, { boards: boards.length, sheets: sheets.length }, t);
  if (step.kind === 'sheet-cut') {
    const { cut } = step;
    const way = t(wayOf(cut) === 'rip' ? 'bench.rip' : 'bench.cross');
    const hint = t('bench.fenceHint', { edge: t(`bench.edge.${fencedFrom(cut)}`) });
    return [stepName(step, t), way, `${t('bench.fence')} ${say.short(cut.fence)} ${hint}`, from].join('. ');
  }
  const { piece } = step;
  const length = say.short(piece.shown.length);
  const size = piece.form === 'sheet' ? `${length} × ${say.short(piece.shown.width)}` : length;
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
  const what = `${stepName(step, t)}, ${names.get(piece.id)}: ${size}`;
  return [what, ...(piece.form === 'sheet' ? [] : ends), curveWords(piece, say.words.tape, say.measure), from]
    .filter(Boolean)
    .join('. ');
}
