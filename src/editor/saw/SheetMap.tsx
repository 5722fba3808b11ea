import type { CutSheet, SheetCut } from '../../cutting/result.ts';
import { ringsOnSheet } from '../../cutting/sheets/lie.ts';
import { under } from '../../list/at.ts';
import type { Plan } from '../../plan/types.ts';
import { useWords } from '../words/t.ts';

interface SheetMapProps {
  readonly sheet: CutSheet;
  readonly plan: Plan;
  /** What is in hand: a piece by its id, or a cut. */
  readonly marked: { readonly piece: string } | { readonly cut: SheetCut };
  /** The same in words. */
  readonly what: string;
}

const WIDE = 340;

/** The sheet with its pieces, its lower left at the lower left; a cut is drawn over the part that it cuts. */
export function SheetMap({ sheet, plan, marked, what }: SheetMapProps) {
  const t = useWords();
  const k = WIDE / sheet.length;
  const high = sheet.width * k;
  const box = (b: { x: number; y: number; w: number; h: number }) => ({
    x: b.x * k,
    y: high - (b.y + b.h) * k,
    width: b.w * k,
    height: b.h * k,
  });
  const pieces = new Map(plan.joinery.pieces.map((p) => [p.id, p]));
  return (
    <svg
      className="saw-map"
      viewBox={`-2 -2 ${WIDE + 4} ${high + 4}`}
      role="img"
      aria-label={t('bench.sheetMap', { what })}
    >
      <rect className="map-board" x={0} y={0} width={WIDE} height={high} />
      {'cut' in marked ? <rect className="map-part" {...box(marked.cut.of)} /> : null}
      {sheet.placements.map((place) => {
        const b = box(place);
        const mine = 'piece' in marked && place.piece === marked.piece;
        const piece = under(pieces, place.piece);
        const { label } = piece;
        // Those that lie in each other are drawn as they are sawn.
        const [outline = []] = place.from ? ringsOnSheet(place, piece) : [];
        const look = mine ? 'map-piece mine' : 'map-piece';
        return (
          <g key={place.piece}>
            {place.from ? (
              <polygon
                className={look}
                points={outline.map(({ x, y }) => `${x * k},${high - y * k}`).join(' ')}
              />
            ) : (
              <rect className={look} {...b} />
            )}
            {!place.from && b.width > label.length * 7 + 4 && b.height > 13 ? (
              <text
                className={mine ? 'map-text mine' : 'map-text'}
                x={b.x + b.width / 2}
                y={b.y + b.height / 2 + 4.5}
                textAnchor="middle"
              >
                {label}
              </text>
            ) : null}
          </g>
        );
      })}
      {'cut' in marked ? <CutLine cut={marked.cut} k={k} high={high} /> : null}
    </svg>
  );
}

function CutLine({ cut, k, high }: { cut: SheetCut; k: number; high: number }) {
  const rip = cut.kind === 'rip';
  const at = (rip ? cut.of.y : cut.of.x) + cut.fence;
  const line = rip
    ? { x1: cut.of.x * k, x2: (cut.of.x + cut.of.w) * k, y1: high - at * k, y2: high - at * k }
    : { x1: at * k, x2: at * k, y1: high - cut.of.y * k, y2: high - (cut.of.y + cut.of.h) * k };
  return <line className="map-cut" {...line} />;
}
