import type { DrawItem } from '../../../drawing/drawing.ts';
import { hatch } from '../../../drawing/hatch.ts';
import { circle, line, polyline, rectangle, text } from '../../../drawing/items.ts';
import { scaleFor, scaleWords } from '../../../drawing/scaleBar.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import type { SideShape } from '../../../fold/result.ts';
import { sideView } from '../../../fold/sideView.ts';
import { regionOfBox, regionOfRing } from '../../../geometry/region.ts';
import type { Box, Point } from '../../../geometry/shape.ts';
import { SAME_ANGLE } from '../../../geometry/tolerance.ts';
import type { Deg, Mm } from '../../../measure/units.ts';
import { type Block, heading, held, paragraph, space, stacked, tableOf, withNote } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { type PageView, viewAt } from '../view.ts';

/** Wall and floor are drawn this thick, in the room. */
const BEHIND: Mm = 90;
/** Radii of the marks on paper. */
const PIVOT: Mm = 0.9;
const CONTACT: Mm = 1.8;

const FILL: Readonly<Record<SideShape['kind'], string>> = {
  frame: INK.tint,
  platform: INK.tint,
  skin: INK.tint,
  mattress: INK.paper,
  part: INK.faint,
  'keep-clear': INK.paper,
  leg: INK.tint,
};

/** The room seen from the side, as far as the bed reaches. */
function roomBox({ plan }: Packet): Box {
  return {
    x: -BEHIND,
    y: -BEHIND,
    w: plan.fold.floorSpace + BEHIND + 60,
    h: plan.design.bed.ceiling + 2 * BEHIND,
  };
}

/** Distinct angles to show: stowed, where it comes closest, lowered. */
function angles(packet: Packet): { angle: Deg; words: string }[] {
  const terms = packet.terms.swing;
  const { worst } = packet.plan.fold;
  const between =
    worst > 0.5 && worst < 89.5 ? [{ angle: worst, words: terms.views.worst(packet.say.angle(worst)) }] : [];
  return [{ angle: 0, words: terms.views.stowed }, ...between, { angle: 90, words: terms.views.lowered }];
}

function drawView(packet: Packet, angle: Deg, words: string, room: Box, scale: number): DrawItem[] {
  const { plan } = packet;
  const model = roomBox(packet);
  const view = viewAt(model, { ...room, h: room.h - 6 }, scale);
  const p = (x: Mm, y: Mm) => view.to({ x, y });
  const { ceiling, pivot, wallBoard } = plan.design.bed;
  const right = model.x + model.w;
  const solid = (box: Box) => {
    const low = p(box.x, box.y);
    return hatch(regionOfBox({ x: low.x, y: low.y, w: box.w / scale, h: box.h / scale }), {
      angle: 45,
      pitch: 1.4,
    });
  };
  const bold = { stroke: INK.line, width: WEIGHT.bold };
  const board = { x: 0, y: 0, w: wallBoard.thickness, h: wallBoard.height };
  const walls = [
    ...solid({ x: model.x, y: model.y, w: BEHIND, h: model.h }),
    ...solid({ x: 0, y: model.y, w: right, h: BEHIND }),
    ...solid({ x: 0, y: ceiling, w: right, h: BEHIND }),
    line(p(0, 0), p(0, ceiling), bold),
    line(p(0, 0), p(right, 0), bold),
    line(p(0, ceiling), p(right, ceiling), bold),
    ...(board.w > 0 && board.h > 0 ? boardItems(board, view) : []),
  ];
  const input = {
    bed: plan.design.bed,
    face: plan.face,
    keepClears: plan.design.keepClears,
    solids: plan.joinery.solids,
  };
  const shapes = sideView(input, angle).flatMap((s): DrawItem[] => {
    const points = s.points.map(view.to);
    const drawn = polyline(points, true, { fill: FILL[s.kind], stroke: INK.line, width: WEIGHT.thin });
    return s.kind === 'mattress'
      ? [drawn, ...hatch(regionOfRing(points), { angle: 45, pitch: 2.2, crossed: true }, INK.faint)]
      : [drawn];
  });
  const marks = plan.fold.hits
    .filter((hit) => hit.angle <= angle + SAME_ANGLE)
    .flatMap((hit) => contactItems(view.to(hit.place)));
  const title = text({ x: room.x + room.w / 2, y: room.y + room.h - 3.5 }, words, {
    size: TEXT.small,
    bold: true,
    anchor: 'middle',
  });
  return [
    ...walls,
    ...shapes,
    ...pivotItems(view.to({ x: pivot.fromWall, y: pivot.height })),
    ...marks,
    title,
  ];
}

/** The wall board in front of its wall; the bed passes before it. */
function boardItems(box: Box, view: PageView): DrawItem[] {
  const low = view.to(box);
  const high = view.to({ x: box.x + box.w, y: box.y + box.h });
  const drawn = { x: low.x, y: low.y, w: high.x - low.x, h: high.y - low.y };
  return [rectangle(drawn, { fill: INK.faint, stroke: INK.line, width: WEIGHT.thin })];
}

