import type { Point } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { fillPages, type Section } from './flow.ts';
import type { Content, Leaf, Packet } from './leaf.ts';
import { HEAD, sectionHead } from './sheet.ts';

/** White between two sections that share a page. */
const APART: Mm = 8;

/** A page, and which of the contents it was made of begin on it. */
export interface Begun {
  readonly leaf: Leaf;
  readonly begins: readonly Content[];
}

/** The pages of all contents in their order: drawings each on its own, sections one behind the other. */
export function leavesOf(contents: readonly Content[], packet: Packet): Begun[] {
  const leaves: Begun[] = [];
  let run: Section[] = [];
  const turn = () => {
    leaves.push(...runOn(run, packet));
    run = [];
  };
  for (const content of contents) {
    if (!('blocks' in content) || content.alone || run.at(-1)?.alone) turn();
    if ('blocks' in content) run.push(content);
    else leaves.push({ leaf: content, begins: [content] });
  }
  turn();
  return leaves;
}

/** Sections one behind the other; each but the first of a page under a heading of its own. */
function runOn(sections: readonly Section[], { body }: Packet): Begun[] {
  const blocks = sections.flatMap((section) => [
    {
      height: APART + HEAD,
      begins: section,
      heldToNext: true,
      draw: ({ x, y }: Point, w: Mm) => sectionHead({ x, y: y - APART - HEAD, w, h: HEAD }, section.title),
    },
    ...section.blocks,
  ]);
  return fillPages(blocks, body).map(({ section, begins, draw }) => ({
    leaf: { title: section?.title ?? '', landscape: false, scale: null, draw },
    begins,
  }));
}
