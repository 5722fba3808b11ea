import type { Design } from '../../../design/schema.ts';
import type { LaidPart } from '../../../layout/laid.ts';
import type { Mm } from '../../../measure/units.ts';
import { PartShapes } from '../../control/PartShapes.tsx';

/** What is laid over a box that begins at the origin. */
export interface Pictured {
  readonly size: { readonly w: Mm; readonly h: Mm };
  readonly parts: readonly LaidPart[];
  readonly finishes: Design['finishes'];
}

/** Around what is drawn: its outline is cut otherwise. */
const AROUND = 8;

/** A small picture of an assembly. */
export function BuiltPicture({ of: { size, parts, finishes } }: { readonly of: Pictured }) {
  return (
    <svg
      viewBox={`${-AROUND} ${-AROUND} ${size.w + 2 * AROUND} ${size.h + 2 * AROUND}`}
      preserveAspectRatio="xMidYMid meet"
      aria-hidden="true"
    >
      <g transform={`translate(0 ${size.h}) scale(1 -1)`}>
        <PartShapes parts={parts} finishes={finishes} />
      </g>
    </svg>
  );
}
