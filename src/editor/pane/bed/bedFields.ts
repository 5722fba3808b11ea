import type { Bed } from '../../../design/schema.ts';
import type { LengthUnit } from '../../../measure/style.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
import { tables } from '../../shipped/tables.ts';
import { t, type WordKey } from '../../words/t.ts';
import { frameBoardOf, frameBoards } from './frameBoards.ts';

export type BedField = FormField<Bed>;

export interface BedSection {
  readonly words: WordKey;
  readonly fields: readonly BedField[];
}

const woods = () => namesOf(tables().materials);
const PAST = named('bed.past', ['sides', 'ends']);

/** The measure at which a check of the bed is mended, by what has no room or, for legs that do not reach, by its code. */
export const MENDED_AT: Readonly<Record<string, WordKey>> = {
  platform: 'bed.platformThickness',
  cleats: 'bed.cleatsBelow',
  field: 'size.width',
  legs: 'bed.legsFromEnd',
  'bed.legs': 'bed.legsLength',
};

/** Every measure of the bed and what it is made of, in the order in which it is measured. */
export const BED_SECTIONS: readonly BedSection[] = [
  {
    words: 'bed.mattressSize',
    fields: [
      ...within<Bed, 'mattress'>('mattress', [
        { is: 'length', label: 'bed.mattressWidth', field: 'width', min: 100 },
        { is: 'length', label: 'bed.mattressLength', field: 'length', min: 100 },
        { is: 'length', label: 'bed.mattressThickness', field: 'thickness', min: 1 },
      ]),
      ...within<Bed, 'allowance'>('allowance', [
        { is: 'length', label: 'bed.allowanceWidth', field: 'width' },
        { is: 'length', label: 'bed.allowanceLength', field: 'length' },
      ]),
    ],
  },
  {
    words: 'bed.frame',
    fields: within<Bed, 'frame'>('frame', [
      { is: 'length', label: 'size.thickness', field: 'thickness', min: 1 },
      { is: 'length', label: 'size.depth', field: 'depth', min: 1 },
      { is: 'choice', label: 'bed.runsPast', field: 'runsPast', of: PAST },
      { is: 'choice', label: 'bed.wood', field: 'material', of: woods },
    ]),
  },
  {
    words: 'bed.platform',
    fields: within<Bed, 'platform'>('platform', [
      { is: 'length', label: 'bed.platformThickness', field: 'thickness', min: 1 },
      { is: 'choice', label: 'bed.wood', field: 'material', of: woods },
    ]),
  },
  {
    words: 'bed.cleats',
    fields: within<Bed, 'cleats'>('cleats', [
      { is: 'length', label: 'bed.cleatsBelow', field: 'below', hint: 'bed.cleatsBelowHint' },
      { is: 'length', label: 'size.width', field: 'width', min: 1 },
      { is: 'length', label: 'size.depth', field: 'depth', min: 1 },
      { is: 'choice', label: 'bed.runsPast', field: 'runsPast', of: PAST },
    ]),
  },
  {
    words: 'bed.pivot',
    fields: within<Bed, 'pivot'>('pivot', [
      { is: 'length', label: 'bed.pivotHeight', field: 'height', min: 1 },
      { is: 'length', label: 'bed.pivotFromFace', field: 'fromFace', min: -10_000 },
      { is: 'length', label: 'bed.pivotFromWall', field: 'fromWall', min: 1 },
      { is: 'length', label: 'bed.pivotAboveEdge', field: 'aboveEdge', min: -10_000 },
    ]),
  },
  {
    words: 'bed.legs',
    fields: within<Bed, 'legs'>('legs', [
      {
        is: 'choice',
        label: 'bed.legsWhere',
        field: 'where',
        place: 'wide',
        of: named('bed.legsWhere', ['beside', 'on-face']),
      },
      { is: 'length', label: 'bed.legsLength', field: 'length', min: 1 },
      { is: 'length', label: 'bed.legsSection', field: 'section', min: 1 },
      { is: 'length', label: 'bed.legsFromEnd', field: 'fromEnd' },
      {
        is: 'length',
        label: 'bed.legsFromSide',
        field: 'fromSide',
        when: ({ where }) => where === 'on-face',
      },
    ]),
  },
  {
    words: 'bed.roomAround',
    fields: [
      { is: 'length', label: 'bed.ceiling', field: 'ceiling', min: 100 },
      ...within<Bed, 'wallBoard'>('wallBoard', [
        { is: 'length', label: 'bed.wallBoardThickness', field: 'thickness' },
        { is: 'length', label: 'bed.wallBoardHeight', field: 'height' },
      ]),
    ],
  },
];

/** The board that the frame is made of, by the name it is sold under where one measures so. */
export const frameBoardField = (unit: LengthUnit): BedField => ({
  is: 'choice',
  label: 'bed.frameBoard',
  place: 'wide',
  of: () => [
    { value: 'own', label: t('bed.ownSize') },
    ...frameBoards(unit).map(({ name }) => ({ value: name, label: name })),
  ],
  get: ({ frame }) => frameBoardOf(frame, unit)?.name ?? 'own',
  put: (name, { frame }) => {
    const { thickness, depth } = frameBoards(unit).find((one) => one.name === name) ?? frame;
    return { frame: { ...frame, thickness, depth } };
  },
});

export const SKIN_FIELDS: readonly BedField[] = [
  {
    is: 'switch',
    label: 'bed.hasSkin',
    hint: 'bed.skinHint',
    place: 'wide',
    get: ({ skin }) => skin !== null,
    put: (on) => ({ skin: on ? { thickness: 6.35, material: 'plywood' } : null }),
  },
  ...within<Bed, 'skin'>('skin', [
    { is: 'length', label: 'bed.skinThickness', field: 'thickness', min: 0.5 },
  ]),
];

const besideOn = (side: 'left' | 'right'): readonly FormField<Bed['beside']>[] => [
  {
    is: 'switch',
    label: `bed.beside.${side}`,
    get: (beside) => beside[side] !== null,
    put: (on) => ({ [side]: on ? 50 : null }),
  },
  {
    is: 'length',
    label: 'bed.room',
    when: (beside) => beside[side] !== null,
    get: (beside) => beside[side] ?? 0,
    put: (mm) => ({ [side]: mm }),
  },
];

/** What stands to the left and to the right of the bed, and how far off. */
export const BESIDE_FIELDS = [besideOn('left'), besideOn('right')];
