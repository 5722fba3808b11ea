import type { Edit } from '../../design/edit/edit.ts';
import { partOfReference } from '../../design/references.ts';
import type { Axis, Design, Edge, Rule } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

export type Boxes = ReadonlyMap<string, Box>;

/**
 * The edits that bring parts and keep-clears to new boxes. Distances of the rules that place them follow
 * the hand, so that a rule keeps holding with another measure; what other rules hold stays held.
 */
export function editsToPlace(design: Design, before: Boxes, after: Boxes): Edit[] {
  const edits: Edit[] = [];
  for (const part of design.parts) {
    const box = after.get(part.id);
    if (box) edits.push({ kind: 'replace', list: 'parts', id: part.id, item: { ...part, box } });
  }
  for (const keep of design.keepClears) {
    const box = after.get(keep.id);
    if (box) edits.push({ kind: 'replace', list: 'keepClears', id: keep.id, item: { ...keep, box } });
  }
  for (const rule of design.rules) {
    const item = followedRule(rule, before, after);
    if (item !== rule) edits.push({ kind: 'replace', list: 'rules', id: rule.id, item });
  }
  return edits;
}

function followedRule(rule: Rule, before: Boxes, after: Boxes): Rule {
  if (rule.kind === 'set') {
    if (!isMoved(rule.edge, after) || isMoved(rule.from, after)) return rule;
    const shift = edgeShift(rule.edge, rule.axis, before, after);
    return shift === 0 ? rule : { ...rule, distance: rule.distance + shift };
  }
  if (rule.kind === 'between') {
    const shift = (side: Edge['side']) => edgeShift({ of: rule.part, side }, rule.axis, before, after);
    if (!after.has(rule.part)) return rule;
    const low = isMoved(rule.low, after) ? 0 : shift('low');
    const high = isMoved(rule.high, after) ? 0 : shift('high');
    if (low === 0 && high === 0) return rule;
    return { ...rule, insetLow: rule.insetLow + low, insetHigh: rule.insetHigh - high };
  }
  return rule;
}

const isMoved = (edge: Edge, after: Boxes) => partOfReference(edge.of).some((id) => after.has(id));

function edgeShift(edge: Edge, axis: Axis, before: Boxes, after: Boxes): Mm {
  const id = partOfReference(edge.of)[0];
  const a = id === undefined ? undefined : before.get(id);
  const b = id === undefined ? undefined : after.get(id);
  return a && b ? edgeOfBox(b, axis, edge.side) - edgeOfBox(a, axis, edge.side) : 0;
}

export function edgeOfBox(box: Box, axis: Axis, side: Edge['side']): Mm {
  const [at, size] = axis === 'x' ? [box.x, box.w] : [box.y, box.h];
  return side === 'low' ? at : side === 'high' ? at + size : at + size / 2;
}
