import { at, pick, under } from '../../list/at.ts';
import { directed } from './bidi.ts';
import type { LineToShape } from './shape.ts';

/** Characters beside each other that are of one script, run one way, and have one size. */
export interface Run {
  readonly from: number;
  readonly count: number;
  /** ISO 15924; null where the characters belong to no script in particular. */
  readonly script: string | null;
  readonly rightToLeft: boolean;
  /** The one character of it stands for itself. */
  readonly apart: boolean;
}

/** Scripts that letters may be of, by ISO 15924. What is of none of these goes with what stands beside it. */
const SCRIPTS = [
  ...[
    'Latn',
    'Grek',
    'Cyrl',
    'Armn',
    'Geor',
    'Hebr',
    'Arab',
    'Syrc',
    'Thaa',
    'Nkoo',
    'Adlm',
    'Rohg',
    'Samr',
    'Mand',
  ],
  ...[
    'Deva',
    'Beng',
    'Guru',
    'Gujr',
    'Orya',
    'Taml',
    'Telu',
    'Knda',
    'Mlym',
    'Sinh',
    'Thai',
    'Laoo',
    'Tibt',
    'Mymr',
  ],
  ...[
    'Khmr',
    'Mong',
    'Ethi',
    'Cher',
    'Cans',
    'Hang',
    'Hira',
    'Kana',
    'Bopo',
    'Hani',
    'Java',
    'Bali',
    'Cham',
    'Vaii',
  ],
].map((script) => ({ script, has: new RegExp(`\\p{Script=${script}}`, 'u') }));

const scriptOf = (character: string): string | null =>
  SCRIPTS.find(({ has }) => has.test(character))?.script ?? null;

/** Stands for a picture while the direction is found: neutral. */
const NEUTRAL = '\ufffc';
/** What belongs to the character before it: marks, and what joins or parts letters unseen. */
const BEHIND = /[\p{M}\p{Join_Control}\p{Variation_Selector}]/u;

/** Runs of a line as they stand from left to right, each still in the order in which it is read. */
export function runsOf({
  characters,
  sizes,
  apart,
}: Pick<LineToShape, 'characters' | 'sizes' | 'apart'>): Run[] {
  const pictured = characters.map((character) => apart?.(character) ?? false);
  const { levels, order } = directed(
    characters.map((character, i) => (pictured[i] ? NEUTRAL : character)),
    'auto',
  );
  const scripts = resolved(characters.map((character, i) => (pictured[i] ? null : scriptOf(character))));
  const runs: (Run & { count: number })[] = [];
  characters.forEach((character, i) => {
    const last = runs.at(-1);
    const isPicture = pictured[i] === true;
    const goesOn =
      last !== undefined &&
      !last.apart &&
      !isPicture &&
      (BEHIND.test(character) ||
        (scripts[i] === last.script && levels[i] === levels[i - 1] && sizes[i] === sizes[i - 1]));
    if (goesOn) last.count += 1;
    else {
      const rightToLeft = at(levels, i) % 2 === 1;
      runs.push({ from: i, count: 1, script: pick(scripts, i), rightToLeft, apart: isPicture });
    }
  });
  const stands = new Map(order.map((index, place) => [index, place]));
  const placeOf = ({ from }: Run) => under(stands, from);
  return runs.sort((a, b) => placeOf(a) - placeOf(b));
}

/** What is of no script in particular is of that before it, or of the first one that comes. */
function resolved(scripts: readonly (string | null)[]): (string | null)[] {
  let last = scripts.find((script) => script !== null) ?? null;
  return scripts.map((script) => {
    last = script ?? last;
    return last;
  });
}
