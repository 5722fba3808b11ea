import type { Bed, Design } from '../../design/schema.ts';
import { settled } from '../../layout/settle.ts';
import { shownFrom } from '../document/shown.ts';

/** What a person knows of their bed before anything else. */
export interface MainMeasures {
  readonly mattress: Bed['mattress'];
  /** Null: as the design has it. */
  readonly pivotAlong: Bed['pivotAlong'] | null;
  readonly measure: Design['measure'];
}

/**
 * A design on another bed: its rules are solved again for the new face, and the places that come out are
 * written into it, so that they are the ones to stay at. What no rule holds stays where it was.
 */
export function fitToBed(design: Design, { mattress, pivotAlong, measure }: MainMeasures): Design {
  const bed = { ...design.bed, mattress, pivotAlong: pivotAlong ?? design.bed.pivotAlong };
  const turned = { ...design, bed, measure };
  const boxes = new Map(settled(turned, shownFrom(turned).layout).map((s) => [s.part, s.box]));
  const parts = turned.parts.map((part) => {
    const box = boxes.get(part.id);
    return box ? { ...part, box } : part;
  });
  return { ...turned, parts };
}
