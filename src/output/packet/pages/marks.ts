import type { StickMark } from '../../../marks/result.ts';
import { formatLength } from '../../../measure/format.ts';
import { partNames } from '../../../plan/words/words.ts';
import { type Block, heading, paragraph, space, table } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { bodyOf } from '../sheet.ts';
import { tickBox } from './shopping.ts';

/** Edges that fall on a mark, members of one array told together. */
function edgeWords(packet: Packet, mark: StickMark, axis: 'x' | 'y'): string {
  const terms = packet.terms.marks;
  return (['low', 'mid', 'high', 'hole'] as const)
    .flatMap((edge) => {
      const ids = mark.edges.filter((e) => e.edge === edge).map((e) => e.part);
      return partNames(ids, packet.say).map((name) => `${name} ${terms.edge[edge][axis]}`);
    })
    .join(', ');
}

/** Both story sticks as tables, each mark with all edges that fall on it. */
export function marks(packet: Packet): Content[] {
  const terms = packet.terms.marks;
  const body = bodyOf(packet.sheet);
  const columns = [
    { title: terms.at, share: 1.8, figure: true },
    { title: terms.what, share: 10 },
  ];
  const blocks = packet.plan.marks.sticks.flatMap((stick): Block[] => {
    const rows = stick.marks.map((mark) => ({
      cells: [formatLength(mark.shown, packet.measure), edgeWords(packet, mark, stick.axis)],
      swatch: tickBox,
    }));
    return [heading(terms.axis[stick.axis]), ...table(columns, rows, body.w), space(4)];
  });
  return [{ title: packet.terms.titles.marks, blocks: [...paragraph(terms.lead, body.w), ...blocks] }];
}
