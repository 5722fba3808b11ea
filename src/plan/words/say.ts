import type { LevelId } from '../../bed/face.ts';
import { readReference } from '../../layout/reference.ts';
import {
  formatAngle,
  formatArea,
  formatCovered,
  formatForce,
  formatLength,
  formatMass,
  formatNumber,
  formatReading,
} from '../../measure/format.ts';
import type { Plan } from '../types.ts';
import { type Language, styleIn } from './languages.ts';
import { PLAN_WORDS } from './tables.ts';
import { type PlaceWords, type RuleSay, ruleSentence, type Say } from './words.ts';

type Named = readonly { readonly id: string; readonly name: string }[];

/** Names by id; what has none is named by its id, and of equal ids the last list's counts. */
export const namesIn = (...lists: readonly Named[]): ReadonlyMap<string, string> =>
  new Map(lists.flat().map(({ id, name }) => [id, name === '' ? id : name]));

/** `Battens 3` for the member `battens[2,0]`; with several rows `Battens 3, row 1`. */
function nameWith(names: ReadonlyMap<string, string>, id: string, words: PlaceWords): string {
  // The bed's own bodies, as the sweep names them.
  const body = /^bed:(.*)$/.exec(id)?.[1];
  if (body !== undefined && Object.hasOwn(words.bed, body)) return words.bed[body as keyof PlaceWords['bed']];
  const level = id === 'face' ? id : /^level:(.*)$/.exec(id)?.[1];
  if (level !== undefined && Object.hasOwn(words.level, level))
    return words.level[level as keyof PlaceWords['level']];
  if (id.startsWith('keep:')) return names.get(id.slice(5)) ?? id.slice(5);
  const of = readReference(id);
  if (of.to !== 'member') return names.get(id) ?? id;
  return words.member(names.get(of.part) ?? of.part, of.column + 1, of.row + 1);
}

/** What saying needs of a plan; a design and its stocks do before there is one. */
export type Told = Pick<Plan, 'design' | 'stocks'> & { readonly language: Language };

/** How a plan's figures are said, in the design's units and the plan's language. */
export function sayFor({ design, stocks, language }: Told): Say {
  const measure = styleIn(language, design.measure);
  const words = PLAN_WORDS[language].places;
  const names = namesIn(design.keepClears, design.groups, design.parts);
  const finishes = namesIn(design.finishes);
  const rules = new Map(design.rules.map((rule) => [rule.id, rule]));
  return {
    length: (mm) => formatLength(mm, measure),
    fromRim: (mm) => {
      const length = formatReading(Math.abs(mm), measure);
      if (length === formatReading(0, measure)) return words.fromRim.even;
      return mm > 0 ? words.fromRim.above(length) : words.fromRim.below(length);
    },
    angle: (deg) => formatAngle(deg, measure.notation),
    mass: (kg) => formatMass(kg, measure),
    force: (newtons) => formatForce(newtons, measure),
    area: (m2) => formatArea(m2, measure),
    covered: (m2) => formatCovered(m2, measure),
    share: (ratio) => words.percent(Math.round(ratio * 100)),
    number: (value, digits) => formatNumber(value, digits, measure.notation),
    name: (id) => nameWith(names, id, words),
    stock: (id) => stocks.get(id)?.name ?? id,
    finish: (id) => finishes.get(id) ?? id,
    rule: (id) => {
      const rule = rules.get(id);
      return rule
        ? ruleSentence(rule, null, PLAN_WORDS[language], ruleSayFor({ design, stocks, language }))
        : id;
    },
  };
}

/** As `sayFor`, with edges in words for rule sentences. */
export function ruleSayFor(plan: Told): RuleSay {
  const say = sayFor(plan);
  const words = PLAN_WORDS[plan.language].places;
  return {
    ...say,
    edge: ({ of, side, inner }, axis) => {
      const level = of.replace(/^level:/, '');
      const owner =
        of === 'face' || of.startsWith('level:')
          ? { level: level as LevelId | 'face' }
          : { name: say.name(of) };
      return words.edge(axis, side, inner === true, owner);
    },
  };
}
