import { depthsOf } from '../../bed/depths.ts';
import { armOf, LOWERED, roomPoint, STOWED, swungBy } from '../../bed/swing.ts';
import type { Color, DrawItem, Drawing } from '../../drawing/drawing.ts';
import { moved, rectangle, shape, text } from '../../drawing/items.ts';
import { INK } from '../../drawing/style.ts';
import { dimmed } from '../../finish/lit/lambert.ts';
import { pathOfBox, pathOfRings } from '../../geometry/path.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import type { Deg, Mm } from '../../measure/units.ts';
import type { Pictured } from '../../plan/types.ts';
import { PACKET_WORDS } from '../packet/words/words.ts';
import { litFace } from '../picture/litFace.ts';
import { type Eye, itemsThrough, type Place, seenFrom } from './eye.ts';
import { drawnPerson, PEOPLE, type Person } from './people.ts';
import { type Block, drawnBlock, uprightBlock } from './solidBox.ts';

/** Height of the eye of a grown person who stands (from memory). */
const EYE_HEIGHT: Mm = 1570;
/** From the wall to the eye at the least, and from the farthest point of the swing to it. */
const EYE_FROM_WALL: Mm = 6000;
const EYE_FROM_BED: Mm = 4500;
/** Boards of the case, 3/4 in, and the room between them and the bed. Common practice, no source. */
const CASE: Mm = 19;
const PLAY: Mm = 13;
/** Between people and what is beside them, and how far from the wall they are. */
const APART: Mm = 240;
const OUT: Mm = 350;
/** Floor before the lowered bed. */
const BEFORE: Mm = 250;

const WALL: Color = '#e9e6dc';
const BOARDS: Color = '#c9a774';
const WOOD: Color = '#d8bd8a';
const CLOTH: Color = '#f1efe8';
const CASE_WOOD: Color = '#cfc8b8';

const ANGLES: readonly { readonly id: 'stowed' | 'half' | 'lowered'; readonly angle: Deg }[] = [
  { id: 'stowed', angle: STOWED },
  { id: 'half', angle: 45 },
  { id: 'lowered', angle: LOWERED },
];

/**
 * The bed in a room of its own measures, stowed, half way and lowered, as someone sees it who stands before it: wall,
 * floor and ceiling, a plain case around the bed, and a child, a grown person and one in a wheelchair for scale. What lies
 * on the wall is in scale; nothing of the case is planned.
 */
export function roomDrawing(plan: Pictured): Drawing {
  const { design, face, language } = plan;
  const words = PACKET_WORDS[language].room;
  // As much room on both sides: who looks stands before the middle of the bed.
  const beside = Math.max(...(['left', 'right'] as const).map((side) => roomFor(side)));
  const wall = { x: -beside, y: 0, w: face.width + 2 * beside, h: design.bed.ceiling };
  const eye: Eye = {
    x: wall.x + wall.w / 2,
    y: EYE_HEIGHT,
    out: Math.max(EYE_FROM_WALL, plan.fold.floorSpace + EYE_FROM_BED),
  };
  const before = plan.fold.floorSpace + BEFORE;
  const foot = seenFrom(eye)({ x: 0, y: 0, out: before }).y;
  const panel = { x: wall.x, y: foot, w: wall.w, h: wall.h - foot };
  const gap = 150;
  const label = 90;
  const items = ANGLES.map(({ id, angle }, i) =>
    moved({ x: i * (panel.w + gap) - panel.x, y: label * 2 - panel.y }, [
      { kind: 'group', clip: pathOfBox(panel), items: roomAt(plan, eye, wall, before, angle) },
      rectangle(panel, { stroke: INK.line, width: 4 }),
      text({ x: panel.x, y: panel.y - label * 1.4 }, words[id], { size: label, bold: true }),
    ]),
  );
  return {
    width: ANGLES.length * (panel.w + gap) - gap,
    height: panel.h + label * 2,
    title: design.name,
    items,
  };
}

function roomAt(plan: Pictured, eye: Eye, wall: Box, before: Mm, angle: Deg): DrawItem[] {
  const { bed } = plan.design;
  const see = seenFrom(eye);
  const right = wall.x + wall.w;
  const floor = [
    { x: wall.x, y: 0, out: 0 },
    { x: right, y: 0, out: 0 },
    { x: right + wall.w, y: 0, out: before },
    { x: wall.x - wall.w, y: 0, out: before },
  ];
  return [
    rectangle(wall, { fill: WALL }),
    shape(pathOfRings([floor.map(see)]), { fill: BOARDS, stroke: dimmed(BOARDS, 0.5), width: 4 }),
    ...caseItems(plan, eye),
    ...peopleItems(plan, eye),
    ...bedItems(plan, eye, angle),
    shape(pathOfBox({ ...wall, y: bed.ceiling - 10, h: 10 }), { fill: dimmed(WALL, 0.6) }),
  ];
}

