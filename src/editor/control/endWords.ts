import type { PieceEnd } from '../../joinery/piece.ts';
import { t } from '../words/t.ts';
import type { PaneSay } from './useSay.ts';

/** An end as it is written on the drawing of a piece: the saw's settings and nothing else, of two cuts the upper one first. */
export function endMarks(end: PieceEnd, say: PaneSay): string[] {
  if (end.cut === 'cope') return [t('wood.endCope')];
  const settings = [end.miter, end.bevel].map(Math.abs);
  if (end.second) return [end, end.second].map((cut) => say.angle(Math.abs(cut.miter)));
  const [miter = 0, bevel = 0] = settings;
  if (bevel > 0) return [`${say.angle(miter)} / ${say.angle(bevel)}`];
  return miter > 0 ? [say.angle(miter)] : [];
}

const NAMED = {
  cope: 'wood.endCope',
  return: 'wood.endReturn',
  plunge: 'wood.endPlunge',
  sawn: 'wood.endSawn',
} as const;

/** An end in words, as it is told to the person at the saw. */
export function endWords(end: PieceEnd, say: PaneSay): string {
  const miter = Math.abs(end.miter);
  const bevel = Math.abs(end.bevel);
  const named = end.cut in NAMED ? t(NAMED[end.cut as keyof typeof NAMED]) : '';
  const turned = miter > 0 || bevel > 0;
  return [
    named,
    miter > 0 ? t('wood.endMiter', { angle: say.angle(miter) }) : '',
    bevel > 0 ? t('wood.endBevel', { angle: say.angle(bevel) }) : '',
    named === '' && !turned ? t('wood.endSquare') : '',
    end.second ? t('wood.endSecond', { angle: say.angle(Math.abs(end.second.miter)) }) : '',
    turned && end.long !== 'both' ? t(`wood.endLong.${end.long}`) : '',
    nestedWords(end, say),
    end.with ? t('wood.endMeets', { name: say.name(end.with) }) : '',
  ]
    .filter((words) => words !== '')
    .join(', ');
}

function nestedWords({ nested }: PieceEnd, say: PaneSay): string {
  if (!nested) return '';
  const miter = say.angle(Math.abs(nested.miter));
  const bevel = Math.abs(nested.bevel);
  if (bevel < 0.05) return t('wood.endNested', { miter });
  return t('wood.endNestedBevel', { miter, bevel: say.angle(bevel) });
}
