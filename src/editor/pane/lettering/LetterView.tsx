import { useId } from 'react';
import { letterLook } from '../../../finish/look.ts';
import { translateRegion } from '../../../geometry/region.ts';
import { photoItems } from '../../../lettering/photo/drawn.ts';
import type { Plan, SignPlan } from '../../../plan/types.ts';
import { Items } from '../../control/DrawingView.tsx';
import { regionData } from '../../control/svgPath.ts';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';

/** The sign as it will be painted, large. */
export function LetterView({ plan, sign }: { plan: Plan; sign: SignPlan }) {
  const t = useWords();
  const say = useSay();
  const id = useId();
  const laid = plan.layout.parts.find((p) => p.id === sign.id);
  if (!laid) return null;
  const { looks, design } = plan;
  const { lettered, photos } = sign;
  const paper = translateRegion(laid.region, -sign.at.x, -sign.at.y);
  const { w, h } = laid.box;
  const margin = Math.max(w, h) / 60;
  return (
    <svg
      className="letter-view"
      viewBox={`${-margin} ${-margin} ${w + 2 * margin} ${h + 2 * margin}`}
      role="img"
      aria-labelledby={id}
    >
      <title id={id}>
        {t('letters.picture', {
          text: lettered.text,
          width: say.short(w),
          cap: say.short(lettered.capHeight),
        })}
      </title>
      <g transform={`matrix(1 0 0 -1 0 ${h})`} fillRule="evenodd">
        <path className="letter-board" d={regionData(paper)} fill={looks.parts.get(sign.id)} />
        {photos.length > 0 ? <Items items={photoItems(photos, paper)} id={id} /> : null}
        {lettered.layers.map((layer) => (
          <path
            key={layer.role}
            d={regionData(layer.region)}
            fill={letterLook(looks, design.finishes, sign.id, layer.finish) ?? undefined}
          />
        ))}
      </g>
    </svg>
  );
}
