import { mentionsOf } from '../design/references.ts';
import type { Design, Rule } from '../design/schema.ts';
import { keptBy } from '../list/keptBy.ts';
import { partOf } from './reference.ts';

const partsIn = (references: readonly string[]): string[] => references.flatMap((of) => partOf(of) ?? []);

/** The parts that a rule leads from, and those that follow. */
const linkOf = keptBy((rule: Rule) => {
  const { lead, follow } = mentionsOf(rule);
  return { lead: partsIn(lead), follow: partsIn(follow) };
});

/** Every part that takes its place, over any number of rules, from one of the given parts. */
export function followersOf(design: Pick<Design, 'rules'>, ids: Iterable<string>): Set<string> {
  const links = design.rules.map(linkOf);
  const leading = new Set(ids);
  const found = new Set<string>();
  let grown = true;
  while (grown) {
    grown = false;
    for (const { lead, follow } of links) {
      if (!lead.some((id) => leading.has(id))) continue;
      for (const id of follow) {
        if (leading.has(id)) continue;
        leading.add(id);
        found.add(id);
        grown = true;
      }
    }
  }
  return found;
}
