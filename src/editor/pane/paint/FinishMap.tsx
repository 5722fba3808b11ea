import type { Finish } from '../../../design/schema.ts';
import { looksOfFinish } from '../../../finish/look.ts';
import type { Plan } from '../../../plan/types.ts';
import { FaceMap } from '../../control/FaceMap.tsx';
import { Section } from '../../control/Section.tsx';
import { regionData } from '../../control/svgPath.ts';
import { useWords } from '../../words/t.ts';

/**
 * What is seen of every finish, as the room will see it.
 * @param variable the name of a color that is shown in place of a finish's own, where there is one of that name
 */
export function ShownAreas({ plan, variable }: { plan: Plan; variable?: (finish: string) => string }) {
  const shown = [...plan.finish.shown].sort((a, b) => a.z - b.z);
  return shown.map((area, i) => {
    return area.finish !== null && area.look !== null ? (
      <path
        // biome-ignore lint/suspicious/noArrayIndexKey: a part may show one finish in several areas
        key={`${area.part}|${area.finish}|${i}`}
        className="map-area"
        d={regionData(area.region)}
        fill={variable ? `var(${variable(area.finish)}, ${area.look})` : area.look}
      />
    ) : null;
  });
}

/** A finish as it shows on the face: a stain in stripes, one for each wood that it lies on. */
export function FinishChip({ plan, finish }: { plan: Plan; finish: Finish }) {
  const looks = looksOfFinish(plan.finish.shown, finish.id);
  return <span className="chip" style={{ background: stripes(looks, finish.color) }} aria-hidden="true" />;
}

export function FinishMap({ plan }: { plan: Plan }) {
  const t = useWords();
  const used = plan.design.finishes.filter((f) => plan.finish.uses.some((u) => u.finish === f.id));
  if (plan.finish.uses.length === 0) return null;
  return (
    <Section id="paint-map" title="paint.map">
      <div className="map-pair">
        <FaceMap
          wood
          face={plan.face}
          label={t('paint.mapPicture', { finishes: used.map((f) => f.name).join(', ') })}
        >
          <ShownAreas plan={plan} />
        </FaceMap>
        <ul className="legend column">
          {used.map((f) => (
            <li key={f.id}>
              <FinishChip plan={plan} finish={f} />
              {f.name}
            </li>
          ))}
          <li>
            <span className="chip" style={{ background: 'var(--rim)' }} aria-hidden="true" />
            {t('paint.bareWood')}
          </li>
        </ul>
      </div>
    </Section>
  );
}

/** A background of upright stripes, one for each color; plain where there is one, `none` where there are none. */
function stripes(colors: readonly string[], none: string): string {
  const [first, second] = colors;
  if (first === undefined) return none;
  if (second === undefined) return first;
  const share = 100 / colors.length;
  const stops = colors.map((color, i) => `${color} ${i * share}% ${(i + 1) * share}%`);
  return `linear-gradient(to right, ${stops.join(', ')})`;
}
