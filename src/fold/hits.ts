import type { Bed } from '../bed/bed.ts';
import type { Face } from '../bed/face.ts';
import { LEG_SLACK } from '../bed/faceOf.ts';
import { LOWERED, roomPoint, STOWED } from '../bed/swing.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import type { Body } from './body.ts';
import { cutToClear } from './cut.ts';
import { type PlaneName, planeClear, planeContact } from './plane.ts';
import type { Hit } from './result.ts';
import { wallBoardBound, wallBoardClear } from './wallBoard.ts';

/** The bed is built: only what is put on it can be cut. */
const canBeCut = (body: Body): boolean => body.kind === 'part';

const NO_CUT = { thinner: null, shorter: null };

const amount = (cut: { thinner: Mm | null; shorter: Mm | null }, otherwise: Mm): Mm =>
  cut.thinner === null && cut.shorter === null
    ? otherwise
    : Math.min(cut.thinner ?? Infinity, cut.shorter ?? Infinity);

function planeHit(bed: Bed, body: Body, what: PlaneName): Hit | null {
  const contact = planeContact(bed, body, what);
  if (!contact) return null;
  const cut = canBeCut(body) ? cutToClear(bed, body, what) : NO_CUT;
  const deep = -planeClear(bed, body, what).value;
  return { part: body.id, what, ...contact, over: amount(cut, deep), ...cut };
}

/** Feet belong on the floor: they hit it only when the legs are too long to let the face come down level. */
function legHit(bed: Bed, body: Body): Hit | null {
  const deep = -planeClear(bed, body, 'floor').value;
  const contact = planeContact(bed, body, 'floor');
  if (!contact || deep <= LEG_SLACK) return null;
  return { part: body.id, what: 'floor', ...contact, over: deep, thinner: null, shorter: deep };
}

function wallBoardHit(bed: Bed, body: Body): Hit | null {
  const { thickness, height } = bed.wallBoard;
  if (thickness <= 0 || height <= 0 || wallBoardBound(bed, body) > 0) return null;
  const { contact } = wallBoardClear(bed, body);
  if (!contact) return null;
  const cut = canBeCut(body) ? cutToClear(bed, body, 'wall-board') : NO_CUT;
  return { part: body.id, what: 'wall-board', ...contact, over: amount(cut, thickness), ...cut };
}

/** Lowered, the bed would rest on what stands farther out than the feet of its legs. */
function belowFeet(bed: Bed, body: Body): Hit | null {
  if (body.kind !== 'part' && body.kind !== 'keep-clear') return null;
  const over = body.z1 - bed.legs.length;
  if (over <= SAME_LENGTH) return null;
  const place = roomPoint(bed, (body.y0 + body.y1) / 2, body.z1, LOWERED);
  const thinner = canBeCut(body) ? over : null;
  return { part: body.id, what: 'legs', angle: LOWERED, over, thinner, shorter: null, place };
}

function besideHits(bed: Bed, face: Face, body: Body): Hit[] {
  const sides = [
    { what: 'side-left', room: bed.beside.left, reach: -body.x0 },
    { what: 'side-right', room: bed.beside.right, reach: body.x1 - face.width },
  ] as const;
  return sides.flatMap(({ what, room, reach }) => {
    // Within the face nothing is nearer to a neighbor than the bed itself.
    if (room === null || reach <= 0 || reach - room <= SAME_LENGTH) return [];
    const over = reach - room;
    const place = roomPoint(bed, (body.y0 + body.y1) / 2, body.z1, STOWED);
    const shorter = canBeCut(body) ? over : null;
    return [{ part: body.id, what, angle: STOWED, over, thinner: null, shorter, place }];
  });
}

/** Everything that one body touches through the swing, beyond a bare touch. */
export function hitsOf(bed: Bed, face: Face, body: Body): Hit[] {
  const found = [
    body.kind === 'leg' ? legHit(bed, body) : planeHit(bed, body, 'floor'),
    planeHit(bed, body, 'wall'),
    wallBoardHit(bed, body),
    planeHit(bed, body, 'ceiling'),
    belowFeet(bed, body),
  ].filter((hit) => hit !== null);
  return [...found, ...besideHits(bed, face, body)];
}
