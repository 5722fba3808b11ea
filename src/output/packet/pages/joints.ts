import type { DrawItem } from '../../../drawing/drawing.ts';
import { hatch } from '../../../drawing/hatch.ts';
import { polyline, rectangle, shape, text } from '../../../drawing/items.ts';
import { scaleFor, scaleWords } from '../../../drawing/scaleBar.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { textWidth, wrapped } from '../../../drawing/text.ts';
import { clipPolyline, intersect, offset } from '../../../geometry/clip.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { add, scale, subtract, unit } from '../../../geometry/point.ts';
import {
  boxOf,
  centroidOf,
  containsPointInRegion,
  regionOfBox,
  ringsOf,
  transformRegion,
} from '../../../geometry/region.ts';
import { distanceToSegment } from '../../../geometry/segment.ts';
import type { Box, Point, Region } from '../../../geometry/shape.ts';
import { compareLabels } from '../../../joinery/label.ts';
import type { JointFound, Notch, Piece } from '../../../joinery/piece.ts';
import { cyclic, pick } from '../../../list/at.ts';
import { grouped, groupOf } from '../../../list/grouped.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, paragraph, space } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { centered, spotIn } from '../nameOn.ts';
import { endWords, notchWords } from '../pieceWords.ts';
import { viewAt } from '../view.ts';

/** Room of a detail: two to a row, each with two drawings side by side over its words. */
const GAP: Mm = 6;
const TALL: Mm = 40;
const LEAD: Mm = 4.4;
/** Share of the window that pieces are drawn apart by. */
const APART = 0.15;

/** Pieces no farther apart touch. */
const TOUCH: Mm = 0.5;

/** Two pieces that meet, the one that runs through first where one does. */
interface Meeting {
  readonly joint: JointFound;
  readonly pieces: readonly [Piece, Piece];
}

function farFrom(p: Point, region: Region): Mm {
  if (containsPointInRegion(region, p)) return 0;
  const sides = ringsOf(region).flatMap((ring) =>
    ring.map((a, i) => distanceToSegment(p, a, cyclic(ring, i + 1))),
  );
  return Math.min(...sides);
}

/** The pieces of both parts that lie nearest to where they meet. */
function meetingsOf({ plan: { joinery } }: Packet): Meeting[] {
  const own = grouped(joinery.pieces, ({ part }) => part);
  return joinery.joints.flatMap((joint): Meeting[] => {
    const [a, b] = joint.parts;
    const near = (part: string, but?: Piece) =>
      groupOf(own, part)
        .filter((piece) => piece !== but)
        .map((piece) => ({ piece, far: farFrom(joint.at, piece.placed) }))
        .reduce<{ piece: Piece; far: Mm } | null>(
          (best, one) => (best && best.far <= one.far ? best : one),
          null,
        );
    const first = near(a)?.piece;
    const second = first && near(b, first)?.piece;
    if (!first || !second) return [];
    // Of a frame's own corners only the pieces tell which of two ends there.
    const ends = (piece: Piece) => piece.ends.some(({ cut, with: met }) => cut === 'butt' && met === a);
    const turned = a === b ? joint.kind === 'butt' && ends(first) : joint.through === b;
    return [{ joint, pieces: turned ? [second, first] : [first, second] }];
  });
}

/** How a piece is cut for what it meets; both its ends where both meet that part and differ. */
function cutsFor(packet: Packet, { ends }: Piece, other: Piece): string[] {
  const meeting = ends.filter((end) => end.with === other.part);
  return [...new Set((meeting.length > 0 ? meeting : ends).map((end) => endWords(packet, end)))];
}

/** Both sides of a miter are cut alike; of a frame with several angles only those that both have come in question. */
function miterWords(packet: Packet, [a, b]: Meeting['pieces']): string {
  const [own, others] = [cutsFor(packet, a, b), cutsFor(packet, b, a)];
  const shared = own.filter((cut) => others.includes(cut));
  return (shared.length > 0 ? shared : [...new Set([...own, ...others])]).join(' / ');
}

/** Notches of a piece where another crosses it. */
const lapped = ({ notches }: Piece): Notch | undefined => notches.find(({ side }) => side !== 'groove');

/** What is cut to make it. */
function made(packet: Packet, { joint: { kind }, pieces }: Meeting): string {
  const { joints } = packet.terms;
  const [a, b] = pieces;
  if (kind === 'miter') return joints.both(miterWords(packet, pieces));
  if (kind === 'cope') return joints.cope(a.label, b.label);
  if (kind === 'butt') return joints.through(a.label, b.label, cutsFor(packet, b, a).join(' / '));
  return pieces
    .flatMap((piece) => {
      const notch = lapped(piece);
      return notch ? [`${piece.label}: ${notchWords(packet, notch)}`] : [];
    })
    .join('; ');
}

/** What tells one kind of joint from another: how it is made, whichever pieces it joins. */
function kindOf(packet: Packet, meeting: Meeting): string {
  const { joint, pieces } = meeting;
  const told = made(packet, meeting);
  const [a, b] = pieces;
  return `${joint.kind}|${told.replaceAll(a.label, '').replaceAll(b.label, '')}`;
}

/** A drawing of a detail: which of the two pieces it shows, and how far from the joint it is moved. */
interface Pose {
  readonly shown: readonly (0 | 1)[];
  readonly apart: number;
}

/** As it lies and drawn apart; pieces that lap each other one by one, each with what is sawn out of it. */
const posesOf = ({ joint }: Meeting): readonly Pose[] =>
  joint.kind === 'half-lap'
    ? [
        { shown: [0, 1], apart: 0 },
        { shown: [0], apart: 0 },
        { shown: [1], apart: 0 },
      ]
    : [
        { shown: [0, 1], apart: 0 },
        { shown: [0, 1], apart: APART },
      ];

