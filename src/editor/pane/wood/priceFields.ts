import type { ShedSupplies } from '../../../design/schema.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { tables } from '../../shipped/tables.ts';
import { lengthText } from '../../words/text.ts';

/** A length or, with a width, a size that a stock is sold in. */
export interface Size {
  readonly length: number;
  readonly width?: number;
  readonly price: number;
}

/** Of boards and moldings. */
export const LENGTH_FIELDS: readonly FormField<Size>[] = [
  { is: 'length', label: 'size.length', field: 'length', min: 1 },
  { is: 'number', label: 'stock.price', field: 'price', unit: (_, { measure }) => measure.currency },
];

/** Of sheets. */
export const SIZE_FIELDS: readonly FormField<Size>[] = [
  { is: 'length', label: 'stock.along', field: 'length', min: 1 },
  {
    is: 'length',
    label: 'stock.across',
    min: 1,
    get: ({ width, length }) => width ?? length,
    put: (width) => ({ width }),
  },
  { is: 'number', label: 'stock.price', field: 'price', unit: (_, { measure }) => measure.currency },
];

export type Screws = ShedSupplies['owned']['screws'][number];

const lengthsOf = (screw: string) => tables().screws.find(({ id }) => id === screw)?.lengths ?? [];

export const SCREW_KIND: readonly FormField<Screws>[] = [
  {
    is: 'choice',
    label: 'fixing.screws',
    get: ({ screw }) => screw,
    put: (screw, { length }) => {
      const lengths = lengthsOf(screw);
      return { screw, length: lengths.includes(length) ? length : (lengths[0] ?? length) };
    },
    of: () => namesOf(tables().screws),
  },
];

export const SCREW_FIELDS: readonly FormField<Screws>[] = [
  {
    is: 'choice',
    label: 'size.length',
    get: ({ length }) => String(length),
    put: (length) => ({ length: Number(length) }),
    of: ({ screw }, design) =>
      lengthsOf(screw).map((mm) => ({ value: String(mm), label: lengthText(design, mm) })),
  },
  { is: 'number', label: 'shop.count', field: 'count', whole: true, min: 1, max: 100_000 },
];
