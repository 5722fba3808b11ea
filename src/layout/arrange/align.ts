import type { Axis, Edge } from '../../design/schema.ts';
import { edgesAt } from '../edgeAt.ts';
import { sizeOf, startOf, withSpan } from '../span.ts';
import { type Arranged, type Arranging, idMaker, NOTHING, selected, setRule } from './arranged.ts';

export interface AlignRequest {
  readonly axis: Axis;
  readonly side: Edge['side'];
  /** What to align to; absent: the first of the parts. */
  readonly to?: Edge;
  /** Hold it by rules; else the parts are only moved. */
  readonly hold: boolean;
}

/** The same edge of all parts in one line. */
export function align(on: Arranging, ids: readonly string[], request: AlignRequest): Arranged {
  const { axis, side, hold } = request;
  const [first, ...rest] = selected(on, ids);
  if (!first) return NOTHING;
  const to: Edge = request.to ?? { of: first.id, side };
  const parts = request.to ? [first, ...rest] : rest;
  const edgeAt = edgesAt(on.input, on.layout, axis);
  const line = edgeAt(to);
  if (line === null) return NOTHING;
  const change = parts.flatMap((part) => {
    const own = edgeAt({ of: part.id, side });
    if (own === null || own === line) return [];
    const start = startOf(part.box, axis) + line - own;
    return [{ ...part, box: withSpan(part.box, axis, start, sizeOf(part.box, axis)) }];
  });
  if (!hold) return { ...NOTHING, change };
  const nextId = idMaker(on.input.design);
  const rules = parts.map(({ id }) => setRule(nextId('align'), axis, { of: id, side }, to));
  return { ...NOTHING, change, rules };
}
