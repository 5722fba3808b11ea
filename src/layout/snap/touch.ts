import { edgeOf } from '../../design/edge.ts';
import type { Mm } from '../../measure/units.ts';
import { otherAxis, type Span, spanOf, spansMeet } from '../span.ts';
import { ownEdges, shrunk } from './around.ts';
import { guideAt, offerOf } from './drawing.ts';
import { type Line, type Offer, PREFERENCE, type SnapAxis } from './snapping.ts';

interface Touched extends Line {
  readonly across: Span;
}

/** Lines that an edge may lie against: flush within what lies around, or against what stands beside. */
function linesFor(on: SnapAxis, side: 'low' | 'high'): Touched[] {
  const other = side === 'low' ? 'high' : 'low';
  const found: Touched[] = on.containers.map((container) => ({
    edge: edgeOf(container, side),
    at: container.span[side],
    prefer: container.prefer,
    across: spanOf(container.box, otherAxis(on.axis)),
  }));
  for (const { thing, span, across } of on.beside) {
    found.push({ edge: { of: thing.id, side: other }, at: span[other], prefer: PREFERENCE.part, across });
    // Flush with something that it then lies over, as a sign that runs over two doors.
    found.push({ edge: { of: thing.id, side }, at: span[side], prefer: PREFERENCE.beneath, across });
  }
  for (const { id, box, inner } of on.input.face.levels) {
    // A part on the rim ends at the opening; one that stands beside a level ends at it.
    for (const [around, isInner] of [
      [box, false],
      [inner, true],
    ] as const) {
      if (!around) continue;
      const prefer = PREFERENCE.face;
      const line = { edge: edgeOf({ of: `level:${id}`, inner: isInner }, other), prefer };
      found.push({ ...line, at: spanOf(around, on.axis)[other], across: spanOf(around, otherAxis(on.axis)) });
    }
  }
  return found;
}

/** Edges against edges, beside which they run for a stretch, so that they lie flush. */
export function touches(on: SnapAxis): Offer[] {
  const core = shrunk(on.across, on.input.reach);
  const { box } = on.input.face;
  const whole = spanOf(box, on.axis);
  const leaves = (side: 'low' | 'high', at: Mm) => (side === 'low' ? at >= whole.high : at <= whole.low);
  return ownEdges(on).flatMap(({ edge, side, at }) =>
    linesFor(on, side).flatMap((line): Offer[] => {
      if (Math.abs(line.at - at) > on.input.reach || !spansMeet(line.across, core)) return [];
      if (leaves(side, line.at)) return [];
      return [
        offerOf(on, {
          reading: 'touch',
          side,
          at: line.at,
          miss: line.at - at,
          prefer: line.prefer,
          rule: { kind: 'set', axis: on.axis, edge, from: line.edge, distance: 0 },
          guides: [guideAt(on, line.at, core)],
        }),
      ];
    }),
  );
}
