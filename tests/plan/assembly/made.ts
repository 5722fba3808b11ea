import { newAssembly } from '../../../src/design/assembly/make.ts';
import type { Supplies as Has, Kept } from '../../../src/design/assembly/question.ts';
import type { AssemblyName } from '../../../src/design/assembly/table.ts';
import { DEFAULT_BED, newDesign } from '../../../src/design/defaults.ts';
import { applyEdits, type Edit } from '../../../src/design/edit/edit.ts';
import type { Axis, Design, Edge, Group, Rule } from '../../../src/design/schema.ts';
import { type Shown, shownFrom } from '../../../src/editor/document/shown.ts';
import { stocksOf, tables } from '../../../src/editor/shipped/tables.ts';
import type { Box } from '../../../src/geometry/shape.ts';

/** A face without a frame to see: one sheet over all. */
export const SKINNED: Design = newDesign({ ...DEFAULT_BED, skin: { thickness: 18, material: 'plywood' } });

export const hasOf = (design: Design): Has => ({
  stocks: stocksOf(design),
  hardware: tables().hardware,
  finishes: design.finishes,
  unit: design.measure.unit,
});

/** Names without words. */
export const nameOf = ({
  noun,
  number,
  leaf,
}: {
  noun: string;
  number?: number | undefined;
  leaf?: string | undefined;
}) => [leaf, noun, number].filter((word) => word !== undefined).join(' ');

export function edited(design: Design, edits: readonly Edit[]): Design {
  const done = applyEdits(design, edits);
  if (!done.ok) throw new Error(JSON.stringify(done.problem));
  return done.design;
}

/** An assembly on a face, held from its four sides, and the design laid out. */
export function madeOn(
  design: Design,
  kind: AssemblyName,
  box: Box,
  given: Kept = {},
): { readonly design: Design; readonly group: Group; readonly shown: Shown } {
  const made = newAssembly(design, kind, { box, has: hasOf(design), called: kind, nameOf, given });
  const { width, height } = shownFrom(design).face;
  const ground = made.parts[0].id;
  const held = (axis: Axis, low: number, high: number): Rule => ({
    id: `held-${axis}`,
    kind: 'between',
    axis,
    part: ground,
    low: face('low'),
    high: face('high'),
    insetLow: low,
    insetHigh: high,
  });
  const rules = [
    ...made.rules,
    held('x', box.x, width - box.x - box.w),
    held('y', box.y, height - box.y - box.h),
  ];
  const next: Design = {
    ...design,
    parts: [...design.parts, ...made.parts],
    groups: [...design.groups, made.group],
    rules: [...design.rules, ...rules],
  };
  return { design: next, group: made.group, shown: shownFrom(next) };
}

const face = (side: Edge['side']): Edge => ({ of: 'face', side });
