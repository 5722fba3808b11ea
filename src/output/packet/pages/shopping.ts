import { rectangle } from '../../../drawing/items.ts';
import { INK, WEIGHT } from '../../../drawing/style.ts';
import type { Box } from '../../../geometry/shape.ts';
import { formatFar, formatVolume } from '../../../measure/format.ts';
import type { Plan, ShoppingLine } from '../../../plan/types.ts';
import { paragraph, type Row, space, table } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';

function sizeOf({ kind, size }: ShoppingLine, packet: Packet<Plan>): string {
  // The name tells how wide it is.
  if (kind === 'tape' && size.length_mm !== undefined) return formatFar(size.length_mm, packet.measure);
  if (size.volume_l !== undefined) return formatVolume(size.volume_l, packet.measure);
  const sides = [size.length_mm, size.width_mm].flatMap((mm) => (mm === undefined ? [] : packet.told(mm)));
  const pieces = size.pieces === undefined ? [] : [packet.words.pieces(size.pieces)];
  return [...(sides.length > 0 ? [sides.join(' x ')] : []), ...pieces].join(', ');
}

/** What to get, counter by counter, with a box to tick. */
export function shopping(packet: Packet<Plan>): Content[] {
  const terms = packet.terms.shopping;
  const { plan, words, body, money } = packet;
  const columns = [
    { title: terms.item, share: 6 },
    { title: terms.size, share: 3, figure: true },
    { title: terms.count, share: 1.2, figure: true },
    { title: terms.each, share: 2, figure: true },
    { title: terms.price, share: 2, figure: true },
  ];
  const kinds = [...new Set(plan.shopping.map((line) => line.kind))];
  const rows = kinds.flatMap((kind): Row[] => [
    { cells: [words.shopping[kind]], title: true },
    ...plan.shopping
      .filter((line) => line.kind === kind)
      .map((line) => ({
        cells: [
          line.name,
          sizeOf(line, packet),
          String(line.count),
          line.owned || !line.priced ? '' : money(line.each),
          line.owned
            ? line.got
              ? terms.got
              : terms.owned
            : line.priced
              ? money(line.price)
              : terms.unpriced,
        ],
        swatch: tickBox,
      })),
  ]);
  const total = { cells: [terms.total, '', '', '', money(plan.total)], bold: true };
  const unpriced = plan.shopping.filter((line) => !line.priced).length;
  const blocks = [
    ...paragraph(terms.lead, body.w),
    space(2),
    ...(rows.length > 0 ? table(columns, [...rows, total], body.w) : []),
    ...(unpriced > 0 ? [space(2), ...paragraph(terms.without(unpriced), body.w)] : []),
  ];
  return [{ title: packet.terms.titles.shopping, blocks, alone: true }];
}

/** An empty box to tick, as high as the row. */
export function tickBox({ x, y, h }: Box) {
  return [
    rectangle({ x: x + 1, y: y + 0.2, w: h - 0.4, h: h - 0.4 }, { stroke: INK.line, width: WEIGHT.thin }),
  ];
}
