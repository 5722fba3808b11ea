import { text } from '../../../drawing/items.ts';
import { TEXT } from '../../../drawing/style.ts';
import { wrapped } from '../../../drawing/text.ts';
import type { Mm } from '../../../measure/units.ts';
import { stepSentence } from '../../../plan/words/words.ts';
import { type Block, groupsOf, paragraph, space } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { tickBox } from './shopping.ts';

/** A numbered step with a box to tick. */
function stepBlocks(number: number, sentence: string, width: Mm): Block[] {
  const size = TEXT.large * 0.92;
  const indent = 18;
  const groups = groupsOf(wrapped(sentence, { size }, width - indent));
  const lead = size * 1.45;
  return groups.map((rows, k) => ({
    height: rows.length * lead + (k === groups.length - 1 ? 3.2 : 0),
    draw: (at) => [
      ...(k === 0
        ? [
            ...tickBox({ x: at.x, y: at.y - size - 1, w: 6, h: size + 1 }),
            text({ x: at.x + 14, y: at.y - size }, String(number), { size, bold: true, anchor: 'end' }),
          ]
        : []),
      ...rows.map((row, i) => text({ x: at.x + indent, y: at.y - size - i * lead }, row, { size })),
    ],
  }));
}

/** The order of work, step by step. */
export function steps(packet: Packet): Content[] {
  const { body } = packet;
  const blocks = packet.plan.marks.steps.flatMap((step) =>
    stepBlocks(step.number, stepSentence(step, packet.words, packet.say), body.w),
  );
  return [
    {
      title: packet.terms.titles.steps,
      blocks: [...paragraph(packet.terms.steps.lead, body.w), space(4), ...blocks],
    },
  ];
}
