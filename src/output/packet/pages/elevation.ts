import { isBought } from '../../../design/made.ts';
import { dimension } from '../../../drawing/dimension.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { diagonalsOf, lines, polyline, rectangle, text } from '../../../drawing/items.ts';
import { DASH, DIMENSION, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { grownBox } from '../../../geometry/box.ts';
import { cropped } from '../../../geometry/clip.ts';
import { pathOfBox } from '../../../geometry/path.ts';
import { boxOf } from '../../../geometry/region.ts';
import type { Box } from '../../../geometry/shape.ts';
import { pick } from '../../../list/at.ts';
import { grouped } from '../../../list/grouped.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Axis, type ChainSide, chain, chainRoom, edgesBySide } from '../chains.ts';
import { outlinedFace } from '../faceView.ts';
import { type Block, heading, space, tableOf } from '../flow.ts';
import type { Content, Leaf, Packet } from '../leaf.ts';
import { nameOn } from '../nameOn.ts';
import { sectionBlocks } from '../sections.ts';
import { roomOn } from '../sheet.ts';
import { onPage, type PageView, viewOf } from '../view.ts';

/** Room around the elevation for chains and overall dimensions, and around a part of it. */
const AROUND = { left: 24, right: 15, top: 15, bottom: 22 } as const;
const AROUND_PART = { left: 22, right: 22, top: 29, bottom: 21 } as const;
/** Parts that a face is drawn in at most, so that its chains have room. */
const MOST_PARTS = 24;

/** Names on what is seen of the parts, wherever they fit. */
function names({ plan, say }: Packet, view: PageView, area: Box): DrawItem[] {
  const seen = grouped(plan.finish.shown, ({ part }) => part);
  // Fittings come without a finish and hide what lies below them.
  const fittings = plan.joinery.solids.filter((s) => isBought(s));
  const fittingBoxes = fittings.flatMap((s) => boxOf(view.region(s.region)) ?? []);
  const keepClear = plan.keepClears.map((k) => onPage(view, k.box));
  const whole = area === plan.face.box;
  const taken: Box[] = [];
  const items: DrawItem[] = [];
  for (const solid of plan.joinery.solids) {
    const others = isBought(solid) ? taken : [...taken, ...fittingBoxes, ...keepClear];
    const visible = (seen.get(solid.part) ?? [solid]).flatMap(({ region }) =>
      view.region(whole ? region : cropped(region, area)),
    );
    const placed = nameOn(visible, say.name(solid.part), others);
    if (!placed) continue;
    taken.push(placed.box);
    items.push(placed.item);
  }
  return items;
}

function keepClears({ plan }: Packet, view: PageView): DrawItem[] {
  return plan.keepClears.flatMap((k) => {
    const box = onPage(view, k.box);
    const cross = lines(diagonalsOf(box), { stroke: INK.line, width: WEIGHT.hair });
    return [rectangle(box, { stroke: INK.line, width: WEIGHT.thin, dash: DASH.hidden }), cross];
  });
}

/** Small circle and cross at the datum corner. */
function datum(view: PageView): DrawItem[] {
  const p = view.to({ x: 0, y: 0 });
  return [
    polyline([p, { x: p.x - 4, y: p.y }, { x: p.x, y: p.y - 4 }], true, { fill: INK.line }),
    text({ x: p.x - 5, y: p.y - 4.6 }, '0', { size: TEXT.note, bold: true, anchor: 'end' }),
  ];
}

/** Overall dimensions, and those of the opening within the frame. */
function overall({ plan, told }: Packet, view: PageView): DrawItem[] {
  const { face } = plan;
  const { box } = view;
  const corner = (x: Mm, y: Mm) => ({ x: box.x + x * box.w, y: box.y + y * box.h });
  const inner = face.levels.find((level) => level.inner !== null)?.inner ?? null;
  const low = inner && view.to({ x: inner.x, y: inner.y });
  const high = inner && view.to({ x: inner.x + inner.w, y: inner.y + inner.h });
  const opening =
    inner && low && high
      ? [
          ...dimension({ x: low.x, y: box.y + box.h }, { x: high.x, y: box.y + box.h }, 4, told(inner.w)),
          ...dimension({ x: box.x + box.w, y: high.y }, { x: box.x + box.w, y: low.y }, 4, told(inner.h)),
        ]
      : [];
  return [
    ...opening,
    ...dimension(corner(0, 1), corner(1, 1), 4 + DIMENSION.row, told(face.width)),
    ...dimension(corner(1, 1), corner(1, 0), 4 + DIMENSION.row, told(face.height)),
  ];
}

/** A stretch of the face on a sheet of its own, with the chains that are told there. */
interface Sheet {
  readonly area: Box;
  readonly landscape: boolean;
  readonly scale: number;
  readonly view: (body: Box) => PageView;
  readonly chains: Readonly<Record<Axis, Readonly<Record<ChainSide, readonly Mm[]>>>>;
  /** Whether all of each chain has room. */
  readonly complete: Readonly<Record<Axis, boolean>>;
}

function sheetOf(packet: Packet, area: Box): Sheet {
  const { plan, unit } = packet;
  const whole = area === plan.face.box;
  const view = (body: Box) => viewOf(area, body, unit, whole ? AROUND : AROUND_PART);
  const on = (landscape: boolean) => ({ landscape, at: view(roomOn(packet.sheet, landscape)) });
  const [a, b] = [on(area.w > area.h), on(area.w <= area.h)];
  const { landscape, at } = b.at.scale < a.at.scale ? b : a;
  const chains = { x: edgesBySide(packet, area, 'x'), y: edgesBySide(packet, area, 'y') };
  const isHeld = ({ near, far }: Sheet['chains'][Axis], length: Mm): boolean => {
    const counts = whole ? [near.length + far.length] : [near.length, far.length];
    return Math.max(...counts) <= chainRoom(length);
  };
  const complete = { x: isHeld(chains.x, at.box.w), y: isHeld(chains.y, at.box.h) };
  return { area, landscape, scale: at.scale, view, chains, complete };
}

const isComplete = ({ complete }: Sheet): boolean => complete.x && complete.y;

/** Equal stretches of the face in rows from the upper left. */
function grid(packet: Packet, columns: number, rows: number): Sheet[] {
  const { w, h } = packet.plan.face.box;
  return Array.from({ length: columns * rows }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const [x, y] = [(column * w) / columns, h - ((row + 1) * h) / rows];
    return sheetOf(packet, { x, y, w: w / columns, h: h / rows });
  });
}

