import type { Plan } from '../../../plan/types.ts';
import { FaceMap } from '../../drawing/FaceMap.tsx';
import { regionData } from '../../drawing/svgPath.ts';
import { useWords } from '../../words/t.ts';

/** What is seen of every finish, as the room will see it. */
export function ShownAreas({ plan }: { plan: Plan }) {
  const colors = new Map(plan.design.finishes.map((f) => [f.id, f.color]));
  const shown = [...plan.finish.shown].sort((a, b) => a.z - b.z);
  return shown.map((area, i) => {
    const color = area.finish === null ? undefined : colors.get(area.finish);
    return color ? (
      <path
        // biome-ignore lint/suspicious/noArrayIndexKey: a part may show one finish in several areas
        key={`${area.part}|${area.finish}|${i}`}
        className="map-area"
        d={regionData(area.region)}
        fill={color}
      />
    ) : null;
  });
}

export function FinishMap({ plan }: { plan: Plan }) {
  const t = useWords();
  const used = plan.design.finishes.filter((f) => plan.finish.uses.some((u) => u.finish === f.id));
  return (
    <section aria-labelledby="paint-map">
      <h3 id="paint-map" className="section-title">
        {t('paint.map')}
      </h3>
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
              <span className="chip" style={{ background: f.color }} aria-hidden="true" />
              {f.name}
            </li>
          ))}
          <li>
            <span className="chip" style={{ background: 'var(--rim)' }} aria-hidden="true" />
            {t('paint.bareWood')}
          </li>
        </ul>
      </div>
    </section>
  );
}
