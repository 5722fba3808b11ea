import { formatAngle, formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { fillPages, heading, paragraph, space, table } from '../flow.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { bodyOf } from '../sheet.ts';
import { WORDS } from '../words.ts';
import { compareLabels, groups } from './cutList.ts';

const W = WORDS.saw;

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
  const body = bodyOf(packet.sheet);
  const { shop } = packet.plan.design;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = settings(packet).map(({ miter, bevel, labels, count }) => ({
    cells: [
      formatAngle(miter),
      formatAngle(bevel),
      String(count),
      [...labels].sort(compareLabels).join(', '),
    ],
  }));
  const columns = [
    { title: W.setting, share: 1.2, figure: true },
    { title: W.bevel, share: 1.2, figure: true },
    { title: W.ends, share: 1, figure: true },
    { title: W.pieces, share: 8, wraps: true },
  ];
  const used: [string, string][] = [
    [W.kerf, told(shop.boardKerf)],
    [W.sheetKerf, told(shop.sheetKerf)],
    [W.trim, told(shop.endTrim)],
    [W.allowance, told(shop.fitAllowance)],
    [W.most, formatAngle(shop.saw.miter)],
    [W.tilt, formatAngle(shop.saw.bevel)],
  ];
  const blocks = [
    ...paragraph(W.lead, body.w),
    space(2),
    ...(rows.length > 0 ? table(columns, rows, body.w) : []),
    space(4),
    heading(W.shop),
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
    title: WORDS.titles.saw,
    landscape: false,
    scale: null,
    draw,
  }));
}
