import type { Design } from '../../../design/schema.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { type Choice, ChoiceField } from '../ChoiceField.tsx';
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
  const take = (next: unknown) => {
    const change = changeBy(field, next, value);
    if (change !== null) onChange(change, field.label);
  };
  switch (field.is) {
    case 'length': {
      const error = errorOf?.(field.label);
      const range = { min: by(field.min), max: by(field.max) };
      return (
        <MeasureField
          {...shared}
          {...range}
          quiet={quiet}
          error={error}
          value={shown as number}
          onCommit={take}
        />
      );
    }
    case 'number': {
      const { step, whole } = field;
      const range = { min: by(field.min), max: by(field.max), step, whole, unit: by(field.unit) };
      return <NumberField {...shared} {...range} value={shown as number} onCommit={take} />;
    }
    case 'share': {
      const percent = Math.round((shown as number) * 1000) / 10;
      const range = { min: by(field.min), max: by(field.max), step: field.step, unit: '%' };
      return <NumberField {...shared} {...range} value={percent} onCommit={(next) => take(next / 100)} />;
    }
    case 'amount': {
      const { step, digits, most = Number.POSITIVE_INFINITY } = field;
      const range = { min: by(field.min), max: by(field.max), step, digits };
      const unit = field.unit(design.measure);
      const limited = (next: number) => take(Math.min(most, next));
      return <UnitField {...shared} {...range} unit={unit} value={shown as number} onCommit={limited} />;
    }
    case 'choice': {
      const choices = optionsOf(field.of as Offered<T>, value, design, t);
      return (
        <ChoiceField {...shared} quiet={quiet} choices={choices} value={shown as string} onCommit={take} />
      );
    }
    case 'switch':
      return <SwitchField {...shared} value={shown as boolean} onCommit={take} />;
    case 'text':
      return <TextField {...shared} value={shown as string} onCommit={take} />;
    case 'color':
      return <ColorField label={shared.label} value={shown as string} onCommit={take} />;
  }
}

type Offered<T> = readonly Named<string>[] | ((value: T, design: Design) => readonly Choice<string>[]);

const optionsOf = <T,>(of: Offered<T>, value: T, design: Design, t: (key: WordKey) => string) =>
  typeof of === 'function' ? of(value, design) : of.map((one) => ({ value: one.value, label: t(one.words) }));
