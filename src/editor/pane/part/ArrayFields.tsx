import type { PartArray, Spacing } from '../../../design/schema.ts';
import { inches } from '../../../measure/units.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { useWords } from '../../words/t.ts';
import { MemberFields } from './MemberFields.tsx';
import { MemberGrid } from './MemberGrid.tsx';
import { usePart } from './usePart.ts';

const MODES = ['single', 'gaps', 'flush', 'half', 'centers', 'most'] as const;

function spacedBy(mode: (typeof MODES)[number], spacing: Spacing | null): Spacing | null {
  if (mode === 'single') return null;
  const count = spacing?.count ?? 5;
  if (mode === 'centers') return { mode, count, pitch: spacing?.pitch ?? inches(3) };
  if (mode === 'most') return { mode, count, most: spacing?.most ?? inches(2) };
  return { mode, count };
}

const MODE_FIELDS: readonly FormField<Spacing | null, Spacing | null>[] = [
  {
    is: 'choice',
    label: 'array.spacing',
    of: named('even', MODES),
    get: (spacing) => spacing?.mode ?? 'single',
    put: spacedBy,
  },
];

const SPACING_FIELDS: readonly FormField<Spacing>[] = [
  {
    is: 'number',
    label: 'array.count',
    field: 'count',
    whole: true,
    min: 1,
    max: 400,
    when: ({ mode }) => mode !== 'most',
  },
  {
    is: 'length',
    label: 'array.pitch',
    min: 1,
    when: ({ mode }) => mode === 'centers',
    get: ({ pitch = 0 }) => pitch,
    put: (pitch) => ({ pitch }),
  },
  {
    is: 'length',
    label: 'array.most',
    min: 1,
    when: ({ mode }) => mode === 'most',
    get: ({ most = 0 }) => most,
    put: (most) => ({ most }),
  },
];

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
  return (
    <fieldset className="sub">
      <legend>{label}</legend>
      <div className="fields">
        <Fields of={MODE_FIELDS} value={spacing} onChange={onCommit} />
        {spacing ? (
          <Fields
            of={SPACING_FIELDS}
            value={spacing}
            onChange={(fields) => onCommit({ ...spacing, ...fields })}
          />
        ) : null}
      </div>
    </fieldset>
  );
}
