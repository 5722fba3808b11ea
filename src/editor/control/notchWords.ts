import type { Notch } from '../../joinery/piece.ts';
import { t } from '../words/t.ts';
import type { PaneSay } from './useSay.ts';

/** Side and depth of a notch. */
export const notchWords = ({ side, depth }: Notch, say: PaneSay): string =>
  t(`wood.notch.${side}`, { depth: say.short(depth) });

/** A notch with its two shoulders, measured from the start of the piece, and their angle unless square. */
export function notchPlace(notch: Notch, say: PaneSay): string {
  const from = say.short(notch.from);
  const to = say.short(notch.to);
  const place = t('wood.notchAt', { what: notchWords(notch, say), from, to });
  const miter = Math.abs(notch.miter);
  return miter === 0 ? place : `${place}, ${t('wood.endMiter', { angle: say.angle(miter) })}`;
}
