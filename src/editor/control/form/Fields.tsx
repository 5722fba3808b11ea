import { memo, useCallback, useRef } from 'react';
import type { Design } from '../../../design/schema.ts';
import { sameValue } from '../../../list/sameValue.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { type Choice, ChoiceField, sameChoices } from '../ChoiceField.tsx';
import { ColorField } from '../ColorField.tsx';
import { MeasureField } from '../MeasureField.tsx';
import { NumberField } from '../NumberField.tsx';
import { SwitchField } from '../SwitchField.tsx';
import { TextField } from '../TextField.tsx';
import { changeBy, type FormField, type Label, labelText, type Named, shownIn } from './formField.ts';
import { UnitField } from './UnitField.tsx';

interface FieldsProps<T, C> {
  readonly of: readonly FormField<T, C>[];
  readonly value: T;
  readonly onChange: (change: C, label: Label) => void;
  /** What is wrong with the value that a field shows. */
  readonly errorOf?: ((label: Label) => string | undefined) | undefined;
}

/** The fields of a form by their table, in its order. */
export function Fields<T, C = Partial<T>>({ of, value, ...rest }: FieldsProps<T, C>) {
  const design = useSettledDesign();
  return of.map((field) => {
    if (!(field.when?.(value, design) ?? true)) return null;
    const key = typeof field.label === 'string' ? field.label : field.label.name;
    const one = <OneField key={key} field={field} value={value} design={design} {...rest} />;
    if (!field.place) return one;
    return (
      <div key={key} className={field.place}>
        {one}
      </div>
    );
  });
}

/** The fields of a form in columns, two of them where not said otherwise. */
export function FieldGrid<T, C = Partial<T>>({
  three,
  ...fields
}: FieldsProps<T, C> & { readonly three?: boolean }) {
  return (
    <div className={three ? 'fields three' : 'fields'}>
      <Fields {...fields} />
    </div>
  );
}

/*
 * A form follows a drag, and most of its fields show what they showed: those are not rendered again. What they give is
 * taken by the form as it is then, so that nothing older is written.
 */
const Measure = memo(MeasureField);
const Amount = memo(UnitField);
const Count = memo(NumberField);
const Switch = memo(SwitchField);
const Line = memo(TextField);
const Color = memo(ColorField);
const OneOf = memo(
  ChoiceField<string>,
  ({ choices: before, ...was }, { choices: now, ...is }) => sameChoices(before, now) && sameValue(was, is),
);

interface OneFieldProps<T, C> extends Omit<FieldsProps<T, C>, 'of'> {
  readonly field: FormField<T, C>;
  readonly design: Design;
}

function OneField<T, C>({ field, value, design, onChange, errorOf }: OneFieldProps<T, C>) {
  const t = useWords();
  const by = <R,>(told: R | ((value: T, design: Design) => R)): R =>
    typeof told === 'function' ? (told as (value: T, design: Design) => R)(value, design) : told;
  const { hint, hintOf, quiet } = field;
  const shared = {
    label: labelText(field.label),
    hint: hint ? t(hint) : hintOf?.(value, design),
    disabled: field.off?.(value),
  };
  const shown = shownIn(field, value);
  const latest = useRef((_: unknown) => {});
  latest.current = (typed) => {
    const change = changeBy(field, givenBy(field, typed), value);
    if (change !== null) onChange(change, field.label);
  };
  const take = useCallback((typed: unknown) => latest.current(typed), []);
  switch (field.is) {
    case 'length': {
      const error = errorOf?.(field.label);
      const range = { min: by(field.min), max: by(field.max) };
      return (
        <Measure {...shared} {...range} quiet={quiet} error={error} value={shown as number} onCommit={take} />
      );
    }
    case 'number': {
      const { step, whole } = field;
      const range = { min: by(field.min), max: by(field.max), step, whole, unit: by(field.unit) };
      return <Count {...shared} {...range} value={shown as number} onCommit={take} />;
    }
    case 'share': {
      const percent = Math.round((shown as number) * 1000) / 10;
      const range = { min: by(field.min), max: by(field.max), step: field.step, unit: '%' };
      return <Count {...shared} {...range} value={percent} onCommit={take} />;
    }
    case 'amount': {
      const { step, digits } = field;
      const range = { min: by(field.min), max: by(field.max), step, digits };
      const unit = field.unit(design.measure);
      return <Amount {...shared} {...range} unit={unit} value={shown as number} onCommit={take} />;
    }
    case 'choice': {
      const choices = optionsOf(field.of as Offered<T>, value, design, t);
      return <OneOf {...shared} quiet={quiet} choices={choices} value={shown as string} onCommit={take} />;
    }
    case 'switch':
      return <Switch {...shared} value={shown as boolean} onCommit={take} />;
    case 'text':
      return <Line {...shared} value={shown as string} onCommit={take} />;
    case 'color':
      return <Color label={shared.label} value={shown as string} onCommit={take} />;
  }
}

/** What is kept of what a control gives. */
function givenBy<T, C>(field: FormField<T, C>, typed: unknown): unknown {
  if (field.is === 'share') return (typed as number) / 100;
  if (field.is === 'amount') return Math.min(field.most ?? Number.POSITIVE_INFINITY, typed as number);
  return typed;
}

type Offered<T> = readonly Named<string>[] | ((value: T, design: Design) => readonly Choice<string>[]);

const optionsOf = <T,>(of: Offered<T>, value: T, design: Design, t: (key: WordKey) => string) =>
  typeof of === 'function' ? of(value, design) : of.map((one) => ({ value: one.value, label: t(one.words) }));
