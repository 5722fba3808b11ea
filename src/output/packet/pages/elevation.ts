import { isBoards, isBought } from '../../../design/made.ts';
import { dimension } from '../../../drawing/dimension.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { hatch } from '../../../drawing/hatch.ts';
import { line, lines, polyline, rectangle, text } from '../../../drawing/items.ts';
import { spreadOut } from '../../../drawing/spread.ts';
import { DASH, DIMENSION, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { textWidth } from '../../../drawing/text.ts';
import { clipPolyline } from '../../../geometry/clip.ts';
import { boxOf, containsPointInRegion, regionOfBox } from '../../../geometry/region.ts';
import type { Box, Region } from '../../../geometry/shape.ts';
import { designPart } from '../../../layout/reference.ts';
import { pick } from '../../../list/at.ts';
import { grouped } from '../../../list/grouped.ts';
import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { labelBox, outlinedFace, solidsInOrder } from '../faceView.ts';
import { heading, space, table } from '../flow.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { flowLeaves } from '../leaves.ts';
import { bodyOf, turned } from '../sheet.ts';
import { type PageView, viewOf } from '../view.ts';

/** Room around the elevation for running marks and overall dimensions. */
const AROUND = { left: 24, right: 15, top: 15, bottom: 22 } as const;
const LABEL: Mm = TEXT.note;
const PITCH: Mm = 3.1;

/** Edges of what lies on the levels themselves, each place once. */
function edges({ plan }: Packet, axis: 'x' | 'y'): Mm[] {
  const size = axis === 'x' ? 'w' : 'h';
  const found = new Set<number>();
  // Of a fill only what is marked: every edge of a herringbone is a thicket.
  const fills = new Set(plan.design.parts.filter(isBoards).map((part) => part.id));
  for (const mark of plan.marks.marks) {
    if (mark.axis === axis && fills.has(designPart(mark.part))) found.add(Math.round(mark.at * 100) / 100);
  }
  for (const solid of plan.joinery.solids) {
    if (isBoards(solid)) continue;
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
    const [place, row] = [pick(places, i), pick(rows, i)];
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

/** Shares of a box at which a name is tried, the middle first. */
const SPOTS = [0.5, 0.3, 0.7, 0.12, 0.88, 0.04, 0.96] as const;

/** Does a small box lie within the region? Looked at on its border and along its middle. */
function within(region: Region, box: Box): boolean {
  const shares = [0, 0.2, 0.4, 0.6, 0.8, 1];
  const [across, up] = box.w > box.h ? [shares, [0, 0.5, 1]] : [[0, 0.5, 1], shares];
  return across.every((u) =>
    up.every((v) => containsPointInRegion(region, { x: box.x + u * box.w, y: box.y + v * box.h })),
  );
}

/** The first place of a name on what is seen of its part, in the largest type that fits, clear of other names. */
export function nameOn(
  region: Region,
  name: string,
  taken: readonly Box[],
): { item: DrawItem; box: Box } | null {
  const whole = labelBox(region);
  if (!whole) return null;
  const turns = whole.h > whole.w ? [90, 0] : [0, 90];
  for (const size of [TEXT.small, TEXT.note]) {
    const width = textWidth(name, { size });
    for (const angle of turns) {
      const [w, h] = angle === 90 ? [size * 1.1, width + 1] : [width + 1, size * 1.1];
      if (w > whole.w || h > whole.h) continue;
      for (const v of SPOTS) {
        for (const u of SPOTS) {
          const box = { x: whole.x + u * (whole.w - w), y: whole.y + v * (whole.h - h), w, h };
          if (taken.some((other) => meets(other, box)) || !within(region, box)) continue;
          const middle = { x: box.x + w / 2, y: box.y + h / 2 };
          const drop = size * 0.36;
          const at = angle === 90 ? { x: middle.x + drop, y: middle.y } : { x: middle.x, y: middle.y - drop };
          return { item: text(at, name, { size, anchor: 'middle', angle }), box };
        }
      }
    }
  }
  return null;
}

/** Names on what is seen of the parts, wherever they fit. */
function names({ plan, say }: Packet, view: PageView): DrawItem[] {
  const seen = grouped(plan.finish.shown, ({ part }) => part);
  // Fittings come without a finish and hide what lies below them.
  const fittings = plan.joinery.solids.filter((s) => isBought(s));
  const fittingBoxes = fittings.flatMap((s) => boxOf(view.region(s.region)) ?? []);
  const keepClear = plan.keepClears.map((k) => onPage(view, k.box));
  const taken: Box[] = [];
  const items: DrawItem[] = [];
  for (const solid of plan.joinery.solids) {
    const others = isBought(solid) ? taken : [...taken, ...fittingBoxes, ...keepClear];
    const visible = (seen.get(solid.part) ?? [solid]).flatMap(({ region }) => view.region(region));
    const placed = nameOn(visible, say.name(solid.part), others);
    if (!placed) continue;
    taken.push(placed.box);
    items.push(placed.item);
  }
  return items;
}

const meets = (a: Box, b: Box) => a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;

function onPage(view: PageView, { x, y, w, h }: Box): Box {
  return { ...view.to({ x, y }), w: w / view.scale, h: h / view.scale };
}

function keepClears({ plan }: Packet, view: PageView): DrawItem[] {
  return plan.keepClears.flatMap((k) => {
    const box = onPage(view, k.box);
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
  const terms = packet.terms.elevation;
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
    text({ x: room.x, y: room.y + room.h + 1 }, terms.section(say.length(y)), { size: TEXT.small }),
  ];
}

function tables(packet: Packet, width: Mm) {
  const terms = packet.terms.elevation;
  const { plan } = packet;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const levels = table(
    [
      { title: terms.level, share: 3 },
      { title: terms.depth, share: 3, figure: true },
      { title: terms.opening, share: 4, figure: true },
      { title: terms.behind, share: 3, figure: true },
    ],
    plan.face.levels.map(({ id, z, inner, behind }) => ({
      cells: [
        packet.terms.level[id],
        packet.say.fromRim(z),
        inner ? `${told(inner.w)} x ${told(inner.h)}` : terms.none,
        told(behind),
      ],
    })),
    width,
  );
  const clears = plan.keepClears.map((k) => ({
    cells: [
      packet.say.name(k.id),
      packet.terms.why[k.why],
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
          heading(terms.keepClears),
          ...table(
            [
              { title: terms.name, share: 4 },
              { title: terms.keepClear, share: 2 },
              { title: terms.place, share: 4, figure: true },
              { title: terms.size, share: 4, figure: true },
              { title: terms.stands, share: 2.5, figure: true },
            ],
            clears,
            width,
          ),
        ];
  return [heading(terms.levels), ...levels, ...kept];
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
    {
      title: packet.terms.titles.elevation,
      landscape,
      scale,
      draw: (room) => drawElevation(packet, room).items,
    },
    ...flowLeaves(packet.terms.elevation.levels, blocks, body),
  ];
}
