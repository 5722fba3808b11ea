import { placeOfPiece } from '../../../cutting/drawingText.ts';
import type { DrawItem, TextItem } from '../../../drawing/drawing.ts';
import { circle, lines, shape, text } from '../../../drawing/items.ts';
import { spreadOut } from '../../../drawing/spread.ts';
import { DASH, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { textWidth, wrapped } from '../../../drawing/text.ts';
import { grownBox } from '../../../geometry/box.ts';
import { clipPolyline, cropped, intersect } from '../../../geometry/clip.ts';
import { pathOfBox } from '../../../geometry/path.ts';
import { boxOf, centroidOf, containsPointInRegion, nearTo } from '../../../geometry/region.ts';
import type { Box, Point, Region } from '../../../geometry/shape.ts';
import type { Piece } from '../../../joinery/piece.ts';
import { designPart } from '../../../layout/reference.ts';
import { pick } from '../../../list/at.ts';
import { grouped, groupOf } from '../../../list/grouped.ts';
import { keptBy } from '../../../list/keptBy.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Pictured } from '../../../plan/types.ts';
import { hiddenEdges, outlinedFace } from '../faceView.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { centered, spotIn } from '../nameOn.ts';
import { roomOn } from '../sheet.ts';
import { type PageView, viewOf } from '../view.ts';

const SIZE: Mm = TEXT.note;
/** Height of a bubble, and from one to the next where they stand beside the face. */
const HIGH: Mm = 3.6;
const PITCH: Mm = HIGH + 0.8;
/** Room of one column of bubbles beside the face, and for the note above it. */
const COLUMN: Mm = 14;
const NOTE: Mm = 8;

const wide = (label: string): Mm => Math.max(HIGH, textWidth(label, { size: SIZE }) + 2.2);

/** A piece mark in its bubble, leading to where its wood is cut. */
function bubble(label: string, spot: { middle: Point; angle: number }): DrawItem[] {
  const [w, h] = spot.angle === 90 ? [HIGH, wide(label)] : [wide(label), HIGH];
  const box = { x: spot.middle.x - w / 2, y: spot.middle.y - h / 2, w, h };
  const words = centered(spot, label, SIZE) as TextItem;
  return [
    shape(pathOfBox(box), { fill: INK.paper, stroke: INK.line, width: WEIGHT.thin }),
    { ...words, leadsTo: placeOfPiece(label) },
  ];
}

/** A mark that stands beside the face, with where on its piece it points. */
interface Led {
  readonly label: string;
  readonly at: Point;
}

/** What is seen of each piece; all of it where nothing is. */
const seenOf = keptBy(({ finish, joinery }: Pictured): { piece: Piece; seen: Region }[] => {
  const shown = grouped(finish.shown, ({ part }) => part);
  return joinery.pieces.map((piece) => {
    const box = boxOf(piece.placed);
    const near = groupOf(shown, piece.part).flatMap(({ region }) => (box ? nearTo(region, [box]) : []));
    const seen = intersect(piece.placed, near);
    return { piece, seen: seen.length > 0 ? seen : piece.placed };
  });
});

/** A point of the region, its middle where that lies in it. */
function pointIn(region: Region): Point {
  const middle = centroidOf(region);
  if (containsPointInRegion(region, middle)) return middle;
  const { x, w } = boxOf(region) ?? { x: middle.x, w: 0 };
  const across = [
    { x: x - 1, y: middle.y },
    { x: x + w + 1, y: middle.y },
  ];
  const [first] = clipPolyline(across, region);
  const [from, to] = [first?.at(0) ?? middle, first?.at(-1) ?? middle];
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

/** Marks on the pieces that have room for them; of the others one for each mark of each part of the design. */
function marksOn({ plan }: Packet, view: PageView, area: Box): { items: DrawItem[]; led: Led[] } {
  const taken: Box[] = [];
  const items: DrawItem[] = [];
  const led = new Map<string, Led>();
  const whole = area === plan.face.box;
  for (const { piece, seen } of seenOf(plan)) {
    const { label } = piece;
    const region = view.region(whole ? seen : cropped(seen, area));
    const spot = spotIn(region, { w: wide(label), h: HIGH }, taken);
    const key = `${designPart(piece.part)}|${label}`;
    if (spot) {
      taken.push(spot.box);
      items.push(...bubble(label, spot));
    } else if (region.length > 0 && !led.has(key)) led.set(key, { label, at: pointIn(region) });
  }
  return { items, led: [...led.values()] };
}

/** Bubbles in columns left and right of the face, each beside what it points to as nearly as its neighbors let it. */
function leaders(led: readonly Led[], { box }: PageView): DrawItem[] {
  const middle = box.x + box.w / 2;
  const most = Math.max(1, Math.floor(box.h / PITCH) + 1);
  return [-1, 1].flatMap((out) => {
    const own = led
      .filter(({ at }) => (out < 0 ? at.x < middle : at.x >= middle))
      .sort((a, b) => a.at.y - b.at.y || out * (b.at.x - a.at.x));
    const columns = Math.max(1, Math.ceil(own.length / most));
    return Array.from({ length: columns }, (_, column) => {
      const mine = own.filter((_, i) => i % columns === column);
      const edge = (out < 0 ? box.x : box.x + box.w) + out * (4 + column * COLUMN);
      const rows = spreadOut(
        mine.map(({ at }) => at.y),
        PITCH,
        box.y,
        box.y + box.h,
      );
      return mine.flatMap(({ label, at }, i): DrawItem[] => {
        const foot = { x: edge, y: pick(rows, i) };
        const spot = { middle: { x: foot.x + (out * wide(label)) / 2, y: foot.y }, angle: 0 };
        const look = { stroke: INK.soft, width: WEIGHT.thin };
        return [lines([[at, foot]], look), circle(at, 0.4, { fill: INK.line }), ...bubble(label, spot)];
      });
    }).flat();
  });
}

/** Edges that lie under other parts, dashed. */
function hidden({ plan }: Packet, view: PageView): DrawItem[] {
  const segments = hiddenEdges(plan).flatMap((edge) =>
    edge.lines.flatMap((points) => {
      const placed = points.map(view.to);
      return placed.slice(1).map((p, i): [Point, Point] => [pick(placed, i), p]);
    }),
  );
  return [lines(segments, { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.hidden })];
}

/** A stretch of the face on a page of its own, with as many columns of bubbles beside it as it needs. */
interface Stretch {
  readonly area: Box;
  readonly landscape: boolean;
  readonly view: PageView;
  readonly marks: ReturnType<typeof marksOn>;
  /** Whether its bubbles have room beside it. */
  readonly fits: boolean;
}

/** Columns of bubbles on either side, at most. */
const MOST_COLUMNS = 4;
/** Parts that a face is shown in, at most. */
const MOST_PARTS = 12;

/** As many columns, up to the most, as the marks need that have no room on their pieces. */
function stretchOf(packet: Packet, area: Box, columns = 1): Stretch {
  const landscape = area.w > area.h;
  const side = columns * COLUMN + 4;
  const around = { left: side, right: side, top: NOTE, bottom: 2 };
  const view = viewOf(area, roomOn(packet.sheet, landscape), packet.unit, around);
  const marks = marksOn(packet, view, area);
  const { length } = marks.led;
  const middle = view.box.x + view.box.w / 2;
  const left = marks.led.filter(({ at }) => at.x < middle).length;
  const fits = Math.max(left, length - left) <= columns * (Math.floor(view.box.h / PITCH) + 1);
  return fits || columns === MOST_COLUMNS
    ? { area, landscape, view, marks, fits }
    : stretchOf(packet, area, columns + 1);
}

/** The whole face, or the fewest parts of it on which all marks have room. */
function stretchesOf(packet: Packet): Stretch[] {
  const { box } = packet.plan.face;
  let last = [stretchOf(packet, box)];
  for (let count = 2; count <= MOST_PARTS && !last.every(({ fits }) => fits); count++) {
    // Parts as near to squares as they come.
    const columns = Array.from({ length: count }, (_, i) => i + 1)
      .filter((n) => count % n === 0)
      .reduce((best, n) => (longer(box, n, count / n) < longer(box, best, count / best) ? n : best));
    const [w, h] = [box.w / columns, box.h / (count / columns)];
    last = Array.from({ length: count }, (_, i) =>
      stretchOf(packet, {
        x: box.x + (i % columns) * w,
        y: box.y + box.h - (Math.floor(i / columns) + 1) * h,
        w,
        h,
      }),
    );
  }
  return last;
}

/** How much longer one side of a part is than the other. */
const longer = ({ w, h }: Box, columns: number, rows: number): number =>
  Math.abs(Math.log(w / columns / (h / rows)));

/** Which piece goes where: every piece by its mark, with what lies hidden under others. */
export function pieceMarks(packet: Packet): Leaf[] {
  const { plan, terms } = packet;
  return stretchesOf(packet).map(({ landscape, view, marks: { items, led } }, i, { length }): Leaf => {
    const part = length === 1 ? '' : `${terms.block.pageOf(i + 1, length)}. `;
    return {
      title: terms.titles.pieceMarks,
      landscape,
      scale: view.scale,
      draw: (body) => [
        ...wrapped(`${part}${terms.pieceMarks}`, { size: TEXT.small }, body.w).map((row, k) =>
          text({ x: body.x, y: body.y + body.h - 4 - k * 4 }, row, { size: TEXT.small }),
        ),
        {
          kind: 'group' as const,
          clip: pathOfBox(grownBox(view.box, WEIGHT.bold)),
          items: [...outlinedFace(plan, view), ...hidden(packet, view)],
        },
        ...leaders(led, view),
        ...items,
      ],
    };
  });
}
