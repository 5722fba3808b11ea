import { type Remote, wrap } from 'comlink';
import type { Face } from '../../../lettering/font/faces.ts';
import type { LetterForm } from '../../../lettering/forms.ts';
import { askOnce } from '../../planning/askOnce.ts';
import type { FontsIn } from './fontsIn.ts';
import type { FontLook, FontWork } from './fontWorker.ts';

/** A font that takes longer than this to read is given up. */
const PATIENCE_MS = 8000;

/** What a worker of its own, ended afterwards, finds in a font; null when it took too long. */
function ask<T>(what: (work: Remote<FontWork>) => Promise<T>): Promise<T | null> {
  const worker = new Worker(new URL('./fontWorker.ts', import.meta.url), { type: 'module' });
  return askOnce<T>(worker, what(wrap<FontWork>(worker)), PATIENCE_MS);
}

export const lookAtFont = (bytes: Uint8Array, name: string): Promise<FontLook | null> =>
  ask<FontLook>((work) => work.look(bytes, name));

/** The forms of a letter, see `formsOf`. */
export const formsInFont = (bytes: Uint8Array, letter: string): Promise<readonly LetterForm[] | null> =>
  ask<readonly LetterForm[]>((work) => work.forms(bytes, letter));

/** The fonts of a file, see `fontsIn`. */
export const fontsInFile = (bytes: Uint8Array): Promise<FontsIn | null> =>
  ask<FontsIn>((work) => work.fontsIn(bytes));

/** A font of a file as designs keep it, see `FontWork.plain`. */
export const plainFont = (face: Face): Promise<Uint8Array | null> => ask((work) => work.plain(face));
