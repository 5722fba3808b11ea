import type { PartArray, Spacing } from '../../../design/schema.ts';
import { inches } from '../../../measure/units.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useWords } from '../../words/t.ts';
import { MemberFields } from './MemberFields.tsx';
import { MemberGrid } from './MemberGrid.tsx';
import { usePart } from './usePart.ts';

const MODES = ['gaps', 'flush', 'half', 'centers', 'most'] as const;

/** How many are spaced how in rows and columns, what is repeated, and which ones differ. */
export function ArrayFields({ part }: { part: PartArray }) {
  const t = useWords();
  const { change } = usePart(part);
  return (
    <>
      <SpacingFields
        label={t('array.across')}
        spacing={part.across}
        onCommit={(across) => change({ across })}
      />
      <SpacingFields label={t('array.up')} spacing={part.up} onCommit={(up) => change({ up })} />
      <MemberFields part={part} />
      <MemberGrid part={part} />
    </>
  );
}

interface SpacingFieldsProps {
  readonly label: string;
  readonly spacing: Spacing | null;
  readonly onCommit: (spacing: Spacing | null) => void;
}

function SpacingFields({ label, spacing, onCommit }: SpacingFieldsProps) {
  const t = useWords();
  const pick = (mode: (typeof MODES)[number] | 'single') => {
    if (mode === 'single') onCommit(null);
    else {
      const count = spacing?.count ?? 5;
      if (mode === 'centers') onCommit({ mode, count, pitch: spacing?.pitch ?? inches(3) });
      else if (mode === 'most') onCommit({ mode, count, most: spacing?.most ?? inches(2) });
      else onCommit({ mode, count });
    }
  };
  return (
    <fieldset className="sub">
      <legend>{label}</legend>
      <div className="fields">
        <ChoiceField
          label={t('array.spacing')}
          value={spacing?.mode ?? 'single'}
          choices={(['single', ...MODES] as const).map((value) => ({ value, label: t(`even.${value}`) }))}
          onCommit={pick}
        />
        {spacing && spacing.mode !== 'most' ? (
          <NumberField
            label={t('array.count')}
            whole
            min={1}
            max={400}
            value={spacing.count}
            onCommit={(count) => onCommit({ ...spacing, count })}
          />
        ) : null}
        {spacing?.mode === 'centers' ? (
          <MeasureField
            label={t('array.pitch')}
            min={1}
            value={spacing.pitch ?? 0}
            onCommit={(pitch) => onCommit({ ...spacing, pitch })}
          />
        ) : null}
        {spacing?.mode === 'most' ? (
          <MeasureField
            label={t('array.most')}
            min={1}
            value={spacing.most ?? 0}
            onCommit={(most) => onCommit({ ...spacing, most })}
          />
        ) : null}
      </div>
    </fieldset>
  );
}
