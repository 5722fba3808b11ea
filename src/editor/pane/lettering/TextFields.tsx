import { Plus } from 'lucide-react';
import { useState } from 'react';
import type { Edit } from '../../../design/edit/edit.ts';
import { FARTHEST } from '../../../design/limits.ts';
import type { Design, Lettering } from '../../../design/schema.ts';
import { pick } from '../../../list/at.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { type Line, lineAfterTyping } from '../../edit/letterSizes.ts';
import { t, useWords } from '../../words/t.ts';
import { LineFields } from './LineFields.tsx';
import { Pictures } from './Pictures.tsx';

export interface LetteringFieldsProps {
  readonly lettering: Lettering;
  readonly onChange: (fields: Partial<Lettering>) => void;
}

interface TextFieldsProps extends LetteringFieldsProps {
  /** A change that needs others before it, all in one step. */
  readonly onChangeAfter: (more: readonly Edit[], fields: Partial<Lettering>) => void;
  /** Characters that the font does not have. */
  readonly missing: readonly string[];
}

const ofCap = { is: 'share', hint: 'letters.ofCap' } as const;

/** Ready paths in the box of the board. Our own drawing. */
const READY = {
  wave: [
    { u: 0, v: 0.35, side: { as: 'smooth' } },
    { u: 0.25, v: 0.55, side: { as: 'smooth' } },
    { u: 0.75, v: 0.25, side: { as: 'smooth' } },
    { u: 1, v: 0.45 },
  ],
  hill: [
    { u: 0, v: 0.2, side: { as: 'smooth' } },
    { u: 0.5, v: 0.6, side: { as: 'smooth' } },
    { u: 1, v: 0.2 },
  ],
  slope: [
    { u: 0, v: 0.2 },
    { u: 1, v: 0.6 },
  ],
} as const satisfies Readonly<Record<string, Lettering['path']>>;

/** Paths that are drawn on the face and have two ends: a line of letters may run as they do. */
const openPathsOf = (parts: Design['parts']) =>
  parts.flatMap((part) =>
    'path' in part && part.path.form === 'points' && !part.path.closed
      ? [{ name: part.name, points: part.path.points }]
      : [],
  );

const FIELDS: readonly FormField<Lettering>[] = [
  {
    is: 'choice',
    label: 'lettering.fit',
    field: 'fit',
    of: named('fit', ['none', 'width', 'height', 'both', 'lines']),
  },
  {
    is: 'length',
    label: 'lettering.capHeight',
    field: 'capHeight',
    min: 1,
    off: ({ fit }) => fit !== 'none',
  },
  { is: 'length', label: 'rule.margin', field: 'margin' },
  {
    is: 'choice',
    label: 'letters.align',
    field: 'align',
    of: named('letters.align', ['left', 'center', 'right']),
  },
  { ...ofCap, label: 'letters.tracking', field: 'tracking', min: -50, max: 300 },
  { ...ofCap, label: 'letters.wordSpace', field: 'wordSpace', min: -50, max: 500 },
  { ...ofCap, label: 'letters.lineSpace', field: 'lineSpace', min: 50, max: 600 },
  {
    is: 'length',
    label: 'letters.arc',
    hint: 'letters.arcHint',
    field: 'arcRise',
    min: -5000,
    max: 5000,
    off: ({ along }) => along !== undefined,
  },
  {
    is: 'choice',
    label: 'letters.along',
    of: named('letters.along', ['straight', 'inside', 'outside', 'path']),
    get: ({ along }) => along ?? 'straight',
    put: (along: 'straight' | 'inside' | 'outside' | 'path', { path }) => ({
      along: along === 'straight' ? undefined : along,
      path: along === 'path' ? (path ?? READY.wave) : undefined,
    }),
  },
  {
    is: 'choice',
    label: 'letters.path',
    hint: 'letters.pathHint',
    place: 'wide',
    when: ({ along }) => along === 'path',
    of: ({ path }, { parts }) => {
      const drawn = openPathsOf(parts).map(({ name, points }) => ({ label: name, points }));
      const ready = Object.entries(READY).map(([id, points]) => ({
        ...{ label: t(`letters.path.${id as keyof typeof READY}`), points },
      }));
      const known = [...ready, ...drawn].map(({ label, points }) => ({
        label,
        value: JSON.stringify(points),
      }));
      const own = JSON.stringify(path);
      return known.some(({ value }) => value === own)
        ? known
        : [{ label: t('letters.path.own'), value: own }, ...known];
    },
    get: ({ path }) => JSON.stringify(path),
    put: (path) => ({ path: JSON.parse(path) as Lettering['path'] }),
  },
  {
    is: 'choice',
    label: 'letters.marks',
    of: named('letters.mark', ['none', 'bullet', 'number']),
    get: ({ lines }) => {
      const [first] = lines.flatMap(({ mark }) => mark ?? []);
      return first ?? 'none';
    },
    put: (mark: 'none' | 'bullet' | 'number', { lines }) => ({
      lines: lines.map((line) => ({ ...line, mark: mark === 'none' ? undefined : mark })),
    }),
  },
  ...within<Lettering, 'shift'>('shift', [
    { is: 'length', label: 'letters.shiftX', field: 'x', min: -FARTHEST },
    { is: 'length', label: 'letters.shiftY', field: 'y', min: -FARTHEST },
  ]),
  {
    is: 'switch',
    label: 'letters.kerning',
    field: 'kerning',
    place: 'wide',
    off: ({ optical }) => optical ?? false,
  },
  {
    is: 'switch',
    label: 'letters.optical',
    hint: 'letters.opticalHint',
    place: 'wide',
    get: ({ optical }) => optical ?? false,
    put: (optical) => ({ optical: optical || undefined }),
  },
];

/** What is written, how high, and how it is set. */
export function TextFields({ lettering, missing, onChange, onChangeAfter }: TextFieldsProps) {
  const t = useWords();
  const { lines } = lettering;
  /** The line that was typed in last, and where in it. */
  const [caret, setCaret] = useState<{ readonly line: number; readonly at: number } | null>(null);
  const put = (index: number, line: Line, more: readonly Edit[] = []) =>
    onChangeAfter(more, { lines: lines.map((l, k) => (k === index ? line : l)) });
  const insert = (character: string, more?: readonly Edit[]) => {
    const index = Math.min(caret?.line ?? Infinity, lines.length - 1);
    const line = pick(lines, index);
    const at = Math.min(caret?.line === index ? caret.at : Infinity, line.text.length);
    put(index, lineAfterTyping(line, line.text.slice(0, at) + character + line.text.slice(at)), more);
    setCaret({ line: index, at: at + character.length });
  };
  return (
    <>
      <div className="lines">
        {lines.map((line, i) => (
          <LineFields
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no ids; they are told apart by their place
            key={i}
            lettering={lettering}
            line={line}
            missing={missing}
            number={i + 1}
            onChange={(next) => put(i, next)}
            onCaret={(at) => setCaret({ line: i, at })}
            onRemove={() => onChange({ lines: lines.filter((_, k) => k !== i) })}
          />
        ))}
        <Button
          icon={Plus}
          look="small"
          disabled={lines.length >= 40}
          onClick={() => onChange({ lines: [...lines, { text: '' }] })}
        >
          {t('letters.addLine')}
        </Button>
        <p className="note">{t('letters.ownSizeHint')}</p>
      </div>
      <Pictures lettering={lettering} onInsert={insert} />
      <FieldGrid three of={FIELDS} value={lettering} onChange={onChange} />
    </>
  );
}
