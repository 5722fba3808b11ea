import { useId } from 'react';
import type { Bed } from '../../../bed/bed.ts';
import type { FoldInput } from '../../../fold/body.ts';
import type { FoldPlan, SideShape } from '../../../fold/result.ts';
import { sideView } from '../../../fold/sideView.ts';
import type { Point } from '../../../geometry/shape.ts';
import type { Deg, Mm } from '../../../measure/units.ts';
import { t } from '../../words/t.ts';

interface SideViewProps {
  readonly input: FoldInput;
  readonly fold: FoldPlan;
  readonly angle: Deg;
  readonly label: string;
  readonly colorOf: (part: string) => string | undefined;
}

/** Drawn thickness of wall, floor and ceiling. */
const THICK: Mm = 70;
const TEXT: Mm = 80;

/** The bed from its side, wall at the left; where it stands stowed and lowered is drawn faintly behind. */
export function SideView({ input, fold, angle, label, colorOf }: SideViewProps) {
  const id = useId();
  const { bed } = input;
  // The room is at least about as wide as it is high, whichever way the bed folds.
  const reach = Math.max(fold.floorSpace + 160, bed.ceiling * 0.9);
  const touched = new Set(fold.hits.filter((h) => h.angle <= angle + 1e-6).map((h) => h.part));
  const hits = fold.hits.filter((h) => touched.has(h.part));
  return (
    <svg
      className="side-view"
      viewBox={`${-THICK} ${-THICK} ${reach + THICK} ${bed.ceiling + 2 * THICK}`}
      role="img"
      aria-labelledby={id}
    >
      <title id={id}>{label}</title>
      <Room bed={bed} reach={reach} />
      <g transform={`matrix(1 0 0 -1 0 ${bed.ceiling})`}>
        {[0, 90].map((at) => (
          <g key={at} className="side-ghost">
            {sideView({ ...input, solids: [] }, at).map((shape) => (
              <polygon key={shape.id} points={pointsOf(shape.points)} />
            ))}
          </g>
        ))}
        {sideView(input, angle).map((shape) => (
          <polygon
            key={shape.id}
            className={touched.has(shape.id) ? `side-${shape.kind} touched` : `side-${shape.kind}`}
            points={pointsOf(shape.points)}
            style={styleOf(shape, touched.has(shape.id) ? undefined : colorOf(shape.id))}
          />
        ))}
        <circle className="side-pivot" cx={bed.pivot.fromWall} cy={bed.pivot.height} r={22} />
        {hits.map((hit) => (
          <g key={`${hit.part}|${hit.what}`} className="side-hit">
            <circle cx={hit.place.x} cy={hit.place.y} r={60} />
            <path
              d={`M${hit.place.x - 32} ${hit.place.y - 32}l64 64M${hit.place.x - 32} ${hit.place.y + 32}l64 -64`}
            />
          </g>
        ))}
      </g>
    </svg>
  );
}

const styleOf = (shape: SideShape, color: string | undefined) =>
  shape.kind === 'part' && color ? { fill: color } : undefined;

const pointsOf = (points: readonly Point[]): string =>
  points.map((p) => `${p.x.toFixed(1)},${p.y.toFixed(1)}`).join(' ');

function Room({ bed, reach }: { bed: Bed; reach: Mm }) {
  const { ceiling, wallBoard } = bed;
  return (
    <g className="side-room">
      <rect x={-THICK} y={-THICK} width={THICK} height={ceiling + 2 * THICK} />
      <rect x={-THICK} y={ceiling} width={reach + THICK} height={THICK} />
      <rect x={-THICK} y={-THICK} width={reach + THICK} height={THICK} />
      {wallBoard.thickness > 0 && wallBoard.height > 0 ? (
        <rect
          className="side-board"
          x={0}
          y={ceiling - wallBoard.height}
          width={wallBoard.thickness}
          height={wallBoard.height}
        />
      ) : null}
      <text x={reach - 30} y={ceiling - 24} textAnchor="end" fontSize={TEXT}>
        {t('swing.floor')}
      </text>
      <text x={reach - 30} y={TEXT + 4} textAnchor="end" fontSize={TEXT}>
        {t('bed.ceiling')}
      </text>
    </g>
  );
}