/** Two sides and a top around the stowed bed, and its back in their shade. */
function caseItems({ design: { bed }, face }: Pictured, eye: Eye): DrawItem[] {
  const low = roomPoint(bed, 0, 0, STOWED);
  const high = roomPoint(bed, face.height, 0, STOWED).y + PLAY;
  const depth = low.x;
  const [left, right] = [-PLAY - CASE, face.width + PLAY];
  const board = (from: Place, to: Place) => drawnBlock(uprightBlock(from, to, CASE_WOOD), eye);
  const back = uprightBlock(
    { x: left, y: 0, out: 0 },
    { x: right, y: high, out: 1 },
    dimmed(CASE_WOOD, 0.45),
  );
  return [
    ...drawnBlock(back, eye),
    ...board({ x: left, y: 0, out: 0 }, { x: left + CASE, y: high, out: depth }),
    ...board({ x: right, y: 0, out: 0 }, { x: right + CASE, y: high, out: depth }),
    ...board({ x: left, y: high, out: 0 }, { x: right + CASE, y: high + CASE, out: depth }),
  ];
}

function bedItems(plan: Pictured, eye: Eye, angle: Deg): DrawItem[] {
  const { design, face } = plan;
  const { bed } = design;
  const z = depthsOf(bed);
  const swung = swungBy(bed, angle);
  const at = (x: Mm, y: Mm, depth: Mm): Place => {
    const p = swung(armOf(bed, y, depth));
    return { x, y: p.y, out: p.x };
  };
  const block = (
    x: readonly [Mm, Mm],
    y: readonly [Mm, Mm],
    depth: readonly [Mm, Mm],
    color: Color,
  ): Block => {
    const ring = (d: Mm): Block['near'] => [
      at(x[0], y[0], d),
      at(x[1], y[0], d),
      at(x[1], y[1], d),
      at(x[0], y[1], d),
    ];
    return { near: ring(depth[1]), far: ring(depth[0]), color };
  };
  const t = bed.frame.thickness;
  const inside = [t, face.width - t] as const;
  const frame = block([0, face.width], [0, face.height], [z.frameTop, 0], WOOD);
  // What of the mattress stands out of the frame's boards.
  const mattress = block(
    inside,
    [t, face.height - t],
    [Math.min(z.mattressTop, z.frameTop - 1), z.frameTop],
    CLOTH,
  );
  if (angle !== LOWERED) {
    const see = seenFrom(eye);
    const onFace = (p: Point): Point => see(at(p.x, p.y, 0));
    return [...drawnBlock(mattress, eye), ...drawnBlock(frame, eye), ...itemsThrough(litFace(plan), onFace)];
  }
  const { fromEnd, fromSide, section, length } = bed.legs;
  const leg = (x: Mm) =>
    block([x, x + section], [face.height - fromEnd - section, face.height - fromEnd], [0, length], WOOD);
  return [
    ...[fromSide, face.width - fromSide - section].flatMap((x) => drawnBlock(leg(x), eye)),
    ...drawnBlock(frame, eye),
    ...drawnBlock(mattress, eye),
  ];
}

/** How much wall the people on a side take. */
const roomFor = (side: Person['side']): Mm =>
  PEOPLE.filter((person) => person.side === side).reduce((sum, { half }) => sum + 2 * half + APART, APART);

function peopleItems({ face }: Pictured, eye: Eye): DrawItem[] {
  const k = eye.out / (eye.out - OUT);
  const reached = { left: -APART, right: face.width + APART };
  return PEOPLE.map((person): DrawItem => {
    const turn = person.side === 'left' ? -1 : 1;
    const middle = reached[person.side] + turn * person.half;
    reached[person.side] = middle + turn * (person.half + APART);
    const foot = seenFrom(eye)({ x: middle, y: 0, out: OUT });
    // All of them look toward the bed.
    return { kind: 'group', move: foot, scale: { x: turn * k, y: k }, items: drawnPerson(person) };
  });
}
