import type { Box } from '../geometry/shape.ts';

/** The box that an item has come to; its own where it is not laid. */
export const boxIn = (
  boxes: ReadonlyMap<string, Box>,
  item: { readonly id: string; readonly box: Box },
): Box => boxes.get(item.id) ?? item.box;
