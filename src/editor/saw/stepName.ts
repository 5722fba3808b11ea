import type { BenchStep } from '../../cutting/atSaw.ts';
import { fencedFrom, wayOf } from '../../cutting/sheets/way.ts';
import { idsOfBars } from '../../design/made.ts';
import type { Piece, PieceEnd } from '../../joinery/piece.ts';
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

/** How an end is cut; a butt or miter at no angle is what the saw calls square. */
export function endName(end: PieceEnd, t: Words): string {
  const straight = end.miter === 0 && end.bevel === 0 && (end.cut === 'butt' || end.cut === 'miter');
  return t(`bench.end.${straight ? 'square' : end.cut}`);
}

/** Where a step's wood comes from, of how many boards and sheets there are. */
export function fromName(step: BenchStep, count: { boards: number; sheets: number }, t: Words): string {
  if (step.from === null) return t('bench.notOnBoard');
  const { kind, number } = step.from;
  return t(`bench.${kind}`, { number, all: kind === 'board' ? count.boards : count.sheets });
}

/** What is marked from a pattern at the ends of a bar; empty where the saw cuts both. */
export const curveOf = ({ layout }: Plan, piece: Piece, say: PaneSay): string =>
  idsOfBars(layout.parts).has(piece.part) ? curveWords(piece, say.words.tape, say.measure) : '';

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
  const ends = piece.ends.map((end, i) => {
    const turns = [
      end.miter === 0 ? '' : `${t('bench.miter')} ${say.angle(Math.abs(end.miter))}`,
      end.bevel === 0 ? '' : `${t('bench.bevel')} ${say.angle(Math.abs(end.bevel))}`,
    ];
    // A miter is told by its angle alone.
    const named = end.cut === 'miter' && end.miter !== 0 ? '' : endName(end, t);
    return `${t(i === 0 ? 'bench.leftEnd' : 'bench.rightEnd')}: ${[named, ...turns].filter(Boolean).join(', ')}`;
  });
  const what = `${stepName(step, t)}, ${names.get(piece.id)}: ${size}`;
  return [what, ...(piece.form === 'sheet' ? [] : ends), curveOf(plan, piece, say), from]
    .filter(Boolean)
    .join('. ');
}
