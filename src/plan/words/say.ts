import type { LevelId } from '../../bed/face.ts';
import type { Design } from '../../design/schema.ts';
import {
  formatAngle,
  formatArea,
  formatForce,
  formatLength,
  formatMass,
  formatNumber,
} from '../../measure/format.ts';
import type { Plan } from '../types.ts';
import { type Language, styleIn } from './languages.ts';
import { PLAN_WORDS } from './tables.ts';
import type { PlaceWords, RuleSay, Say } from './words.ts';

/** Names of everything in a design by its id. */
export function namesOf(design: Design): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const list of [design.stocks, design.finishes, design.keepClears, design.groups, design.parts]) {
    for (const item of list) names.set(item.id, item.name === '' ? item.id : item.name);
  }
  return names;
}

/** `Battens 3` for the member `battens[2,0]`; with several rows `Battens 3, row 1`. */
function nameWith(names: ReadonlyMap<string, string>, id: string, words: PlaceWords): string {
  // The bed's own bodies, as the sweep names them.
  const body = /^bed:(.*)$/.exec(id)?.[1];
  if (body !== undefined && Object.hasOwn(words.bed, body)) return words.bed[body as keyof PlaceWords['bed']];
  if (id.startsWith('keep:')) return names.get(id.slice(5)) ?? id.slice(5);
  const member = /^(.*)\[(\d+),(\d+)\]$/.exec(id);
  if (!member) return names.get(id) ?? id;
  const base = names.get(member[1] ?? '') ?? member[1] ?? id;
  return words.member(base, Number(member[2]) + 1, Number(member[3]) + 1);
}

/** What saying needs of a plan; a design and its stocks do before there is one. */
export type Told = Pick<Plan, 'design' | 'stocks'> & { readonly language: Language };

/** How a plan's figures are said, in the design's units and the plan's language. */
export function sayFor({ design, stocks, language }: Told): Say {
  const measure = styleIn(language, design.measure);
  const words = PLAN_WORDS[language].places;
  const names = new Map(namesOf(design));
  for (const [id, stock] of stocks) if (!names.has(id)) names.set(id, stock.name);
  return {
    length: (mm) => formatLength(mm, measure),
    angle: (deg) => formatAngle(deg, measure.notation),
    mass: (kg) => formatMass(kg, measure),
    force: (newtons) => formatForce(newtons, measure),
    area: (m2) => formatArea(m2, measure),
    share: (ratio) => `${Math.round(ratio * 100)} %`,
    number: (value, digits) => formatNumber(value, digits, measure.notation),
    name: (id) => nameWith(names, id, words),
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
