import { useId } from 'react';
import type { Design } from '../../../design/schema.ts';
import { gleamOf } from '../../../finish/sheen.ts';
import { addTo, type Groups } from '../../../list/grouped.ts';
import type { Plan } from '../../../plan/types.ts';
import { regionData } from '../../control/svgPath.ts';

/** What each sheen throws back of the light, over the areas that have it. */
export function Gleams({ plan, light }: { plan: Plan; light: Design['light'] }) {
  const id = useId();
  const sheens = new Map(plan.design.finishes.map((f) => [f.id, f.sheen]));
  const areas: Groups<string, string> = new Map();
  for (const { finish, region } of plan.finish.shown) {
    const sheen = sheens.get(finish ?? '');
    if (sheen) addTo(areas, sheen, regionData(region));
  }
  return (['eggshell', 'satin', 'gloss'] as const).map((sheen) => {
    const gleam = gleamOf(sheen, light, plan.face.box);
    const paths = areas.get(sheen);
    if (!gleam || !paths) return null;
    const { from, to, stops } = gleam;
    return (
      <g key={sheen}>
        <linearGradient
          id={`${id}-${sheen}`}
          gradientUnits="userSpaceOnUse"
          x1={from.x}
          y1={from.y}
          x2={to.x}
          y2={to.y}
        >
          {stops.map(({ at, alpha }) => (
            <stop key={at} offset={at} stopColor="#ffffff" stopOpacity={alpha} />
          ))}
        </linearGradient>
        <path d={paths.join(' ')} fill={`url(#${id}-${sheen})`} />
      </g>
    );
  });
}
