import { useId } from 'react';
import type { Point } from '../../../geometry/shape.ts';
import type { PatternSet } from '../../../patterns/result.ts';
import type { Plan } from '../../../plan/types.ts';
import { FaceMap } from '../../control/FaceMap.tsx';
import { regionData } from '../../control/svgPath.ts';
import { useWords } from '../../words/t.ts';

/** Widest and highest that a key map is drawn, in pixels; its letters keep their size whatever the pattern's. */
const ROOM = { w: 320, h: 170 };
const TEXT = 13;

/** Pages by their names as they are taped together. */
export function KeyMap({ set }: { set: PatternSet }) {
  const t = useWords();
  const id = useId();
  const k = Math.min(ROOM.w / set.width, ROOM.h / set.height);
  const [w, h] = [set.width * k, set.height * k];
  return (
    <svg
      className="key-map"
      viewBox={`-2 -2 ${w + 4} ${h + 4}`}
      style={{ width: w + 4 }}
      role="img"
      aria-labelledby={id}
    >
      <title id={id}>
        {t('pages.keyMap', { title: set.title, names: set.pages.map((p) => p.name).join(', ') })}
      </title>
      <rect className="key-whole" x={0} y={0} width={w} height={h} />
      {set.pages.map(({ name, cell }) => {
        const box = { x: cell.x * k, y: h - (cell.y + cell.h) * k, w: cell.w * k, h: cell.h * k };
        const fits = box.w > TEXT * name.length * 0.6 && box.h > TEXT * 0.9;
        return (
          <g key={name}>
            <rect className="key-cell" x={box.x} y={box.y} width={box.w} height={box.h} />
            {fits ? (
              <text x={box.x + box.w / 2} y={box.y + box.h / 2 + TEXT * 0.35} fontSize={TEXT}>
                {name}
              </text>
            ) : null}
          </g>
        );
      })}
    </svg>
  );
}

/** The same pages on the face, so that it is seen what they cover. */
export function PagesOnFace({ plan, set }: { plan: Plan; set: PatternSet }) {
  const t = useWords();
  const at = patternPlace(plan, set);
  if (!at) return null;
  return (
    <FaceMap face={plan.face} label={t('pages.faceMap', { title: set.title })}>
      {plan.layout.parts.map((p) => (
        <path key={p.id} className="map-part" d={regionData(p.region)} />
      ))}
      {set.pages.map(({ name, cell }) => (
        <rect
          key={name}
          className="map-page"
          x={at.x + cell.x}
          y={at.y + cell.y}
          width={cell.w}
          height={cell.h}
        />
      ))}
    </FaceMap>
  );
}

/** Where a pattern's lower left corner lies on the face; null for what does not lie there. */
function patternPlace(plan: Plan, set: PatternSet): Point | null {
  const sign = plan.signs.find((s) => s.id === set.for);
  if (sign) {
    // A stencil's sheet may reach past its board.
    const reach = sign.stencils?.sheet ?? sign.lettered.box;
    return { x: sign.at.x + Math.min(0, reach.x), y: sign.at.y + Math.min(0, reach.y) };
  }
  if (set.for === 'face') return { x: 0, y: 0 };
  const part = plan.layout.parts.find((p) => p.id === set.for);
  return part ? { x: part.box.x, y: part.box.y } : null;
}
