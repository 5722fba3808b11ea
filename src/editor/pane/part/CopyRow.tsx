import { useState } from 'react';
import type { Axis } from '../../../design/schema.ts';
import type { Arranged, Arranging } from '../../../layout/arrange/arranged.ts';
import { copyByRule } from '../../../layout/arrange/copy.ts';
import { inches, type Mm } from '../../../measure/units.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { useWords } from '../../words/t.ts';

interface CopyRowProps {
  readonly ids: readonly string[];
  readonly onApply: (make: (on: Arranging) => Arranged) => void;
}

const WAYS = ['right', 'left', 'up', 'down'] as const;

interface Copies {
  readonly way: (typeof WAYS)[number];
  readonly gap: Mm;
  readonly count: number;
}

const FIELDS: readonly FormField<Copies>[] = [
  { is: 'choice', label: 'copy.way', field: 'way', of: named('way', WAYS) },
  { is: 'length', label: 'rule.gap', field: 'gap', min: 0.1 },
  { is: 'number', label: 'copy.count', field: 'count', whole: true, min: 1, max: 50 },
];

/** Copies in a row, each held at the same gap from the one before. */
export function CopyRow({ ids, onApply }: CopyRowProps) {
  const t = useWords();
  const [copies, setCopies] = useState<Copies>({ way: 'right', gap: inches(2), count: 1 });
  const { way, gap, count } = copies;
  const axis: Axis = way === 'right' || way === 'left' ? 'x' : 'y';
  const sign = way === 'left' || way === 'down' ? -1 : 1;
  return (
    <fieldset className="sub">
      <legend>{t('copy.title')}</legend>
      <FieldGrid of={FIELDS} value={copies} onChange={(fields) => setCopies({ ...copies, ...fields })} />
      <div className="btn-row">
        <Button onClick={() => onApply((on) => copyByRule(on, ids, { axis, gap: sign * gap, count }))}>
          {t('copy.do')}
        </Button>
      </div>
    </fieldset>
  );
}