/** The pivot: a point in a circle, on paper of its own so that it reads over the bed. */
const pivotItems = (at: Point): DrawItem[] => [
  circle(at, PIVOT, { fill: INK.paper, stroke: INK.line, width: WEIGHT.middle }),
  circle(at, PIVOT / 3, { fill: INK.line }),
];

/** A cross in a circle where something touches. */
function contactItems(at: Point): DrawItem[] {
  const arm = CONTACT * 0.55;
  const look = { stroke: INK.accent, width: WEIGHT.middle };
  return [
    circle(at, CONTACT, look),
    line({ x: at.x - arm, y: at.y - arm }, { x: at.x + arm, y: at.y + arm }, look),
    line({ x: at.x - arm, y: at.y + arm }, { x: at.x + arm, y: at.y - arm }, look),
  ];
}

function clearances(packet: Packet, width: Mm): Block[] {
  const { plan, say, told } = packet;
  const terms = packet.terms.swing;
  const { fold } = plan;
  const row = (what: string, least: Mm, at: Deg, by: string) => ({ what, least, at, by });
  const rows = tableOf(
    [
      [terms.what, 4, ({ what }) => what],
      [terms.least, 2.4, ({ least }) => told(least), 'figure'],
      [terms.at, 1.6, ({ at }) => say.angle(at), 'figure'],
      [terms.by, 5, ({ by }) => say.name(by)],
    ],
    [
      row(terms.toFloor, fold.floorClear, fold.at.floor, fold.closest.floor),
      row(terms.toWall, fold.wallClear, fold.at.wall, fold.closest.wall),
      row(terms.toCeiling, fold.ceilingClear, fold.at.ceiling, fold.closest.ceiling),
      ...(fold.wallBoardClear === null || fold.at.wallBoard === null
        ? []
        : [row(terms.board, fold.wallBoardClear, fold.at.wallBoard, fold.closest.wallBoard ?? '')]),
      row(terms.space, fold.floorSpace, fold.at.space, fold.closest.space),
    ],
    width,
    ({ least }) => ({ bold: least < 0 }),
  );
  return withNote(rows, paragraph(terms.angles, width, TEXT.small));
}

function hits(packet: Packet, width: Mm): Block[] {
  const { plan, say, told } = packet;
  const terms = packet.terms.swing;
  const rows = tableOf(
    [
      [terms.part, 5, ({ part }) => say.name(part)],
      [terms.meets, 3, ({ what }) => packet.terms.meets[what]],
      [terms.at, 2, ({ angle }) => say.angle(angle), 'figure'],
      [terms.over, 2.4, ({ over }) => told(over), 'figure'],
    ],
    plan.fold.hits,
    width,
  );
  return rows.length === 0 ? paragraph(terms.none, width) : [heading(terms.hits), ...rows];
}

/** The side view at three angles, and every clearance through the swing. */
export function swing(packet: Packet): Content[] {
  const { body } = packet;
  const shown = angles(packet);
  const model = roomBox(packet);
  const gap = 6;
  const columns = 2;
  const cell = { w: (body.w - gap) / columns, h: body.h * 0.46 };
  const scale = scaleFor(model, { w: cell.w, h: cell.h - 6 }, packet.unit);
  const high = model.h / scale + 8;
  // An odd number of views leaves a corner: the figures stand there, as long as they have room.
  const small = shown.length % columns === 1 ? clearances(packet, cell.w) : [];
  const inCorner = small.length > 0 && small.reduce((sum, { height }) => sum + height, 6) <= high + 4;
  const figures = inCorner ? small : clearances(packet, body.w);
  const rows: Block[] = [];
  for (let i = 0; i < shown.length; i += columns) {
    const last = i + columns >= shown.length;
    rows.push({
      height: high + 4,
      draw: (at) => [
        ...shown.slice(i, i + columns).flatMap(({ angle, words }, k) => {
          const room = { x: at.x + k * (cell.w + gap), y: at.y - high, w: cell.w, h: high };
          return drawView(packet, angle, words, room, scale);
        }),
        ...(inCorner && last ? stacked(figures, { x: at.x + cell.w + gap, y: at.y - 6 }, cell.w) : []),
      ],
    });
  }
  const caution = paragraph(packet.terms.swing.caution, body.w, TEXT.small);
  const words = `${packet.terms.block.scale}: ${scaleWords(scale, packet.unit)}`;
  const blocks = [
    ...held(paragraph(words, body.w)),
    ...rows,
    ...(inCorner ? [] : figures),
    ...hits(packet, body.w),
    space(2),
    ...caution,
  ];
  return [{ title: packet.terms.titles.swing, blocks }];
}
