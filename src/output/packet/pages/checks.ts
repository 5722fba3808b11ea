import { checkMessage } from '../../../plan/words/words.ts';
import { entry, heading, paragraph, space } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { bodyOf } from '../sheet.ts';

/** What holds for every wall bed, and what the plan found: right behind the cover, before anybody saws. */
export function checks(packet: Packet): Content[] {
  const terms = packet.terms.checks;
  const { plan, words, say } = packet;
  const body = bodyOf(packet.sheet);
  const found = plan.checks.map((check) =>
    entry(terms.severity[check.severity], checkMessage(check, words, say), body.w, 22),
  );
  const blocks = [
    heading(terms.cautions),
    ...packet.terms.cautions.map(([term, sentence]) => entry(term, sentence, body.w, 38)),
    space(4),
    heading(terms.found),
    ...(found.length === 0 ? paragraph(terms.none, body.w) : found),
  ];
  return [{ title: packet.terms.titles.checks, blocks }];
}
