import type { Face } from '../bed/face.ts';
import type { Design } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import type { Checked } from './check/checks.ts';
import type { PlacedPart } from './place/place.ts';
import type { SolvedComponent } from './solve/component.ts';
import type { Network } from './solve/network.ts';

/**
 * What the last layout was made from and came to. The caller owns it and hands it back in; the layout
 * with it equals the layout without it, only sooner.
 */
export interface LayoutMemory {
  last: Remembered | null;
}

export interface Remembered {
  readonly rules: Design['rules'];
  readonly face: Face;
  /** Parts that the network was built for, arrays as they were, since references to members depend on them. */
  readonly parts: Design['parts'];
  readonly network: Network;
  readonly finishes: Design['finishes'];
  readonly finishIds: ReadonlySet<string>;
  readonly solved: ReadonlyMap<string, SolvedComponent>;
  readonly boxes: ReadonlyMap<string, Box>;
  readonly placed: ReadonlyMap<string, PlacedPart>;
  readonly checked: ReadonlyMap<string, Checked>;
}

export const createMemory = (): LayoutMemory => ({ last: null });
