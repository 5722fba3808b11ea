import { EXCLUSIVE, FEATURE_TAGS, type FeatureTag, stylisticSet } from '../../../design/features.ts';
import type { FontFeature } from '../../../lettering/font/layout.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { t, useWords, type WordKey } from '../../words/t.ts';
import { useFontFacts } from './useFontLook.ts';

type Chosen = readonly FeatureTag[];

interface FontFeaturesProps {
  readonly font: string;
  readonly chosen: Chosen;
  readonly onChange: (chosen: Chosen) => void;
}

/** What a font can do with its letters: only that is asked for. */
export function FontFeatures({ font, chosen, onChange }: FontFeaturesProps) {
  useWords();
  const { fonts } = useSettledDesign();
  const { features } = useFontFacts(font, fonts);
  const fields = [...groupFields(features), ...switchFields(features)];
  if (fields.length === 0) return null;
  return (
    <fieldset className="font-features">
      <legend className="section-sub">{t('letters.features')}</legend>
      <FieldGrid three of={fields} value={chosen} onChange={onChange} />
    </fieldset>
  );
}

const inOrder = (chosen: Chosen): Chosen => FEATURE_TAGS.filter((tag) => chosen.includes(tag));

const has = (features: readonly FontFeature[], wanted: string): boolean =>
  features.some(({ tag }) => tag === wanted);

/** Of features that exclude each other, the one that is chosen; there has to be one to choose. */
const groupFields = (features: readonly FontFeature[]): FormField<Chosen, Chosen>[] =>
  Object.entries(EXCLUSIVE).flatMap(([group, tags]): FormField<Chosen, Chosen>[] => {
    const own: readonly FeatureTag[] = tags.filter((tag) => has(features, tag));
    if (own.length === 0) return [];
    const without = (chosen: Chosen) => chosen.filter((tag) => !own.includes(tag));
    return [
      {
        is: 'choice',
        label: `letters.feature.${group as keyof typeof EXCLUSIVE}`,
        of: () => [
          { value: AS_DRAWN, label: t('letters.feature.asDrawn') },
          ...own.map((tag) => ({ value: tag as string, label: nameOf({ tag, name: null }) })),
        ],
        get: (chosen) => chosen.find((tag) => own.includes(tag)) ?? AS_DRAWN,
        put: (value, chosen) => inOrder([...without(chosen), ...own.filter((tag) => tag === value)]),
      },
    ];
  });

const AS_DRAWN = '';
const GROUPED: readonly string[] = Object.values(EXCLUSIVE).flat();

/** Features that are chosen or not, in the order of the table. */
const switchFields = (features: readonly FontFeature[]): FormField<Chosen, Chosen>[] =>
  FEATURE_TAGS.filter((tag) => !GROUPED.includes(tag)).flatMap((tag): FormField<Chosen, Chosen>[] => {
    const feature = features.find((one) => one.tag === tag);
    if (!feature) return [];
    return [
      {
        is: 'switch',
        label: { name: nameOf(feature) },
        get: (chosen) => chosen.includes(tag),
        put: (on, chosen) => inOrder(on ? [...chosen, tag] : chosen.filter((other) => other !== tag)),
      },
    ];
  });

/** As OpenType registers it; a stylistic set with the name that the font gives it. */
function nameOf({ tag, name }: FontFeature): string {
  const set = stylisticSet(tag);
  if (set === null) return t(`letters.feature.${tag}` as WordKey);
  const told = t('letters.feature.set', { number: set });
  return name ? `${told}: ${name}` : told;
}
