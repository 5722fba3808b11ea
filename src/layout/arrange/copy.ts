import { withStopsOfCopies } from '../../design/ends.ts';
import type { Axis, Part, Rule } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { AXES, otherAxis, sizeOf, startOf, withSpan } from '../span.ts';
import { structureOf } from '../structure.ts';
import { type Arranged, type Arranging, idMaker, NOTHING, selected, setRule } from './arranged.ts';
import { jointsOfCopies } from './joints.ts';

export interface CopyRequest {
  readonly axis: Axis;
  /** Clear room to the next; negative: to the left or down. */
  readonly gap: Mm;
  readonly count: number;
}

/** Copies of each part in a row, each held at the same gap from the one before, in line and of the same size. */
export function copyByRule(
  on: Arranging,
  ids: readonly string[],
  { axis, gap, count }: CopyRequest,
): Arranged {
  const [near, far] = gap < 0 ? (['high', 'low'] as const) : (['low', 'high'] as const);
  const nextId = idMaker(on.input.design);
  const parts = selected(on, [...new Set(ids)]);
  const add: Part[] = [];
  const rules: Rule[] = [];
  const twins: Map<string, string>[] = Array.from({ length: count }, () => new Map());
  for (const part of parts) for (const ring of twins) ring.set(part.id, nextId(part.id));
  for (const part of parts) {
    const size = sizeOf(part.box, axis);
    const step = gap < 0 ? gap - size : gap + size;
    let before = part.id;
    twins.forEach((ring, i) => {
      const id = ring.get(part.id) ?? part.id;
      const box = withSpan(part.box, axis, startOf(part.box, axis) + step * (i + 1), size);
      const copy = withStopsOfCopies(part, (id) => ring.get(id));
      add.push({ ...copy, id, box, on: ring.get(part.on) ?? part.on });
      rules.push(
        setRule(nextId('copy'), axis, { of: id, side: near }, { of: before, side: far }, gap),
        setRule(nextId('copy'), otherAxis(axis), { of: id, side: 'low' }, { of: part.id, side: 'low' }),
      );
      before = id;
    });
    rules.push(
      ...sameSizes(
        on,
        part,
        twins.map((ring) => ring.get(part.id) ?? part.id),
        nextId,
      ),
    );
  }
  return { ...NOTHING, add, rules, joints: twins.flatMap((ring) => jointsOfCopies(on, ring, add, nextId)) };
}

/** Sizes that the stock does not decide already. */
function sameSizes(
  { input }: Arranging,
  part: Part,
  copies: readonly string[],
  nextId: (word: string) => string,
): Rule[] {
  if (copies.length === 0) return [];
  return AXES.filter((axis) => structureOf(part, axis, input.stocks, input.sizes).fixed === null).map(
    (axis) => ({
      id: nextId('same'),
      kind: 'same',
      axis,
      parts: [part.id, ...copies],
    }),
  );
}
