import { isLettered, isPaint } from '../design/made.ts';
import { intersect } from '../geometry/clip.ts';
import { boxesMeet } from '../geometry/region.ts';
import type { LaidLetters, LaidPart } from './laid.ts';

/**
 * Which printed lettering is on one paper: blocks without a board of their own on a printed notice, and such blocks
 * beside each other whose shapes meet. Blocks that lie apart on wood are each a paper of their own: a person who wants one
 * lays a printed notice under them.
 *
 * @returns for each paper what is on it, in the order in which it lies, the lowest first
 */
export function papersOf(parts: readonly LaidPart[]): (readonly [LaidLetters, ...LaidLetters[]])[] {
  const papers: [LaidLetters, ...LaidLetters[]][] = [];
  // What lies on a part comes behind it, so that a paper is begun before what is on it.
  for (const part of parts) {
    if (!isLettered(part) || part.lettering.make !== 'printed') continue;
    const shared = isPaint(part) ? papers.filter((paper) => paper.some((one) => isWith(part, one))) : [];
    const [first, ...others] = shared;
    if (!first) {
      papers.push([part]);
      continue;
    }
    first.push(...others.flat(), part);
    for (const other of others) papers.splice(papers.indexOf(other), 1);
  }
  return papers;
}

const isWith = (block: LaidLetters, other: LaidLetters): boolean =>
  block.on === other.id ||
  (block.on === other.on &&
    isPaint(other) &&
    boxesMeet(block.box, other.box) &&
    intersect(block.region, other.region).length > 0);
