import type { Edit } from '../../design/edit/edit.ts';
import type { Sign } from '../../design/schema.ts';

/** The edit that gives a sign other words; lines keep the cap heights they had. */
export function editsToLetter(sign: Sign, text: string): Edit[] {
  const lines = text
    .split('\n')
    .slice(0, 40)
    .map((line, i) => ({ ...sign.lettering.lines[i], text: line.slice(0, 500) }));
  const same =
    lines.length === sign.lettering.lines.length &&
    lines.every((l, i) => l.text === sign.lettering.lines[i]?.text);
  if (same) return [];
  return [
    {
      kind: 'replace',
      list: 'parts',
      id: sign.id,
      item: { ...sign, lettering: { ...sign.lettering, lines } },
    },
  ];
}
