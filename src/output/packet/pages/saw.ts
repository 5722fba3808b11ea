import { compareLabels, groupPieces } from '../../../joinery/label.ts';
import type { PieceEnd } from '../../../joinery/piece.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, paragraph, space, table, tableOf } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';

interface Setting {
  readonly miter: number;
  readonly bevel: number;
  readonly labels: Set<string>;
  count: number;
}

type Cuts = (end: PieceEnd) => readonly { readonly miter: number; readonly bevel: number }[];

/** Every cut as it is made flat on the table. */
const flat: Cuts = (end) => [end, ...(end.second ? [end.second] : [])];

/** The same corner of sprung molding, held at its spring angle between fence and table. */
const nested: Cuts = (end) => (end.nested ? [end.nested] : []);

/** Every different setting of the saw with the pieces that need it, square first. */
function settings(packet: Packet, cuts: Cuts): Setting[] {
  const found = new Map<string, Setting>();
  const use = (miter: number, bevel: number, label: string, times: number) => {
    const key = `${miter.toFixed(2)}|${bevel.toFixed(2)}`;
    const known = found.get(key) ?? { miter, bevel, labels: new Set<string>(), count: 0 };
    known.labels.add(label);
    known.count += times;
    found.set(key, known);
  };
  for (const { pieces, quantity } of groupPieces(packet.plan.joinery.pieces)) {
    const [piece] = pieces;
    if (piece.form === 'sheet') continue;
    for (const { miter, bevel } of piece.ends.flatMap(cuts)) {
      use(Math.abs(miter), Math.abs(bevel), piece.label, quantity);
    }
  }
  return [...found.values()].sort((a, b) => a.miter - b.miter || a.bevel - b.bevel);
}

function settingsTable(packet: Packet, cuts: Cuts, width: Mm): Block[] {
  const { say } = packet;
  const terms = packet.terms.saw;
  return tableOf(
    [
      [terms.setting, 1.2, ({ miter }) => say.angle(miter), 'saw'],
      [terms.bevel, 1.2, ({ bevel }) => say.angle(bevel), 'saw'],
      [terms.ends, 1, ({ count }) => String(count), 'figure'],
      [terms.pieces, 8, ({ labels }) => [...labels].sort(compareLabels).join(', ')],
    ],
    settings(packet, cuts),
    width,
  );
}

/** What the saw is set to, once for all pieces that share a setting. */
export function saw(packet: Packet): Content[] {
  const terms = packet.terms.saw;
  const { plan, say, told, body } = packet;
  const { shop } = plan.design;
  const sprung = settingsTable(packet, nested, body.w);
  const used = [
    [terms.kerf, told(shop.boardKerf)],
    [terms.sheetKerf, told(shop.sheetKerf)],
    [terms.trim, told(shop.endTrim)],
    ...(plan.joinery.pieces.some(({ fit }) => fit.inPlace && !fit.read)
      ? [[terms.allowance, told(shop.fitAllowance)]]
      : []),
    [terms.most, say.angle(shop.saw.miter)],
    [terms.tilt, say.angle(shop.saw.bevel)],
  ];
  const blocks = [
    ...paragraph(terms.lead, body.w),
    space(2),
    ...settingsTable(packet, flat, body.w),
    ...(sprung.length > 0 ? [space(4), heading(terms.nested), ...sprung] : []),
    space(4),
    heading(terms.shop),
    ...table(
      [
        { title: '', share: 3 },
        { title: '', share: 2, figure: true },
      ],
      used.map((cells) => ({ cells })),
      body.w / 2,
    )
      .slice(1)
      .map((row, i) => ({ ...row, head: undefined, heldToNext: i < used.length - 1 })),
  ];
  return [{ title: packet.terms.titles.saw, blocks }];
}
