import type { Design } from '../../design/schema.ts';
import type { LaidPart } from '../../layout/laid.ts';
import type { Palette } from './palette.ts';

/** Color of a laid part: its finish, a fitting's own color, or bare wood. */
export function fillOf(part: LaidPart, finishes: Design['finishes'], palette: Palette): string {
  if (part.kind === 'fitting') return part.spec.color;
  const finish = finishes.find((f) => f.id === part.finish);
  return finish?.color ?? palette.rim;
}

/** Black or chalk, whichever shows on a color. */
export function inkOn(color: string): string {
  const n = Number.parseInt(color.slice(1), 16);
  const light = 0.299 * ((n >> 16) & 255) + 0.587 * ((n >> 8) & 255) + 0.114 * (n & 255);
  return light > 110 ? '#14110a' : '#f6f1e2';
}
