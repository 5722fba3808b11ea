import { useMemo } from 'react';
import type { Face } from '../../../bed/face.ts';
import type { Design, FreeEnd, Strip } from '../../../design/schema.ts';
import type { Choice } from '../../control/ChoiceField.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { referenceName } from '../../edit/sentence.ts';
import { useFace, useSettledDesign } from '../../state/hooks.ts';
import { t, useLanguage } from '../../words/t.ts';

interface EndFieldsProps {
  readonly part: Pick<Strip, 'id' | 'ends'>;
  readonly onCommit: (ends: Strip['ends']) => void;
}

/** An end, with what it can be. */
interface Asked {
  readonly end: FreeEnd;
  readonly choices: readonly Choice<string>[];
}

/** Before what an end stops at, among the other cuts; no cut is called so. */
const STOP = 'stop:';

function cutOf(choice: string): FreeEnd {
  if (choice.startsWith(STOP)) return { cut: 'stop', at: choice.slice(STOP.length) };
  if (choice === 'miter') return { cut: 'miter', angle: 45 };
  return { cut: choice === 'return' ? 'return' : 'square' };
}

const fieldsFor = (label: 'wood.startEnd' | 'wood.endEnd'): readonly FormField<Asked, FreeEnd>[] => [
  {
    is: 'choice',
    label,
    of: ({ choices }) => choices,
    get: ({ end }) => (end.cut === 'stop' ? STOP + end.at : end.cut),
    put: cutOf,
  },
  {
    is: 'number',
    label: 'end.angle',
    unit: '°',
    min: -79,
    max: 79,
    when: ({ end }) => end.cut === 'miter',
    get: ({ end }) => (end.cut === 'miter' ? end.angle : 0),
    put: (angle) => ({ cut: 'miter', angle }),
  },
];

const FIELDS = { start: fieldsFor('wood.startEnd'), end: fieldsFor('wood.endEnd') };

/** What an end can be: cut by itself, or to the border of something. */
function choicesFor(design: Design, { levels }: Face, id: string, end: FreeEnd): readonly Choice<string>[] {
  const borders = [
    ...design.parts.filter((other) => other.id !== id).map((other) => other.id),
    ...levels.map((level) => `level:${level.id}`),
    'face',
  ];
  const lost = end.cut === 'stop' && !borders.includes(end.at) ? [end.at] : [];
  const group = t('cut.stop');
  return [
    ...(['square', 'miter', 'return'] as const).map((value) => ({ value, label: t(`cut.${value}`) })),
    ...[...lost, ...borders].map((at) => ({
      value: STOP + at,
      label: t('cut.stopAt', { name: referenceName(design, at) }),
      group,
    })),
  ];
}

/** How the two free ends are cut: square, at an angle, or to the border of what they end at. */
export function EndFields({ part: { id, ends }, onCommit }: EndFieldsProps) {
  const language = useLanguage();
  const design = useSettledDesign();
  const face = useFace();
  const { start, end } = ends;
  // Every part is named: while one is dragged they stay what they are called.
  const choices = useMemo(() => {
    void language;
    return { start: choicesFor(design, face, id, start), end: choicesFor(design, face, id, end) };
  }, [design, face, id, start, end, language]);
  return (['start', 'end'] as const).map((which) => (
    <div key={which} className="field-pair">
      <Fields
        of={FIELDS[which]}
        value={{ end: ends[which], choices: choices[which] }}
        onChange={(changed) => onCommit({ ...ends, [which]: changed })}
      />
    </div>
  ));
}
