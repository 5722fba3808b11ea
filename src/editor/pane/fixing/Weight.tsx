import type { CheckCode } from '../../../check/codes.ts';
import type { Design } from '../../../design/schema.ts';
import type { Plan } from '../../../plan/types.ts';
import { Caution } from '../../control/Caution.tsx';
import { FaceMap } from '../../control/FaceMap.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { regionData } from '../../control/svgPath.ts';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';
import { forceUnit, massUnit } from '../facts/rateUnit.ts';
import { useChange } from '../facts/useChange.ts';
import { MomentCurve } from './MomentCurve.tsx';

const HEAVIEST = 5;

/** What the face adds to the bed's weight and to the lift. */
export function Weight({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const { load } = plan;
  const heaviest = [...load.byPart].sort((a, b) => b.mass - a.mass).slice(0, HEAVIEST);
  const big = (limit: CheckCode) => (plan.checks.some((c) => c.code === limit) ? 'bad-text' : 'big');
  const figures: readonly (readonly [words: WordKey, figure: string, look?: string])[] = [
    ['load.added', say.mass(load.added), big('load.heavy')],
    ['load.bare', say.mass(load.bare)],
    ['load.liftAdded', say.force(load.liftAdded), big('load.lift')],
    ['load.liftBare', say.force(load.liftBare)],
    ['load.moment', say.moment(load.moment)],
  ];
  return (
    <>
      <Caution of="weight" />
      <Section id="fixing-weight" title="fixing.weight">
        <div className="map-pair">
          <CenterMap plan={plan} />
          <Figures title="fixing.weight" quiet>
            {figures.map(([words, figure, look]) => (
              <tr key={words}>
                <th scope="row">{t(words)}</th>
                <td className={look}>{figure}</td>
              </tr>
            ))}
            <tr>
              <th scope="row" colSpan={2}>
                {t('load.center')}
                <Typeset
                  as="span"
                  className="note block"
                  text={t('load.centerAt', {
                    x: say.short(load.center.x),
                    y: say.short(load.center.y),
                    z: say.fromRim(load.center.z),
                  })}
                />
              </th>
            </tr>
          </Figures>
        </div>
        <p className="note">{t('load.estimate')}</p>
      </Section>
      <MomentCurve load={load} />
      {heaviest.length > 0 ? (
        <Figures title="load.byPart">
          {heaviest.map(({ part, mass }) => (
            <tr key={part}>
              <th scope="row">{say.name(part)}</th>
              <td>{say.mass(mass)}</td>
            </tr>
          ))}
        </Figures>
      ) : null}
      <Limits />
    </>
  );
}

function CenterMap({ plan }: { plan: Plan }) {
  const t = useWords();
  const { face, layout, load } = plan;
  const { x, y } = load.center;
  const r = Math.max(face.width, face.height) / 40;
  return (
    <FaceMap face={face} label={t('load.mapPicture')}>
      {layout.parts.map((p) => (
        <path key={p.id} className="map-part" d={regionData(p.region)} />
      ))}
      <g className="gravity">
        <circle cx={x} cy={y} r={r} />
        <path d={`M${x} ${y}V${y + r}A${r} ${r} 0 0 0 ${x + r} ${y}Z`} />
        <path d={`M${x} ${y}V${y - r}A${r} ${r} 0 0 0 ${x - r} ${y}Z`} />
      </g>
    </FaceMap>
  );
}

const LIMITS: readonly FormField<Design['load']>[] = [
  { is: 'amount', label: 'load.warnAdded', field: 'warnAdded_kg', unit: massUnit, digits: 1, min: 0.1 },
  { is: 'amount', label: 'load.warnLift', field: 'warnLift_n', unit: forceUnit, digits: 1, min: 0.1 },
];

function Limits() {
  const t = useWords();
  const { load } = useSettledDesign();
  const { set } = useChange();
  return (
    <Section id="load-limits" title="load.limits">
      <FieldGrid
        of={LIMITS}
        value={load}
        onChange={(fields) => set('load', { ...load, ...fields }, t('load.limits'))}
      />
    </Section>
  );
}
