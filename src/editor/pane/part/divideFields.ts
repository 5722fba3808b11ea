import type { SpaceNames } from '../../../layout/arrange/space.ts';
import type { Choice } from '../../control/ChoiceField.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { finishChoices, stockChoices } from '../facts/choices.ts';

/** What bounds the space that is divided. */
export interface Sides extends SpaceNames {
  /** What each side may be. */
  readonly places: readonly Choice<string>[];
}

/** How a space is divided. */
export interface Division {
  readonly columns: number;
  readonly rows: number;
  readonly upright: string;
  readonly across: string;
  readonly through: 'up' | 'across' | 'lap';
  readonly finish: string;
  readonly framed: boolean;
}

export const SIDES = ['left', 'right', 'bottom', 'top'] as const;

export const SIDE_FIELDS = SIDES.map(
  (field): FormField<Sides> => ({
    is: 'choice',
    label: `divide.${field}`,
    field,
    of: ({ places }) => places,
  }),
);

export const DIVISION_FIELDS: readonly FormField<Division>[] = [
  { is: 'number', label: 'divide.columns', field: 'columns', whole: true, min: 1, max: 40 },
  { is: 'number', label: 'divide.rows', field: 'rows', whole: true, min: 1, max: 40 },
  {
    is: 'choice',
    label: 'divide.uprights',
    field: 'upright',
    of: ({ upright }, design) => stockChoices(design, ['flat', 'shaped'], upright),
  },
  {
    is: 'choice',
    label: 'divide.rails',
    field: 'across',
    of: ({ across }, design) => stockChoices(design, ['flat', 'shaped'], across),
  },
  {
    is: 'choice',
    label: 'divide.through',
    field: 'through',
    of: named('through', ['up', 'across', 'lap']),
  },
  { is: 'choice', label: 'part.finish', field: 'finish', of: (_, design) => finishChoices(design) },
  { is: 'switch', label: 'divide.framed', field: 'framed', place: 'wide' },
];
