import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { fillPages, heading, paragraph, space, table } from '../flow.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { bodyOf } from '../sheet.ts';
import { compareLabels, groups } from './cutList.ts';

interface Setting {
  readonly miter: number;
  readonly bevel: number;
  readonly labels: Set<string>;
  count: number;
}

/** Every different setting of the saw with the pieces that need it, square first. */
function settings(packet: Packet): Setting[] {
  const found = new Map<string, Setting>();
  const use = (miter: number, bevel: number, label: string, times: number) => {
    const key = `${miter.toFixed(2)}|${bevel.toFixed(2)}`;
    const known = found.get(key) ?? { miter, bevel, labels: new Set<string>(), count: 0 };
    known.labels.add(label);
    known.count += times;
    found.set(key, known);
  };
  for (const { piece, count } of groups(packet)) {
    if (piece.form === 'sheet') continue;
    for (const end of piece.ends) {
      use(Math.abs(end.miter), Math.abs(end.bevel), piece.label, count);
      if (end.second) use(Math.abs(end.second.miter), Math.abs(end.second.bevel), piece.label, count);
    }
  }
  return [...found.values()].sort((a, b) => a.miter - b.miter || a.bevel - b.bevel);
}

/** What the saw is set to, once for all pieces that share a setting. */
export function saw(packet: Packet): Leaf[] {
  const terms = packet.terms.saw;
  const body = bodyOf(packet.sheet);
  const { shop } = packet.plan.design;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = settings(packet).map(({ miter, bevel, labels, count }) => ({
    cells: [
      packet.say.angle(miter),
      packet.say.angle(bevel),
      String(count),
      [...labels].sort(compareLabels).join(', '),
    ],
  }));
  const columns = [
    { title: terms.setting, share: 1.2, figure: true },
    { title: terms.bevel, share: 1.2, figure: true },
    { title: terms.ends, share: 1, figure: true },
    { title: terms.pieces, share: 8, wraps: true },
  ];
  const used: [string, string][] = [
    [terms.kerf, told(shop.boardKerf)],
    [terms.sheetKerf, told(shop.sheetKerf)],
    [terms.trim, told(shop.endTrim)],
    [terms.allowance, told(shop.fitAllowance)],
    [terms.most, packet.say.angle(shop.saw.miter)],
    [terms.tilt, packet.say.angle(shop.saw.bevel)],
  ];
  const blocks = [
    ...paragraph(terms.lead, body.w),
    space(2),
    ...(rows.length > 0 ? table(columns, rows, body.w) : []),
    space(4),
    heading(terms.shop),
    ...table(
      [
        { title: '', share: 3 },
        { title: '', share: 2, figure: true },
      ],
      used.map((cells) => ({ cells })),
      body.w / 2,
    ).slice(1),
  ];
  return fillPages(blocks, body).map((draw) => ({
    title: packet.terms.titles.saw,
    landscape: false,
    scale: null,
    draw,
  }));
}
