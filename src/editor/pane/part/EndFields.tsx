import type { FreeEnd, Strip } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';

interface EndFieldsProps {
  readonly ends: Strip['ends'];
  readonly onCommit: (ends: Strip['ends']) => void;
}

const fieldsFor = (label: 'end.start' | 'end.end'): readonly FormField<FreeEnd, FreeEnd>[] => [
  {
    is: 'choice',
    label,
    of: named('cut', ['square', 'miter', 'return']),
    get: ({ cut }) => cut,
    put: (cut: FreeEnd['cut']) => (cut === 'miter' ? { cut, angle: 45 } : { cut }),
  },
  {
    is: 'number',
    label: 'end.angle',
    unit: '°',
    min: -79,
    max: 79,
    when: ({ cut }) => cut === 'miter',
    get: (end) => (end.cut === 'miter' ? end.angle : 0),
    put: (angle) => ({ cut: 'miter', angle }),
  },
];

const FIELDS = { start: fieldsFor('end.start'), end: fieldsFor('end.end') };

/** How the two free ends are cut. */
export function EndFields({ ends, onCommit }: EndFieldsProps) {
  return (['start', 'end'] as const).map((which) => (
    <div key={which} className="field-pair">
      <Fields
        of={FIELDS[which]}
        value={ends[which]}
        onChange={(end) => onCommit({ ...ends, [which]: end })}
      />
    </div>
  ));
}
