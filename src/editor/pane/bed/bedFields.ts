import type { Bed } from '../../../design/schema.ts';
import type { Mm } from '../../../measure/units.ts';
import type { WordKey } from '../../words/t.ts';

/** A measure of the bed: its words, and where it stands. */
export interface BedField {
  readonly words: WordKey;
  readonly hint?: WordKey;
  readonly min?: Mm;
  /** Asked for only where it counts. */
  readonly when?: (bed: Bed) => boolean;
  readonly get: (bed: Bed) => Mm;
  readonly put: (bed: Bed, mm: Mm) => Bed;
}

export interface BedSection {
  readonly words: WordKey;
  readonly fields: readonly BedField[];
}

type Section = 'mattress' | 'allowance' | 'frame' | 'platform' | 'cleats' | 'pivot' | 'legs' | 'wallBoard';
type Lengths<S extends Section> = {
  [K in keyof Bed[S]]: Bed[S][K] extends number ? K : never;
}[keyof Bed[S]] &
  string;

function of<S extends Section>(
  section: S,
  key: Lengths<S>,
  words: WordKey,
  more: Pick<BedField, 'hint' | 'min' | 'when'> = {},
): BedField {
  return {
    words,
    ...more,
    get: (bed) => bed[section][key] as Mm,
    put: (bed, mm) => ({ ...bed, [section]: { ...bed[section], [key]: mm } }),
  };
}

/** The measure at which a check of the bed is mended, by what has no room or, for legs that do not reach, by its code. */
export const MENDED_AT: Readonly<Record<string, WordKey>> = {
  platform: 'bed.platformThickness',
  cleats: 'bed.cleatsBelow',
  field: 'bed.cleatsWidth',
  legs: 'bed.legsFromEnd',
  'bed.legs': 'bed.legsLength',
};

/** Every measure of the bed, in the order in which it is measured. */
export const BED_SECTIONS: readonly BedSection[] = [
  {
    words: 'bed.mattressSize',
    fields: [
      of('mattress', 'width', 'bed.mattressWidth', { min: 100 }),
      of('mattress', 'length', 'bed.mattressLength', { min: 100 }),
      of('mattress', 'thickness', 'bed.mattressThickness', { min: 1 }),
      of('allowance', 'width', 'bed.allowanceWidth'),
      of('allowance', 'length', 'bed.allowanceLength'),
    ],
  },
  {
    words: 'bed.frame',
    fields: [
      of('frame', 'thickness', 'bed.frameThickness', { min: 1 }),
      of('frame', 'depth', 'bed.frameDepth', { min: 1 }),
    ],
  },
  { words: 'bed.platform', fields: [of('platform', 'thickness', 'bed.platformThickness', { min: 1 })] },
  {
    words: 'bed.cleats',
    fields: [
      of('cleats', 'below', 'bed.cleatsBelow', { hint: 'bed.cleatsBelowHint' }),
      of('cleats', 'width', 'bed.cleatsWidth', { min: 1 }),
      of('cleats', 'depth', 'bed.cleatsDepth', { min: 1 }),
    ],
  },
  {
    words: 'bed.pivot',
    fields: [
      of('pivot', 'height', 'bed.pivotHeight', { min: 1 }),
      of('pivot', 'fromFace', 'bed.pivotFromFace', { min: -10_000 }),
      of('pivot', 'fromWall', 'bed.pivotFromWall', { min: 1 }),
      of('pivot', 'aboveEdge', 'bed.pivotAboveEdge', { min: -10_000 }),
    ],
  },
  {
    words: 'bed.legs',
    fields: [
      of('legs', 'length', 'bed.legsLength', { min: 1 }),
      of('legs', 'section', 'bed.legsSection', { min: 1 }),
      of('legs', 'fromEnd', 'bed.legsFromEnd'),
      of('legs', 'fromSide', 'bed.legsFromSide', { when: (bed) => bed.legs.where === 'on-face' }),
    ],
  },
  {
    words: 'bed.roomAround',
    fields: [
      {
        words: 'bed.ceiling',
        min: 100,
        get: (bed) => bed.ceiling,
        put: (bed, ceiling) => ({ ...bed, ceiling }),
      },
      of('wallBoard', 'thickness', 'bed.wallBoardThickness'),
      of('wallBoard', 'height', 'bed.wallBoardHeight'),
    ],
  },
];
