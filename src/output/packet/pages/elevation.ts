import { dimension } from '../../../drawing/dimension.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { hatch } from '../../../drawing/hatch.ts';
import { line, lines, polyline, rectangle, text } from '../../../drawing/items.ts';
import { spreadOut } from '../../../drawing/spread.ts';
import { DASH, DIMENSION, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { fittedSize, textWidth } from '../../../drawing/text.ts';
import { clipPolyline } from '../../../geometry/clip.ts';
import { boxOf, regionOfBox } from '../../../geometry/region.ts';
import type { Box, Region } from '../../../geometry/shape.ts';
import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { labelBox, outlinedFace, solidsInOrder } from '../faceView.ts';
import { fillPages, heading, space, table } from '../flow.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { bodyOf, turned } from '../sheet.ts';
import { type PageView, viewOf } from '../view.ts';
import { WORDS } from '../words.ts';

const W = WORDS.elevation;
/** Room around the elevation for running marks and overall dimensions. */
const AROUND = { left: 24, right: 15, top: 15, bottom: 22 } as const;
const LABEL: Mm = TEXT.note;
const PITCH: Mm = 2.8;

/** Edges of what lies on the levels themselves, each place once. */
function edges({ plan }: Packet, axis: 'x' | 'y'): Mm[] {
  const size = axis === 'x' ? 'w' : 'h';
  const found = new Set<number>();
  for (const solid of plan.joinery.solids) {
    const box = boxOf(solid.region);
    if (!box) continue;
    for (const at of [box[axis], box[axis] + box[size]]) found.add(Math.round(at * 100) / 100);
  }
  return [...found].sort((a, b) => a - b);
}

/**
 * Running marks along one side: the distance of every edge from the datum, beside a short line to its place.
 * Where edges crowd, as many as there is room for are told; the marks table holds all of them.
 */
function running(packet: Packet, view: PageView, axis: 'x' | 'y'): DrawItem[] {
  const { box } = view;
  const size = axis === 'x' ? box.w : box.h;
  const most = Math.floor((size + 6) / PITCH);
  const all = edges(packet, axis);
  const step = Math.max(1, Math.ceil(all.length / most));
  const told = all.filter((_, i) => i % step === 0 || i === all.length - 1);
  const on = (at: Mm) => (axis === 'x' ? view.to({ x: at, y: 0 }).x : view.to({ x: 0, y: at }).y);
  const places = told.map(on);
  const low = axis === 'x' ? box.x : box.y;
  const rows = spreadOut(places, PITCH, low - 3, low + size + 3);
  const look = { stroke: INK.soft, width: WEIGHT.hair };
  return told.flatMap((at, i): DrawItem[] => {
    const [place, row] = [places[i] ?? 0, rows[i] ?? 0];
    const words = formatReading(at, packet.measure);
    if (axis === 'x') {
      const y = box.y - 1;
      return [
        polyline(
          [
            { x: place, y },
            { x: place, y: y - 2 },
            { x: row, y: y - 5 },
            { x: row, y: y - 6 },
          ],
          false,
          look,
        ),
        text({ x: row + LABEL * 0.36, y: y - 6.8 }, words, { size: LABEL, angle: 90, anchor: 'end' }),
      ];
    }
    const x = box.x - 1;
    return [
      polyline(
        [
          { x, y: place },
          { x: x - 2, y: place },
          { x: x - 5, y: row },
          { x: x - 6, y: row },
        ],
        false,
        look,
      ),
      text({ x: x - 6.8, y: row - LABEL * 0.36 }, words, { size: LABEL, anchor: 'end' }),
    ];
  });
}

/** Names on the parts where they fit, so that nothing overlaps: larger parts first. */
function names({ plan, say }: Packet, view: PageView): DrawItem[] {
  const taken: Box[] = [];
  const items: DrawItem[] = [];
  const solids = [...solidsInOrder(plan)].reverse();
  const covered: Region[] = [];
  for (const solid of solids) {
    const box = labelBox(view.region(solid.region));
    if (!box) continue;
    const name = say.name(solid.part);
    const upright = box.h > box.w;
    const [long, deep] = upright ? [box.h, box.w] : [box.w, box.h];
    const size = fittedSize(name, { size: Math.min(TEXT.small, deep * 0.75) }, long - 2);
    if (size < 1.5) continue;
    const width = textWidth(name, { size });
    const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
    const own: Box = upright
      ? { x: middle.x - size * 0.5, y: middle.y - width / 2, w: size, h: width }
      : { x: middle.x - width / 2, y: middle.y - size * 0.5, w: width, h: size };
    const onTop = covered.some((region) => {
      const b = boxOf(region);
      return b !== null && meets(b, own);
    });
    covered.push(view.region(solid.region));
    if (onTop || taken.some((b) => meets(b, own))) continue;
    taken.push(own);
    const at = upright
      ? { x: middle.x + size * 0.36, y: middle.y }
      : { x: middle.x, y: middle.y - size * 0.36 };
    items.push(text(at, name, { size, anchor: 'middle', angle: upright ? 90 : 0 }));
  }
  return items;
}

const meets = (a: Box, b: Box) => a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

function keepClears({ plan }: Packet, view: PageView): DrawItem[] {
  return plan.design.keepClears.flatMap((k) => {
    const low = view.to({ x: k.box.x, y: k.box.y });
    const box = { x: low.x, y: low.y, w: k.box.w / view.scale, h: k.box.h / view.scale };
    const cross = lines(
      [
        [
          { x: box.x, y: box.y },
          { x: box.x + box.w, y: box.y + box.h },
        ],
        [
          { x: box.x, y: box.y + box.h },
          { x: box.x + box.w, y: box.y },
        ],
      ],
      { stroke: INK.line, width: WEIGHT.hair },
    );
    return [rectangle(box, { stroke: INK.line, width: WEIGHT.thin, dash: DASH.hidden }), cross];
  });
}

/** Small circle and cross at the datum corner. */
function datum(view: PageView): DrawItem[] {
  const p = view.to({ x: 0, y: 0 });
  return [
    polyline([p, { x: p.x - 4, y: p.y }, { x: p.x, y: p.y - 4 }], true, { fill: INK.line }),
    text({ x: p.x - 5, y: p.y - 4.6 }, '0', { size: LABEL, bold: true, anchor: 'end' }),
  ];
}

function drawElevation(packet: Packet, body: Box): { items: DrawItem[]; scale: number } {
  const { face } = packet.plan;
  const view = viewOf(face.box, body, AROUND);
  const { box } = view;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
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
  const items = [
    ...outlinedFace(packet.plan, view),
    ...keepClears(packet, view),
    ...names(packet, view),
    ...datum(view),
    ...running(packet, view, 'x'),
    ...running(packet, view, 'y'),
    ...opening,
    ...dimension(corner(0, 1), corner(1, 1), 4 + DIMENSION.row, told(face.width)),
    ...dimension(corner(1, 1), corner(1, 0), 4 + DIMENSION.row, told(face.height)),
  ];
  return { items, scale: view.scale };
}

/** Height of the cut through the face: the middle of the tallest part that is not on the rim. */
function sectionHeight({ plan }: Packet): Mm {
  return plan.face.height / 2;
}

/** Levels and parts cut across, from the wood behind up to the highest part. */
function section(packet: Packet, room: Box): DrawItem[] {
  const { plan, say } = packet;
  const { face } = plan;
  const y = sectionHeight(packet);
  const across = [
    { x: -1, y },
    { x: face.width + 1, y },
  ];
  const spans = (region: Region) =>
    clipPolyline(across, region).flatMap((part) => {
      const [from, to] = [part[0], part[part.length - 1]];
      return from && to ? [{ from: from.x, to: to.x }] : [];
    });
  const k = room.w / face.width;
  const top = Math.max(0, ...plan.joinery.solids.map((s) => s.z1));
  const x = (at: Mm) => room.x + at * k;
  const base = room.y + room.h - 3 - top * k;
  const block = (from: Mm, to: Mm, z0: Mm, z1: Mm): Box => ({
    x: x(from),
    y: base + z0 * k,
    w: (to - from) * k,
    h: (z1 - z0) * k,
  });
  const items: DrawItem[] = [];
  for (const level of face.levels) {
    for (const { from, to } of spans(level.region)) {
      const box = block(from, to, level.z - level.behind, level.z);
      items.push(
        rectangle(box, { stroke: INK.line, width: WEIGHT.fine, fill: INK.tint }),
        ...hatch(regionOfBox(box), { angle: 45, pitch: 1.6 }),
      );
    }
  }
  for (const solid of solidsInOrder(plan)) {
    if (solid.z1 <= solid.z0) continue;
    for (const { from, to } of spans(solid.region)) {
      items.push(
        rectangle(block(from, to, solid.z0, solid.z1), {
          stroke: INK.line,
          width: WEIGHT.middle,
          fill: INK.paper,
        }),
      );
    }
  }
  const rim = line(
    { x: room.x - 4, y: base },
    { x: room.x + room.w + 4, y: base },
    {
      stroke: INK.soft,
      width: WEIGHT.hair,
      dash: DASH.center,
    },
  );
  return [
    ...items,
    rim,
    text({ x: room.x, y: room.y + room.h + 1 }, W.section(say.length(y)), { size: TEXT.small }),
  ];
}

function tables(packet: Packet, width: Mm) {
  const { plan } = packet;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const levels = table(
    [
      { title: W.level, share: 3 },
      { title: W.depth, share: 3, figure: true },
      { title: W.opening, share: 4, figure: true },
      { title: W.behind, share: 3, figure: true },
    ],
    plan.face.levels.map(({ id, z, inner, behind }) => ({
      cells: [WORDS.level[id], told(z), inner ? `${told(inner.w)} x ${told(inner.h)}` : W.none, told(behind)],
    })),
    width,
  );
  const clears = plan.design.keepClears.map((k) => ({
    cells: [
      k.name === '' ? k.id : k.name,
      WORDS.why[k.why],
      `${told(k.box.x)}, ${told(k.box.y)}`,
      `${told(k.box.w)} x ${told(k.box.h)}`,
      told(k.height),
    ],
  }));
  const kept =
    clears.length === 0
      ? []
      : [
          space(4),
          heading(W.keepClears),
          ...table(
            [
              { title: W.name, share: 4 },
              { title: W.keepClear, share: 2 },
              { title: W.place, share: 4, figure: true },
              { title: W.size, share: 4, figure: true },
              { title: W.stands, share: 2.5, figure: true },
            ],
            clears,
            width,
          ),
        ];
  return [heading(W.levels), ...levels, ...kept];
}

/** Depth of the section's drawing on paper, with its title. */
function sectionRoom({ plan }: Packet, width: Mm): Mm {
  const top = Math.max(0, ...plan.joinery.solids.map((s) => s.z1));
  const low = Math.min(...plan.face.levels.map((level) => level.z - level.behind));
  return ((top - low) * width) / plan.face.width + 12;
}

/** The dimensioned front view, and the levels in section and in figures. */
export function elevation(packet: Packet): Leaf[] {
  const { face } = packet.plan;
  const landscape = face.width > face.height;
  const front = bodyOf(landscape ? turned(packet.sheet) : packet.sheet);
  const { scale } = drawElevation(packet, front);
  const body = bodyOf(packet.sheet);
  const deep = sectionRoom(packet, body.w);
  const blocks = [
    {
      height: deep,
      draw: (at: { x: Mm; y: Mm }, w: Mm) => section(packet, { x: at.x, y: at.y - deep, w, h: deep - 6 }),
    },
    space(4),
    ...tables(packet, body.w),
  ];
  return [
    { title: WORDS.titles.elevation, landscape, scale, draw: (room) => drawElevation(packet, room).items },
    ...fillPages(blocks, body).map((draw) => ({
      title: WORDS.elevation.levels,
      landscape: false,
      scale: null,
      draw,
    })),
  ];
}
