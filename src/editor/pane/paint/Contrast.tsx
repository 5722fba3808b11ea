import { LEGIBLE_CONTRAST } from '../../../finish/contrast.ts';
import { letterLook } from '../../../finish/look.ts';
import { isFill } from '../../../lettering/result.ts';
import type { Plan } from '../../../plan/types.ts';
import { Section } from '../../control/Section.tsx';
import { useWords } from '../../words/t.ts';
import { numberText } from '../../words/text.ts';
import { Figures } from '../facts/Figures.tsx';

/** How well each sign's letters stand off what they are painted on, as a number. */
export function Contrast({ plan }: { plan: Plan }) {
  const t = useWords();
  if (plan.signs.length === 0) return null;
  const { looks, design } = plan;
  return (
    <Section id="paint-contrast" title="paint.contrast">
      <p className="note">{t('paint.contrastLead')}</p>
      <Figures title="paint.contrast" quiet>
        {plan.signs.map((sign) => {
          const { layers } = sign.lettered;
          const ratio = plan.finish.contrasts.find((one) => one.sign === sign.id)?.ratio ?? null;
          const letters = layers.find(isFill);
          if (ratio === null) return null;
          const good = ratio >= LEGIBLE_CONTRAST;
          return (
            <tr key={sign.id}>
              <th scope="row">
                <span
                  className="contrast-chip"
                  aria-hidden="true"
                  style={{
                    background: looks.parts.get(sign.id),
                    color: letterLook(looks, design.finishes, sign.id, letters?.finish ?? '') ?? undefined,
                  }}
                >
                  Aa
                </span>
                {sign.lettered.text.split('\n')[0]}
              </th>
              <td>
                {t('paint.contrastOf', { ratio: numberText(ratio, 1) })}
                <span className={good ? 'good-text block' : 'warn-text block'}>
                  {t(good ? 'paint.readable' : 'paint.faint')}
                </span>
              </td>
            </tr>
          );
        })}
      </Figures>
    </Section>
  );
}
