import { isBought, isLettersAlone, isPaint } from '../../design/made.ts';
import type { Finish } from '../../design/schema.ts';
import type { Region } from '../../geometry/shape.ts';
import type { LaidPart } from '../../layout/laid.ts';

interface PartShapesProps {
  readonly parts: readonly LaidPart[];
  readonly finishes: readonly Finish[];
}

/** Parts as they are laid in a small picture, in the colors of their finishes; y points up. */
export function PartShapes({ parts, finishes }: PartShapesProps) {
  const colors = new Map(finishes.map((f) => [f.id, f.color]));
  return parts.map((part) => (
    <g key={part.id}>
      {isLettersAlone(part) ? null : (
        <path
          d={pathOf(part.region)}
          fillRule="evenodd"
          fill={isBought(part) ? part.spec.color : (colors.get(part.finish ?? '') ?? 'var(--rim)')}
          stroke="var(--outline)"
          strokeWidth={isPaint(part) ? 0 : 3}
        />
      )}
    </g>
  ));
}

/** A region as the path of an SVG. */
const pathOf = (region: Region): string =>
  region
    .flatMap((p) => [p.outer, ...p.holes])
    .map((ring) => `M${ring.map((q) => `${q.x.toFixed(1)} ${q.y.toFixed(1)}`).join('L')}Z`)
    .join('');
