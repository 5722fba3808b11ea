import { memo, useState } from 'react';
import { Field } from './Field.tsx';

export interface Choice<V extends string> {
  readonly value: V;
  readonly label: string;
  /** Heading it stands under. */
  readonly group?: string | undefined;
}

/** The names of what has one. */
export const namesOf = (all: readonly { readonly id: string; readonly name: string }[]): Choice<string>[] =>
  all.map(({ id, name }) => ({ value: id, label: name }));

interface ChoiceFieldProps<V extends string> {
  readonly label: string;
  readonly value: V;
  readonly choices: readonly Choice<V>[];
  readonly onCommit: (value: V) => void;
  readonly hint?: string | undefined;
  readonly quiet?: boolean | undefined;
  readonly disabled?: boolean | undefined;
}

/** A longer list is made when a hand or the focus comes to it: it may be every part of the design. */
const LONG = 24;

/** One of a list, by the device's own list control, which hands and screen readers know. */
export function ChoiceField<V extends string>(props: ChoiceFieldProps<V>) {
  const { label, value, choices, onCommit, hint, quiet, disabled } = props;
  const [open, setOpen] = useState(false);
  const whole = open || choices.length <= LONG;
  const come = () => setOpen(true);
  return (
    <Field label={label} hint={hint} quiet={quiet}>
      {(ids) => (
        <div className="input choice">
          <select
            id={ids.control}
            aria-describedby={ids.described}
            disabled={disabled}
            value={value}
            onChange={(e) => onCommit(e.currentTarget.value as V)}
            onFocus={come}
            onPointerDown={come}
          >
            <Options choices={whole ? choices : shownOf(choices, value)} />
          </select>
        </div>
      )}
    </Field>
  );
}

/** What shows of a list that is closed: its value, or the first where that is none of them. */
const shownOf = <V extends string>(choices: readonly Choice<V>[], value: V): readonly Choice<V>[] => {
  const shown = choices.find((choice) => choice.value === value) ?? choices[0];
  return shown ? [shown] : [];
};

/** What there is to choose from; while it says the same it is not made anew. */
const Options = memo(
  function Options({ choices }: { choices: readonly Choice<string>[] }) {
    const groups = [...new Set(choices.map((c) => c.group))];
    const options = (group: string | undefined) =>
      choices
        .filter((c) => c.group === group)
        .map((c) => (
          <option key={c.value} value={c.value}>
            {c.label}
          </option>
        ));
    return groups.map((group) =>
      group === undefined ? (
        options(group)
      ) : (
        <optgroup key={group} label={group}>
          {options(group)}
        </optgroup>
      ),
    );
  },
  (before, now) => sameChoices(before.choices, now.choices),
);

/** Whether two lists offer the same under the same words. */
export const sameChoices = (before: readonly Choice<string>[], now: readonly Choice<string>[]): boolean =>
  before === now || (before.length === now.length && before.every((one, i) => isSame(one, now[i])));

const isSame = (a: Choice<string>, b: Choice<string> | undefined): boolean =>
  a.value === b?.value && a.label === b.label && a.group === b.group;
