import type { Check } from '../../../check/check.ts';
import { grouped } from '../../../list/grouped.ts';
import type { Plan } from '../../../plan/types.ts';
import { checkMessage, partNames } from '../../../plan/words/words.ts';
import { entry, heading, paragraph, space } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';

/** So many warnings or notes of one kind are told each by itself; of more, the others only by their parts. */
const EACH = 4;

/** Checks as they are told: errors each, of many alike others the first with the rest behind it. */
function told(checks: readonly Check[]): { readonly first: Check; readonly others: readonly Check[] }[] {
  const alike = grouped(checks, ({ severity, code }) => `${severity}|${code}`);
  return [...alike.values()].flatMap((own) => {
    const [first, ...others] = own;
    const isEach = first.severity === 'error' || own.length <= EACH;
    return isEach ? own.map((check) => ({ first: check, others: [] })) : [{ first, others }];
  });
}

/** What holds for every wall bed, and what the plan found: right behind the cover, before anybody saws. */
export function checks(packet: Packet<Plan>): Content[] {
  const terms = packet.terms.checks;
  const { plan, words, say, body } = packet;
  const found = told(plan.checks).flatMap(({ first, others }) => [
    ...entry(terms.severity[first.severity], checkMessage(first, words, say), body.w, 22),
    ...(others.length === 0
      ? []
      : entry(
          '',
          terms.alike(
            others.length,
            partNames(
              others.flatMap(({ parts }) => parts),
              say,
            ).join(', '),
          ),
          body.w,
          22,
        )),
  ]);
  const blocks = [
    heading(terms.cautions),
    ...packet.terms.cautions.flatMap(([term, sentence]) => entry(term, sentence, body.w, 38)),
    space(4),
    heading(terms.found),
    ...(found.length === 0 ? paragraph(terms.none, body.w) : found),
  ];
  return [{ title: packet.terms.titles.checks, blocks }];
}
