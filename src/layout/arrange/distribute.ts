import type { Axis, Part } from '../../design/schema.ts';
import { middle, sizeOf, spanOf, withSpan } from '../span.ts';
import { type Arranged, type Arranging, idMaker, NOTHING, selected } from './arranged.ts';

export interface DistributeRequest {
  readonly axis: Axis;
  /** Hold it by a rule; else the parts are only moved. */
  readonly hold: boolean;
}

/** Equal gaps between the parts; the outermost two stay. */
export function distribute(on: Arranging, ids: readonly string[], request: DistributeRequest): Arranged {
  const { axis, hold } = request;
  const row = selected(on, [...new Set(ids)]).sort(
    (a, b) => middle(spanOf(a.box, axis)) - middle(spanOf(b.box, axis)) || (a.id < b.id ? -1 : 1),
  );
  const first = row[0];
  const last = row.at(-1);
  const inner = row.slice(1, -1);
  if (!first || !last || inner.length === 0) return NOTHING;
  const low = spanOf(first.box, axis).high;
  const high = spanOf(last.box, axis).low;
  const gap =
    (high - low - inner.reduce((sum, part) => sum + sizeOf(part.box, axis), 0)) / (inner.length + 1);
  let at = low;
  const change: Part[] = inner.map((part) => {
    const size = sizeOf(part.box, axis);
    const box = withSpan(part.box, axis, at + gap, size);
    at += gap + size;
    return { ...part, box };
  });
  if (!hold) return { ...NOTHING, change };
  return {
    ...NOTHING,
    change,
    rules: [
      {
        id: idMaker(on.input.design)('even'),
        kind: 'even',
        axis,
        parts: inner.map((part) => part.id),
        low: { of: first.id, side: 'high' },
        high: { of: last.id, side: 'low' },
        mode: 'gaps',
      },
    ],
  };
}