/** The middle of where two pieces touch, near where their parts meet. */
function middleOf({ at }: JointFound, pieces: Meeting['pieces']): Point {
  const reach = 2 * Math.max(...pieces.map(({ width }) => width));
  const around = regionOfBox({ x: at.x - reach, y: at.y - reach, w: 2 * reach, h: 2 * reach });
  const [a, b] = pieces.map(({ placed }) => offset(intersect(placed, around), TOUCH, 'miter')) as [
    Region,
    Region,
  ];
  const box = boxOf(intersect(a, b));
  return box ? { x: box.x + box.w / 2, y: box.y + box.h / 2 } : at;
}

/** A piece with what another hides of it: gaps up to this wide are closed. */
const wholeOf = (region: Region, gap: Mm): Region =>
  offset(offset(region, gap / 2, 'miter'), -gap / 2, 'miter');

function drawn(
  { joint, pieces }: Meeting,
  { shown, apart }: Pose,
  room: Box,
  side: Mm,
  k: number,
): DrawItem[] {
  const middle = middleOf(joint, pieces);
  const box = { x: middle.x - side / 2, y: middle.y - side / 2, w: side, h: side };
  const window = regionOfBox(box);
  const view = viewAt(box, room, k);
  const regions = pieces.map(({ placed }) => intersect(placed, window)) as [Region, Region];
  const [a, b] = regions;
  const way = unit(subtract(centroidOf(b), centroidOf(a)));
  const lap = shown.length === 1 ? intersect(wholeOf(a, side), wholeOf(b, side)) : [];
  return shown.flatMap((i): DrawItem[] => {
    const piece = pieces[i];
    const by = scale(way, (i === 0 ? -1 : 1) * apart * side);
    const to = (p: Point) => view.to(add(p, by));
    const region = transformRegion(regions[i], to);
    // Only the piece's own edges are drawn, not where the window ends it.
    const edges = ringsOf(piece.placed).flatMap((ring) =>
      clipPolyline([...ring, pick(ring, 0)], window).map((points) => points.map(to)),
    );
    const size = TEXT.small;
    const spot = spotIn(region, { w: textWidth(piece.label, { size }) + 1, h: size * 1.1 }, []);
    return [
      shape(pathOfRegion(region), { fill: INK.tint, fillRule: 'evenodd' }),
      ...(shown.length === 1 ? hatch(transformRegion(lap, to), { angle: 45, pitch: 1.4 }) : []),
      ...edges.map((points) => polyline(points, false, { stroke: INK.line, width: WEIGHT.middle })),
      ...(spot ? [centered(spot, piece.label, size)] : []),
    ];
  });
}

function detail(packet: Packet, all: readonly Meeting[], width: Mm) {
  const meeting = pick(all, 0);
  const { joint, pieces } = meeting;
  const poses = posesOf(meeting);
  const own = width / poses.length;
  const wide = Math.max(...pieces.map((piece) => piece.width));
  const side = Math.min(own - 2, TALL) * (poses.length > 2 ? 1 : 1 - 2 * APART);
  const k = scaleFor({ w: 1.5 * wide, h: 1.5 * wide }, { w: side, h: side }, packet.unit);
  const title = `${packet.terms.joints.kind[joint.kind]} (${scaleWords(k, packet.unit)})`;
  const hasThrough = joint.kind === 'butt' || joint.kind === 'cope';
  const pairs = all.map((one) => {
    const labels = one.pieces.map(({ label }) => label);
    return (hasThrough ? labels : labels.sort(compareLabels)).join(' + ');
  });
  const rows = [
    made(packet, meeting),
    packet.terms.joints[hasThrough ? 'pairsThrough' : 'pairs']([...new Set(pairs)].join(', ')),
  ].flatMap((told) => wrapped(told, { size: TEXT.small }, width - 4));
  const height = 7 + TALL + 3 + rows.length * LEAD + 2;
  const draw = (x: Mm, top: Mm, high: Mm): DrawItem[] => {
    const y = top - 7 - TALL;
    return [
      rectangle({ x, y: top - high, w: width, h: high }, { stroke: INK.faint, width: WEIGHT.thin }),
      text({ x: x + 2, y: top - 4.6 }, title, { size: TEXT.small, bold: true }),
      ...poses.flatMap((pose, i) =>
        drawn(meeting, pose, { x: x + i * own, y, w: own, h: TALL }, side * k, k),
      ),
      ...rows.map((row, i) => text({ x: x + 2, y: y - 4.4 - i * LEAD }, row, { size: TEXT.small })),
    ];
  };
  return { height, draw };
}

/** Every kind of joint once, at a larger scale: its pieces as they lie and drawn apart, and what is cut to make it. */
export function joints(packet: Packet): Content[] {
  const { terms, body } = packet;
  const { w } = body;
  const kinds = [...grouped(meetingsOf(packet), (one) => kindOf(packet, one)).values()];
  if (kinds.length === 0) return [];
  const width = (w - GAP) / 2;
  const details = kinds.map((all) => detail(packet, all, width));
  const rows = Array.from({ length: Math.ceil(details.length / 2) }, (_, i): Block => {
    const row = details.slice(2 * i, 2 * i + 2);
    const high = Math.max(...row.map(({ height }) => height));
    return {
      height: high + 4,
      draw: (at) => row.flatMap(({ draw }, k) => draw(at.x + k * (width + GAP), at.y, high)),
    };
  });
  return [{ title: terms.titles.joints, blocks: [...paragraph(terms.joints.lead, w), space(2), ...rows] }];
}
