import type { Design } from '../../../design/schema.ts';
import type { MeasureStyle } from '../../../measure/style.ts';
import type { Mm } from '../../../measure/units.ts';
import { t, type WordKey } from '../../words/t.ts';
import type { Choice } from '../ChoiceField.tsx';
import type { FieldUnit } from './UnitField.tsx';

/** What a field says or allows: always the same, or by the value that the form is about. */
type By<T, R> = R | ((value: T, design: Design) => R);

/** One of a list, told by its words in the language on screen. */
export interface Named<V extends string> {
  readonly value: V;
  readonly words: WordKey;
}

/** Choices whose words stand under one name: `named('grain', ['up', 'across'])` says `grain.up` and `grain.across`. */
export const named = <const V extends readonly string[], P extends string>(
  under: P,
  of: V & (`${P}.${V[number]}` extends WordKey ? V : never),
): readonly Named<V[number]>[] => of.map((value) => ({ value, words: `${under}.${value}` as WordKey }));

type Options<T, V extends string> =
  | readonly Named<V>[]
  | ((value: T, design: Design) => readonly Choice<V>[]);

/** Names of what a value holds of a type. */
type Keys<T, V> = { [K in keyof T]-?: [T[K]] extends [V] ? K : never }[keyof T] & string;

/** A field that shows what is derived, and says what changes when it is given. */
interface Derived<T, C, V> {
  readonly get: (value: T) => V;
  // A method, so that a choice may name its own few values. Null: nothing changes.
  put(next: V, value: T): C | null;
}

/** Where a field stands: under a name of the value, or derived from it. */
type At<T, C, V> = { readonly field: Keys<T, V> } | Derived<T, C, V>;

/** What a field is called: words of ours, or what bears a name of its own, as a stock or a can does. */
export type Label = WordKey | { readonly name: string };

export const labelText = (label: Label): string => (typeof label === 'string' ? t(label) : label.name);

interface Shared<T> {
  readonly label: Label;
  /** Spoken alone: what stands around it shows what it is. */
  readonly quiet?: boolean;
  readonly hint?: WordKey;
  // A field of its own: beside thousands of keys in one union, inference of `T` would try each with each.
  readonly hintOf?: (value: T, design: Design) => string | undefined;
  /** The width of the form, or the level of its inputs. */
  readonly place?: 'wide' | 'low';
  /** Asked for only where it counts. */
  readonly when?: (value: T, design: Design) => boolean;
  /** Shown but not to be changed. */
  readonly off?: (value: T) => boolean;
}

interface Range<T> {
  readonly min?: By<T, number>;
  readonly max?: By<T, number>;
}

type OfLength<T, C> = Range<T> & { readonly is: 'length' } & At<T, C, Mm>;
type OfNumber<T, C> = Range<T> & {
  readonly is: 'number';
  readonly step?: number;
  readonly whole?: true;
  readonly unit?: By<T, string>;
} & At<T, C, number>;
/** A share of 1, typed as percent; its range is in percent. */
type OfShare<T, C> = Range<T> & { readonly is: 'share'; readonly step?: number } & At<T, C, number>;
/** Kept in one unit and typed in another; its range is in the unit typed. */
type OfAmount<T, C> = Range<T> & {
  readonly is: 'amount';
  readonly unit: (measure: MeasureStyle) => FieldUnit;
  readonly digits: number;
  readonly step?: number;
  /** In the unit kept: more is taken as this much. */
  readonly most?: number;
} & At<T, C, number>;
type OfChoice<T, C> = { readonly is: 'choice' } & (
  | {
      [K in Keys<T, string>]: { readonly field: K; readonly of: Options<T, T[K] & string> };
    }[Keys<T, string>]
  | (Derived<T, C, string> & { readonly of: Options<T, string> })
);
type OfSwitch<T, C> = { readonly is: 'switch' } & At<T, C, boolean>;
type OfText<T, C> = { readonly is: 'text' | 'color' } & At<T, C, string>;

/**
 * A field of a form as data: what it is called, what is typed in it, within which limits, where it is kept. `T` is what
 * the form is about; `C` is what a change of it is told as, usually those of its fields that change.
 */
export type FormField<T, C = Partial<T>> = Shared<T> &
  (
    | OfLength<T, C>
    | OfNumber<T, C>
    | OfShare<T, C>
    | OfAmount<T, C>
    | OfChoice<T, C>
    | OfSwitch<T, C>
    | OfText<T, C>
  );

/** What a field shows of a value. */
export const shownIn = <T, C>(field: FormField<T, C>, value: T): unknown =>
  'get' in field ? field.get(value) : value[field.field as keyof T];

/** The change that a field makes when it is given something else; null for none. */
export const changeBy = <T, C>(field: FormField<T, C>, next: unknown, value: T): C | null =>
  'put' in field ? field.put(next as never, value) : ({ [field.field]: next } as C);

/** Fields of what a value holds under a name; they are not asked for where it holds nothing there. */
export function within<T, K extends keyof T & string>(
  name: K,
  fields: readonly FormField<NonNullable<T[K]>>[],
): readonly FormField<T>[] {
  type Part = NonNullable<T[K]>;
  const inner = (value: T) => value[name] as Part;
  return fields.map((field) => {
    const lifted = Object.entries(field).map(([key, told]) =>
      typeof told === 'function' && !(field.is === 'amount' && key === 'unit')
        ? [key, (value: T, design: Design) => told(inner(value), design)]
        : [key, told],
    );
    const { field: _, ...rest } = Object.fromEntries(lifted);
    return {
      ...rest,
      when: (value: T, design: Design) =>
        value[name] !== null && value[name] !== undefined && (field.when?.(inner(value), design) ?? true),
      get: (value: T) => shownIn(field, inner(value)),
      put: (next: unknown, value: T) => {
        const change = changeBy(field, next, inner(value));
        return change && { [name]: { ...inner(value), ...change } };
      },
    } as FormField<T>;
  });
}
