import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { type Block, fillPages } from './flow.ts';
import type { Leaf } from './leaf.ts';
import { HEAD, sectionHead } from './sheet.ts';

/** White between two sections that share a page. */
const APART: Mm = 8;

/** Upright pages of blocks under one title, as many as it takes. */
export const flowLeaves = (title: string, blocks: readonly Block[], body: Box): Leaf[] =>
  fillPages(blocks, body).map(({ draw, height }) => ({
    title,
    landscape: false,
    scale: null,
    used: height,
    draw,
  }));

/** Pages that are taken out and carried along, such as a shopping list: nothing else is set on them. */
export const keptAlone = (leaves: readonly Leaf[]): Leaf[] =>
  leaves.map((leaf) => ({ ...leaf, used: undefined }));

/** One page of both, the second under a heading of its own; null where it does not fit below the first. */
export function onOnePage(first: Leaf, second: Leaf, body: Box): Leaf | null {
  if (first.used === undefined || second.used === undefined) return null;
  const taken = first.used + APART + HEAD;
  if (taken + second.used > body.h) return null;
  return {
    ...first,
    used: taken + second.used,
    draw: (room, contents) => {
      const below = { ...room, h: room.h - taken };
      return [
        ...first.draw(room, contents),
        ...sectionHead({ ...below, h: below.h + HEAD }, second.title),
        ...second.draw(below, contents),
      ];
    },
  };
}
