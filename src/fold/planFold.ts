import type { Bed, KeepClear } from '../bed/bed.ts';
import { LOWERED, roomPoint, STOWED } from '../bed/swing.ts';
import { orderChecks } from '../check/check.ts';
import { KeptResults } from '../layout/kept.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { type Body, bareBodies, bodyOf, type FoldInput } from './body.ts';
import { hitChecks, tightChecks } from './foldChecks.ts';
import type { FoldPlan } from './result.ts';
import { type Sweep, sweepOf } from './sweep.ts';
import { wallBoardClear } from './wallBoard.ts';
import type { Extreme } from './wave.ts';

interface Closest {
  readonly clear: Mm;
  readonly angle: Deg;
  readonly by: string;
}

/** The body that comes closest; the first of equals. */
function closest(sweeps: readonly Sweep[], clearOf: (sweep: Sweep) => Extreme): Closest {
  return sweeps
    .map((sweep): Closest => {
      const { value, angle } = clearOf(sweep);
      return { clear: value, angle, by: sweep.body.id };
    })
    .reduce((a, b) => (b.clear < a.clear ? b : a));
}

function closestToBoard(bed: Bed, sweeps: readonly Sweep[]): Closest | null {
  const { thickness, height } = bed.wallBoard;
  if (thickness <= 0 || height <= 0) return null;
  let best: Closest = { clear: Infinity, angle: STOWED, by: '' };
  for (const { body, boardBound } of sweeps) {
    // Most parts stay far above the board; the exact distance is worked out only where it could count.
    if (boardBound >= best.clear) continue;
    const { clear, angle } = wallBoardClear(bed, body);
    if (clear < best.clear) best = { clear, angle, by: body.id };
  }
  return best;
}

function reachOf(bed: Bed, keepClears: readonly KeepClear[]): FoldPlan['reach'] {
  return keepClears
    .filter(({ why }) => why === 'handle' || why === 'latch')
    .map(({ id, box, height }) => {
      const heightAt = (angle: Deg) => roomPoint(bed, box.y + box.h / 2, height, angle).y;
      return { id, stowed: heightAt(STOWED), lowered: heightAt(LOWERED) };
    });
}

/**
 * Sweeps the bed and everything on its face through the whole turn, from stowed to lowered.
 *
 * Least clearances to floor, wall, wall board and ceiling, the floor space needed, and every hit with its
 * first angle and what would have to come off, in closed form (see `wave.ts` and `wallBoard.ts`).
 *
 * Checks: `fold.hits-floor`, `-wall`, `-ceiling`, `-legs`, `-side` (errors for parts and keep-clear
 * things, warnings for the bed's own bodies), `fold.tight` (warning).
 *
 * It computes whether things meet, not whether the bed is safe: hinge, latch and anchor go by their
 * maker's word.
 */
export function planFold(
  { bed, face, keepClears, solids }: FoldInput,
  results = new KeptResults(),
): FoldPlan {
  const sweep = (body: Body) => sweepOf(bed, face, body);
  const sweeps = [
    ...bareBodies({ bed, face, keepClears }).map(sweep),
    ...solids.flatMap((solid) => {
      const body = bodyOf(solid);
      return body ? results.of(solid, 'sweep', [bed, face], () => sweep(body)) : [];
    }),
  ];
  // Feet stand on the floor by design; they would hide every other clearance.
  const offTheFloor = sweeps.filter(({ body }) => body.kind !== 'leg');
  const floor = closest(offTheFloor, (sweep) => sweep.floor);
  const wall = closest(sweeps, (sweep) => sweep.wall);
  const ceiling = closest(sweeps, (sweep) => sweep.ceiling);
  const board = closestToBoard(bed, sweeps);
  const space = closest(sweeps, ({ farthest: { value, angle } }) => ({ value: -value, angle }));
  const hits = sweeps.flatMap((sweep) => sweep.hits);
  const clearances = [
    { what: 'floor', ...floor },
    { what: 'wall', ...wall },
    { what: 'ceiling', ...ceiling },
    ...(board ? [{ what: 'wall-board', ...board }] : []),
  ];
  const boardIsHit = hits.some((hit) => hit.what === 'wall-board');
  const tight = tightChecks(clearances.filter(({ what }) => what !== 'wall-board' || !boardIsHit));
  return {
    floorClear: floor.clear,
    wallClear: wall.clear,
    ceilingClear: ceiling.clear,
    wallBoardClear: board?.clear ?? null,
    floorSpace: -space.clear,
    at: {
      floor: floor.angle,
      wall: wall.angle,
      wallBoard: board?.angle ?? null,
      ceiling: ceiling.angle,
      space: space.angle,
    },
    closest: {
      floor: floor.by,
      wall: wall.by,
      wallBoard: board?.by ?? null,
      ceiling: ceiling.by,
      space: space.by,
    },
    worst: clearances.reduce((a, b) => (b.clear < a.clear ? b : a)).angle,
    reach: reachOf(bed, keepClears),
    hits,
    checks: orderChecks([
      ...hitChecks(
        hits,
        sweeps.map(({ body }) => body),
      ),
      ...tight,
    ]),
  };
}