/**
 * The fewest equal stretches of the face whose chains have room, of as many those at the largest scale; none where one
 * sheet holds them. Where no grid of so many has room for all, the last one.
 */
function partsOf(packet: Packet, whole: Sheet): Sheet[] {
  if (isComplete(whole)) return [];
  let last: Sheet[] = [];
  for (let count = 2; count <= MOST_PARTS; count++) {
    const grids = Array.from({ length: count }, (_, i) => i + 1)
      .filter((columns) => count % columns === 0)
      .map((columns) => grid(packet, columns, count / columns))
      .sort((a, b) => pick(a, 0).scale - pick(b, 0).scale);
    const found = grids.find((parts) => parts.every(isComplete));
    if (found) return found;
    last = pick(grids, 0);
  }
  return last;
}

function drawFront(packet: Packet, sheet: Sheet, body: Box): DrawItem[] {
  const { plan, told } = packet;
  const { area, chains, complete } = sheet;
  const view = sheet.view(body);
  const whole = area === plan.face.box;
  const drawn: DrawItem[] = [...outlinedFace(plan, view), ...keepClears(packet, view)];
  const where = packet.terms.elevation.stretch(
    told(area.x),
    told(area.x + area.w),
    told(area.y),
    told(area.y + area.h),
  );
  return [
    ...(whole
      ? drawn
      : [
          { kind: 'group' as const, clip: pathOfBox(grownBox(view.box, WEIGHT.bold)), items: drawn },
          rectangle(view.box, { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.center }),
          text({ x: body.x, y: body.y + body.h - 5 }, where, { size: TEXT.small }),
        ]),
    ...names(packet, view, area),
    ...(area.x === 0 && area.y === 0 ? datum(view) : []),
    ...(['x', 'y'] as const).flatMap((axis) => {
      const { near, far } = chains[axis];
      if (!whole) {
        return [...chain(packet, view, near, axis, 'near'), ...chain(packet, view, far, axis, 'far')];
      }
      const all = [...near, ...far].sort((a, b) => a - b);
      return complete[axis] ? chain(packet, view, all, axis, 'near') : [];
    }),
    ...(whole ? overall(packet, view) : []),
  ];
}

function tables({ plan, say, told, terms }: Packet, width: Mm): Block[] {
  const { elevation: words, level, why } = terms;
  const levels = tableOf(
    [
      [words.level, 3, ({ id }) => level[id]],
      [words.depth, 3, ({ z }) => say.fromRim(z), 'figure'],
      [
        words.opening,
        4,
        ({ inner }) => (inner ? `${told(inner.w)} x ${told(inner.h)}` : words.none),
        'figure',
      ],
      [words.behind, 3, ({ behind }) => told(behind), 'figure'],
    ],
    plan.face.levels,
    width,
  );
  const kept = tableOf(
    [
      [words.name, 4, ({ id }) => say.name(id)],
      [words.keepClear, 2, (one) => why[one.why]],
      [words.place, 4, ({ box }) => `${told(box.x)}, ${told(box.y)}`, 'figure'],
      [words.size, 4, ({ box }) => `${told(box.w)} x ${told(box.h)}`, 'figure'],
      [words.stands, 2.5, ({ height }) => told(height), 'figure'],
    ],
    plan.keepClears,
    width,
  );
  return [
    heading(words.levels),
    ...levels,
    ...(kept.length > 0 ? [space(4), heading(words.keepClears), ...kept] : []),
  ];
}

/**
 * The dimensioned front view; where its edges crowd, stretches of it at a larger scale, on which every edge is told;
 * and the levels in section and in figures.
 */
export function elevation(packet: Packet): Content[] {
  const { terms, body } = packet;
  const whole = sheetOf(packet, packet.plan.face.box);
  const blocks = [...tables(packet, body.w), space(4), ...sectionBlocks(packet, body.w)];
  return [
    ...[whole, ...partsOf(packet, whole)].map(
      (sheet, i, { length }): Leaf => ({
        title: i === 0 ? terms.titles.elevation : terms.elevation.part(i, length - 1),
        landscape: sheet.landscape,
        scale: sheet.scale,
        draw: (room) => drawFront(packet, sheet, room),
      }),
    ),
    { title: terms.elevation.sections, blocks },
  ];
}
