import type { LevelId } from '../../bed/face.ts';
import { isBought, isPaint } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import { designPart, readReference } from '../../layout/reference.ts';
import { grouped, groupOf } from '../../list/grouped.ts';
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
import { type PlaceWords, type RuleSay, ruleSentence, type Say, type Within } from './words.ts';

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
export type Told = Pick<Plan, 'design' | 'stocks'> &
  Partial<Pick<Plan, 'layout'>> & { readonly language: Language };

/** `Left stile (Doors, left leaf)` within the group `Doors`, by the id of the part; names that a person gave tell no place. */
function withinGroups({ groups, parts }: Design): ReadonlyMap<string, Within> {
  const groupNames = new Map(groups.flatMap(({ name, parts: own }) => own.map((id) => [id, name] as const)));
  const found = parts.flatMap(({ id, name }) => {
    const group = groupNames.get(id);
    const [, own, place] = /^(.+) \((.+)\)$/.exec(name) ?? [];
    if (own === undefined || place === undefined || group === undefined) return [];
    return place === group || place.startsWith(`${group}, `) ? [{ id, own, place, group }] : [];
  });
  const keyOf = ({ own, group }: Pick<Within, 'own' | 'group'>) => `${group} ${own}`;
  const alike = grouped(found, keyOf);
  return new Map(
    found.map(({ id, ...one }) => [
      id,
      { ...one, alike: groupOf(alike, keyOf(one)).map(({ place }) => place) },
    ]),
  );
}

/** Groups of several parts of wood, with the ids of all that was laid of them. */
function wholesOf({ groups }: Design, layout: Plan['layout'] | undefined, words: PlaceWords): Say['wholes'] {
  const wood = grouped(
    layout?.parts.filter((part) => !isPaint(part) && !isBought(part)) ?? [],
    ({ part }) => part,
  );
  return groups.flatMap(({ name, parts }) => {
    const own = parts.filter((id) => wood.has(id));
    if (own.length < 2) return [];
    return [
      {
        own: words.whole,
        place: name,
        group: name,
        alike: [name],
        parts: own.flatMap((id) => groupOf(wood, id).map((part) => part.id)),
      },
    ];
  });
}

/** How a plan's figures are said, in the design's units and the plan's language. */
export function sayFor({ design, stocks, layout, language }: Told): Say {
  const measure = styleIn(language, design.measure);
  const words = PLAN_WORDS[language].places;
  const names = namesIn(design.keepClears, design.groups, design.parts);
  const finishes = namesIn(design.finishes);
  const rules = new Map(design.rules.map((rule) => [rule.id, rule]));
  const within = withinGroups(design);
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
    within: (id) => {
      const part = designPart(id);
      const found = within.get(part);
      return found ? { ...found, own: nameWith(new Map([[part, found.own]]), id, words) } : null;
    },
    wholes: wholesOf(design, layout, words),
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
