import type { BenchStep } from '../../cutting/atSaw.ts';
import type { BoardCut } from '../../cutting/result.ts';
import { under } from '../../list/at.ts';
import type { Plan } from '../../plan/types.ts';
import { useWords } from '../words/t.ts';

/** Drawn width and height, in the map's own units. */
const WIDE = 340;
const HIGH = 30;

/** The board from its left end, its pieces as they lie, the one in hand filled. */
export function BoardMap({ step, plan }: { step: Extract<BenchStep, { kind: 'board-piece' }>; plan: Plan }) {
  const t = useWords();
  const { wood: board } = step.from;
  const k = WIDE / board.length;
  const labels = new Map(plan.joinery.pieces.map((p) => [p.id, p]));
  // Slants are drawn true to the board's length: its height is not to scale, its angles would mislead.
  const lean = (cut: BoardCut, miter: number) => {
    const width = under(labels, cut.piece).width;
    return Math.tan((Math.abs(miter) * Math.PI) / 180) * width * k;
  };
  return (
    <svg
      className="saw-map"
      viewBox={`-2 -2 ${WIDE + 4} ${HIGH + 4}`}
      role="img"
      aria-label={t('bench.boardMap', { label: step.piece.label })}
    >
      <rect className="map-board" x={0} y={0} width={WIDE} height={HIGH} />
      {board.cuts.map((cut) => {
        const [x0, x1] = [cut.from * k, cut.to * k];
        const [l, r] = [lean(cut, cut.left), lean(cut, cut.right)];
        const up = { left: cut.left < 0 ? l : 0, right: cut.right < 0 ? r : 0 };
        const low = { left: cut.left > 0 ? l : 0, right: cut.right > 0 ? r : 0 };
        const mine = cut.piece === step.piece.id;
        const label = under(labels, cut.piece).label;
        const d = `M${x0 + up.left} 0L${x1 - up.right} 0L${x1 - low.right} ${HIGH}L${x0 + low.left} ${HIGH}Z`;
        return (
          <g key={cut.piece}>
            <path className={mine ? 'map-piece mine' : 'map-piece'} d={d} />
            {x1 - x0 > label.length * 7 + 6 ? (
              <text
                className={mine ? 'map-text mine' : 'map-text'}
                x={(x0 + x1) / 2}
                y={HIGH / 2 + 4.5}
                textAnchor="middle"
              >
                {label}
              </text>
            ) : null}
          </g>
        );
      })}
    </svg>
  );
}
