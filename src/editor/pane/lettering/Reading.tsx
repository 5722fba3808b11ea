import { useMemo, useState } from 'react';
import { roomPoint } from '../../../bed/swing.ts';
import type { LetteredPart } from '../../../design/schema.ts';
import { LEGIBLE_CONTRAST } from '../../../finish/contrast.ts';
import {
  gapProportion,
  leastHeight,
  lineSpaceProportion,
  narrowestGap,
  type Proportion,
  readingDistance,
} from '../../../lettering/legibility.ts';
import type { Plan, SignPlan } from '../../../plan/types.ts';
import { MeasureField } from '../../control/MeasureField.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { numberText } from '../../words/text.ts';
import { Figures } from '../facts/Figures.tsx';
import { useFontFacts } from './useFontLook.ts';

/** Across a room. */
const USUAL_DISTANCE = 3000;

/** How well the sign can be read, with the source of every limit. */
export function Reading({ plan, part, sign }: { plan: Plan; part: LetteredPart; sign: SignPlan }) {
  const t = useWords();
  const say = useSay();
  const [distance, setDistance] = useState(USUAL_DISTANCE);
  const { lettered } = sign;
  const contrast = plan.finish.contrasts.find((one) => one.sign === sign.id)?.ratio ?? null;
  // What is small decides how far the whole sign is read.
  const smallest = lettered.capHeights.at(-1) ?? lettered.capHeight;
  const reach = readingDistance(smallest);
  const baseline = roomPoint(plan.design.bed, sign.at.y + lettered.box.y, 0, 0).y;
  const least = leastHeight(baseline, distance);
  const { proportions: ofFont } = useFontFacts(part.lettering.font, plan.design.fonts);
  const gap = useMemo(() => narrowestGap(lettered.glyphs), [lettered.glyphs]);
  const proportions = [
    ...ofFont,
    ...(gap === null ? [] : [gapProportion(gap.gap, gap.capHeight)]),
    ...(part.lettering.lines.length > 1 ? [lineSpaceProportion(part.lettering.lineSpace)] : []),
  ];
  return (
    <>
      <p className="note">{t('reading.lead')}</p>
      <Figures title="letters.reading" quiet>
        {contrast === null ? null : (
          <tr>
            <th scope="row">
              {t('reading.contrast')}
              <span className="note block">WCAG 2, 1.4.3</span>
            </th>
            <td>
              {t('paint.contrastOf', { ratio: numberText(contrast, 1) })}
              <Verdict good={contrast >= LEGIBLE_CONTRAST} words={[t('paint.readable'), t('paint.faint')]} />
            </td>
          </tr>
        )}
        <tr>
          <th scope="row">
            {t('reading.far')}
            <span className="note block">{t('reading.farSource')}</span>
          </th>
          <td>
            <Typeset text={t('reading.farValue', { near: say.far(reach.near), far: say.far(reach.far) })} />
          </td>
        </tr>
        <tr>
          <th scope="row">
            {t('reading.least')}
            <span className="note block">
              <Typeset text={t('reading.leastSource', { height: say.short(baseline) })} />
            </span>
          </th>
          <td>
            {least === null ? (
              <span className="note">{t('reading.leastNone')}</span>
            ) : (
              <>
                <Typeset text={say.short(least)} />
                <Verdict good={smallest >= least} words={[t('reading.enough'), t('reading.small')]} />
              </>
            )}
          </td>
        </tr>
      </Figures>
      <div className="fields">
        <MeasureField
          label={t('reading.distance')}
          hint={t('reading.distanceHint')}
          min={100}
          value={distance}
          onCommit={setDistance}
        />
      </div>
      {proportions.length > 0 ? <Proportions proportions={proportions} /> : null}
    </>
  );
}

/** How the font is built, each share beside its limits. */
function Proportions({ proportions }: { proportions: readonly Proportion[] }) {
  const t = useWords();
  const percent = (share: number) => String(Math.round(share * 100));
  return (
    <Figures title="reading.what" quiet columns={['reading.what', 'reading.share', 'reading.limits']} scrolls>
      {proportions.map((p) => (
        <tr key={p.what}>
          <th scope="row">
            {t(`reading.${p.what}`)}
            <span className="note block">{p.source}</span>
          </th>
          <td>{t('reading.of', { percent: percent(p.share) })}</td>
          <td>
            {t('reading.range', { least: percent(p.least), most: percent(p.most) })}
            <Verdict good={p.within} words={[t('reading.within'), t('reading.outside')]} />
          </td>
        </tr>
      ))}
    </Figures>
  );
}

function Verdict({ good, words }: { good: boolean; words: readonly [string, string] }) {
  return <span className={good ? 'good-text block' : 'warn-text block'}>{good ? words[0] : words[1]}</span>;
}
