import { dimension } from '../../../drawing/dimension.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { line, shape, text } from '../../../drawing/items.ts';
import { DASH, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { shortened, textWidth } from '../../../drawing/text.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { boxOf } from '../../../geometry/region.ts';
import type { Box } from '../../../geometry/shape.ts';
import { groupPieces } from '../../../joinery/label.ts';
import type { Piece } from '../../../joinery/piece.ts';
import type { Laid } from '../../../layout/laid.ts';
import { grouped, groupOf } from '../../../list/grouped.ts';
import { formatLength, formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { partNames } from '../../../plan/words/words.ts';
import { type Block, entry, paragraph, space } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { centered, spotIn } from '../nameOn.ts';
import { bodyOf } from '../sheet.ts';
import { viewOf } from '../view.ts';

/** Room of the drawing of a frame, and around it for its measures; and of the terms beside it. */
const WIDE: Mm = 74;
const TALL: Mm = 50;
const AROUND = { left: 2, right: 14, top: 12, bottom: 2 } as const;
const TERM: Mm = 24;
/** Least pieces of what is put together on the bench: two lie flat and square by themselves. */
const LEAST = 3;

/** A run that closes, with its pieces; several where they are alike to the letter. */
interface Frame {
  readonly runs: readonly [Laid<'run'>, ...Laid<'run'>[]];
  readonly pieces: readonly Piece[];
}

function framesOf({ plan }: Packet): Frame[] {
  const own = grouped(plan.joinery.pieces, ({ part }) => part);
  const runs = plan.layout.parts.flatMap((part) => (part.kind === 'run' && part.closed ? [part] : []));
  const told = runs.flatMap((run) => {
    const pieces = groupOf(own, run.id);
    return pieces.length < LEAST ? [] : [{ run, pieces }];
  });
  const alike = grouped(told, ({ run: { box }, pieces }) =>
    [box.w.toFixed(2), box.h.toFixed(2), ...pieces.map(({ label }) => label)].join('|'),
  );
  return [...alike.values()].map(([first, ...others]) => ({
    runs: [first.run, ...others.map(({ run }) => run)],
    pieces: first.pieces,
  }));
}

/** From corner to corner of a frame with four of them; null for any other. */
function diagonalOf({ runs: [{ spec, region }] }: Frame): Mm | null {
  const box = spec.path.form === 'frame' ? boxOf(region) : null;
  return box && Math.hypot(box.w, box.h);
}

/** The frame with its marks, its outer size and both diagonals. */
function drawing(packet: Packet, frame: Frame, room: Box): DrawItem[] {
  const [run] = frame.runs;
  const model = boxOf(run.region) ?? run.box;
  const view = viewOf(model, room, packet.unit, AROUND);
  const { x, y, w, h } = view.box;
  const [low, high] = [
    [
      { x, y },
      { x: x + w, y: y + h },
    ],
    [
      { x, y: y + h },
      { x: x + w, y },
    ],
  ] as const;
  const look = { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.center };
  const size = TEXT.note;
  const marks = frame.pieces.flatMap((piece): DrawItem[] => {
    const region = view.region(piece.placed);
    const spot = spotIn(region, { w: textWidth(piece.label, { size }) + 0.6, h: size }, []);
    return [
      shape(pathOfRegion(region), { stroke: INK.line, width: WEIGHT.middle, fill: INK.paper }),
      ...(spot ? [centered(spot, piece.label, size)] : []),
    ];
  });
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  return [
    ...(diagonalOf(frame) === null ? [] : [line(...low, look), line(...high, look)]),
    ...marks,
    ...dimension({ x, y: y + h }, { x: x + w, y: y + h }, 4, told(model.w)),
    ...dimension({ x: x + w, y: y + h }, { x: x + w, y }, 4, told(model.h)),
  ];
}

/** The drawing with its name, pieces and diagonal beside it. */
function frameBlock(packet: Packet, frame: Frame): Block {
  const { terms, say, measure } = packet;
  const { bench } = terms;
  const names = partNames(
    frame.runs.map(({ id }) => id),
    say,
  );
  const pieces = groupPieces(frame.pieces).map(({ label, pieces: [piece], quantity }) =>
    bench.piece(quantity, label, formatLength(piece.shown.length, measure)),
  );
  const diagonal = diagonalOf(frame);
  const square = diagonal === null ? bench.byFace : bench.diagonal(formatLength(diagonal, measure));
  const facts = [
    [bench.pieces, pieces.join('; ')],
    [bench.square, square],
  ] as const;
  const count = frame.runs.length;
  const title = `${count === 1 ? '' : `${count} x `}${names.join(', ')}`;
  return {
    height: TALL + 5,
    draw: (at, width) => {
      const [x, w] = [at.x + WIDE + 6, width - WIDE - 6];
      const style = { size: TEXT.body, bold: true };
      let y = at.y - 12;
      return [
        ...drawing(packet, frame, { x: at.x, y: at.y - TALL, w: WIDE, h: TALL }),
        text({ x, y: at.y - 7 }, shortened(title, style, w), style),
        ...facts.flatMap(([term, words]) => {
          const block = entry(term, words, w, TERM);
          const items = block.draw({ x, y }, w);
          y -= block.height;
          return items;
        }),
      ];
    },
  };
}

/** What is put together on the bench before it goes up: frames, with what makes them square. */
export function bench(packet: Packet): Content[] {
  const { terms, sheet } = packet;
  const { w } = bodyOf(sheet);
  const frames = framesOf(packet);
  if (frames.length === 0) return [];
  return [
    {
      title: terms.titles.bench,
      blocks: [
        ...paragraph(terms.bench.lead, w),
        space(2),
        entry(terms.bench.glue, terms.bench.glueOf, w, TERM),
        entry(terms.bench.clamps, terms.bench.clampsOf, w, TERM),
        ...frames.map((frame) => frameBlock(packet, frame)),
      ],
    },
  ];
}
