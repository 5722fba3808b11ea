import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { LetteredPart } from '../../design/schema.ts';
import { linesAfterTyping } from './letterSizes.ts';

/** The edit that gives a sign other words; lines and letters keep the sizes they had. */
export function editsToLetter(sign: LetteredPart, text: string): Edit[] {
  const texts = text
    .split('\n')
    .slice(0, 40)
    .map((line) => line.slice(0, 500));
  const before = sign.lettering.lines;
  if (texts.length === before.length && texts.every((one, i) => one === before[i]?.text)) return [];
  const lines = linesAfterTyping(before, texts);
  return [replacing('parts', { ...sign, lettering: { ...sign.lettering, lines } })];
}
