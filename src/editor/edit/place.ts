import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import { mentionsOf, partOfReference, partsOfRule } from '../../design/references.ts';
import { inSlot, roomsOf, slotsOf, withFields } from '../../design/rule/table.ts';
import type { Axis, Design, Edge, Rule } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { edgeOfBox } from '../document/edges.ts';

export type Boxes = ReadonlyMap<string, Box>;

/**
 * The edits that bring parts and keep-clears to new boxes. Distances of the rules that place them follow
 * the hand, so that a rule keeps holding with another measure; what other rules hold stays held.
 */
export function editsToPlace(design: Design, before: Boxes, after: Boxes): Edit[] {
  const edits: Edit[] = [];
  for (const part of design.parts) {
    const box = after.get(part.id);
    if (box) edits.push(replacing('parts', { ...part, box }));
  }
  for (const keep of design.keepClears) {
    const box = after.get(keep.id);
    if (box) edits.push(replacing('keepClears', { ...keep, box }));
  }
  for (const rule of design.rules) {
    if (!partsOfRule(rule).some((id) => after.has(id))) continue;
    const item = followedRule(rule, before, after);
    if (item !== rule) edits.push(replacing('rules', item));
  }
  return edits;
}

/** A rule with its measures taken anew where its part was moved against what it is held to. */
function followedRule(rule: Rule, before: Boxes, after: Boxes): Rule {
  let followed = rule;
  for (const slot of slotsOf(rule)) {
    if (slot.is !== 'measure' || !slot.follows) continue;
    const room = mentionsOf(rule)
      .follow.flatMap((part) => roomsOf(rule, part))
      .find(({ measure }) => measure === slot.field);
    const [from] = room?.from ?? [];
    const [to] = room?.to ?? [];
    if (!room || !from || !to || isMoved(from, after) === isMoved(to, after)) continue;
    const follows = mentionsOf(rule).follow.includes(to.of) ? to : from;
    if (!isMoved(follows, after)) continue;
    const shift = edgeShift(follows, room.axis, before, after);
    const value = inSlot(rule, slot) ?? 0;
    if (shift !== 0)
      followed = withFields(followed, { [slot.field]: value + (follows === to ? shift : -shift) });
  }
  return followed;
}

const isMoved = (edge: Edge, after: Boxes) => partOfReference(edge.of).some((id) => after.has(id));

function edgeShift(edge: Edge, axis: Axis, before: Boxes, after: Boxes): Mm {
  const id = partOfReference(edge.of)[0];
  const a = id === undefined ? undefined : before.get(id);
  const b = id === undefined ? undefined : after.get(id);
  return a && b ? edgeOfBox(b, axis, edge.side) - edgeOfBox(a, axis, edge.side) : 0;
}
