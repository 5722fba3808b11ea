import type { LevelId } from '../../bed/face.ts';
import type { Check } from '../../check/check.ts';
import type { CheckCode } from '../../check/codes.ts';
import type { Rule, RuleKind, RuleOf } from '../../design/schema.ts';
import { grouped } from '../../list/grouped.ts';
import type { Step } from '../../marks/result.ts';
import type { PatternWords } from '../../patterns/words.ts';
import type { ShoppingKind } from '../types.ts';
import type { TapeWords } from './tape.ts';

/** How figures are put into a sentence: units, rounding and names belong to the design and the language. */
export interface Say {
  readonly length: (mm: number) => string;
  /** A height from the rim as a length and the side it lies on: never a negative figure. */
  readonly fromRim: (mm: number) => string;
  readonly angle: (deg: number) => string;
  readonly mass: (kg: number) => string;
  readonly force: (newtons: number) => string;
  readonly area: (m2: number) => string;
  /** An area among others that are painted: all in one unit. */
  readonly covered: (m2: number) => string;
  readonly share: (ratio: number) => string;
  /** A plain number with at most so many decimals. */
  readonly number: (value: number, digits: number) => string;
  /** Name of a part, keep-clear or group by its id. */
  readonly name: (id: string) => string;
  /** What a part of a group is called within it, and the group or the part of it, where its name tells both. */
  readonly within: (id: string) => Within | null;
  /** All wood of each group that has several parts of it, by the ids of what was laid; none before that. */
  readonly wholes: readonly (Within & { readonly parts: readonly string[] })[];
  /** Name of a stock and of a finish; the same id may also be a part's. */
  readonly stock: (id: string) => string;
  readonly finish: (id: string) => string;
  /** A rule as a sentence. */
  readonly rule: (id: string) => string;
}

/** `Left stile (Door)` is the left stile within the door. */
export interface Within {
  readonly own: string;
  /** The group, or what of it: `Doors, left leaf`. */
  readonly place: string;
  readonly group: string;
  /** All places of the group that have a part called so. */
  readonly alike: readonly string[];
}

/** A check's figures, read with the certainty that each code carries its own. */
export interface CheckFigures {
  readonly parts: readonly string[];
  /** The first of the parts, which the sentence is about, and the second; empty where a check names none. */
  readonly part: string;
  readonly other: string;
  readonly has: (key: string) => boolean;
  readonly number: (key: string) => number;
  readonly text: (key: string) => string;
}

/** Every sentence that the plan itself speaks; one object a language. */
export interface PlanWords {
  readonly checks: { readonly [C in CheckCode]: (f: CheckFigures, say: Say) => string };
  readonly steps: { readonly [A in Step['act']]: (parts: readonly string[], say: Say) => string };
  readonly rules: {
    readonly [K in RuleKind]: (rule: RuleOf<K>, result: number | null, say: RuleSay) => string;
  };
  readonly shopping: { readonly [K in ShoppingKind]: string };
  /** What is bought over what is needed. */
  readonly spare: (name: string) => string;
  /** How many there are in a box, or are at hand. */
  readonly pieces: (count: number) => string;
  readonly list: (items: readonly string[]) => string;
  readonly places: PlaceWords;
  readonly patterns: PatternWords;
  readonly tape: TapeWords;
}

type Side = 'low' | 'mid' | 'high';

/** Names of what has none in the design: bodies of the bed, levels of the face, edges, members of rows. */
export interface PlaceWords {
  readonly bed: {
    readonly [B in 'frame' | 'platform' | 'mattress' | 'legs' | 'leg-left' | 'leg-right' | 'skin']: string;
  };
  readonly level: { readonly [L in LevelId | 'face']: string };
  readonly fromRim: { readonly [S in 'above' | 'below']: (length: string) => string } & {
    readonly even: string;
  };
  readonly percent: (number: number) => string;
  readonly edge: (
    axis: 'x' | 'y',
    side: Side,
    inner: boolean,
    of: { readonly level: LevelId | 'face' } | { readonly name: string },
  ) => string;
  /** Numbers from 1; the row is told where it is not the first. */
  readonly member: (name: string, column: number, row: number) => string;
  /** All wood of a group, whose name follows. */
  readonly whole: string;
}

/** What rule sentences need besides. */
export interface RuleSay extends Say {
  /** An edge in words, such as "left edge of Sign". */
  readonly edge: (edge: { of: string; side: Side; inner?: boolean | undefined }, axis: 'x' | 'y') => string;
}

/** Reads a check's figures; a missing figure is a fault of the room that made the check. */
export function figuresOf(check: Check): CheckFigures {
  const [part = '', other = ''] = check.parts;
  return {
    parts: check.parts,
    part,
    other,
    has: (key) => Object.hasOwn(check.figures, key),
    number: (key) => {
      const value = check.figures[key];
      if (typeof value !== 'number') throw new Error(`check ${check.code} has no figure ${key}`);
      return value;
    },
    text: (key) => String(check.figures[key] ?? ''),
  };
}

/** The message of a check in a language. */
export function checkMessage(check: Check, words: PlanWords, say: Say): string {
  return words.checks[check.code](figuresOf(check), say);
}

/** A rule as a plain sentence. */
export function ruleSentence(rule: Rule, result: number | null, words: PlanWords, say: RuleSay): string {
  const speak = words.rules[rule.kind] as (rule: Rule, result: number | null, say: RuleSay) => string;
  return speak(rule, result, say);
}

/** A step of the order of work as a sentence. */
export function stepSentence(step: Step, words: PlanWords, say: Say): string {
  return words.steps[step.act](step.parts, say);
}

/**
 * Names of parts, each once, in the order of first mention: members of an array together, `Battens (11)` instead of
 * eleven names. One of them alone goes by its own name, or it would read as all of them. A group that is there with all
 * its wood is told as such, `every piece (Door)`, and what is called alike in several groups once, `Left stile (Door, Window)`;
 * of all leaves of a group at once, `Left stile (Doors) (2)`.
 */
export function partNames(parts: Iterable<string>, say: Say): string[] {
  const ids = new Set(parts);
  const whole = new Map(
    say.wholes
      .filter((one) => one.parts.every((id) => ids.has(id)))
      .flatMap((one) => one.parts.map((id) => [id, one] as const)),
  );
  const members = grouped([...ids], (id) => whole.get(id)?.place ?? id.replace(/\[\d+,\d+\]$/, ''));
  const told = new Map<string, { readonly places: Map<string, Within>; count: number }>();
  for (const [base, own] of members) {
    const all = whole.get(own[0]);
    const id = own.length === 1 ? own[0] : base;
    const within = all ?? say.within(id);
    const name = within?.own ?? say.name(id);
    const one = told.get(name) ?? { places: new Map(), count: 0 };
    if (within) one.places.set(within.place, within);
    one.count += all ? 1 : own.length;
    told.set(name, one);
  }
  return [...told].map(([name, { places, count }]) => {
    const all = new Set(
      [...places.values()].map(({ place, group, alike }) =>
        alike.every((one) => places.has(one)) ? group : place,
      ),
    );
    const apart = [...all].some((place) => place.includes(',')) ? '; ' : ', ';
    const placed = all.size === 0 ? name : `${name} (${[...all].join(apart)})`;
    return count <= Math.max(1, all.size) ? placed : `${placed} (${count})`;
  });
}
