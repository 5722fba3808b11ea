import { type SVGCommand, SVGPathData } from 'svg-pathdata';
import type { Path, PathCommand, Point } from '../../../geometry/shape.ts';
import { arcCubics } from './arc.ts';
import { FARTHEST } from './numbers.ts';
import { badValue } from './problem.ts';

/**
 * Path data of SVG 1.1 (chapter 8.3) as lines and cubics: relative commands made absolute, arcs and quadratics raised
 * to cubics, reflected handles worked out. Wrong data is refused, not drawn as far as it is right.
 */
export function pathOfData(data: string): Path {
  const path: PathCommand[] = [];
  let at: Point = { x: 0, y: 0 };
  let start = at;
  for (const command of commandsOf(data)) {
    if (!('x' in command && 'y' in command)) {
      path.push({ op: 'Z' });
      at = start;
      continue;
    }
    // What is drawn on from a close begins where that contour did.
    if (path.at(-1)?.op === 'Z' && command.type !== SVGPathData.MOVE_TO) path.push({ op: 'M', ...start });
    const to = { x: command.x, y: command.y };
    if (command.type === SVGPathData.MOVE_TO) {
      path.push({ op: 'M', ...to });
      start = to;
    } else if (command.type === SVGPathData.CURVE_TO) {
      const { x1, y1, x2, y2 } = command;
      path.push({ op: 'C', x1, y1, x2, y2, ...to });
    } else if (command.type === SVGPathData.ARC) {
      const { rX, rY, xRot, lArcFlag, sweepFlag } = command;
      const arc = { rx: rX, ry: rY, turn: xRot, large: lArcFlag === 1, sweep: sweepFlag === 1 };
      // The library's own cubics stray by 2.7e-4 of the radius.
      path.push(...arcCubics(at, to, arc));
    } else path.push({ op: 'L', ...to });
    at = to;
  }
  return path;
}

/** Moves, lines, cubics, arcs and closes (which alone have no place), all from the corner of the picture. */
function commandsOf(data: string): readonly SVGCommand[] {
  try {
    const { commands } = new SVGPathData(data).toAbs().normalizeHVZ(false, true, true).normalizeST().qtToC();
    if (
      commands.every((command) =>
        Object.values(command).every((value) => Math.abs(Number(value)) <= FARTHEST),
      )
    )
      return commands;
  } catch {
    // Refused below, in our words.
  }
  return badValue(data);
}
