import type { Design } from '../../design/schema.ts';
import { formatAngle, formatArea, formatForce, formatLength, formatMass } from '../../measure/format.ts';
import type { Plan } from '../types.ts';
import type { RuleSay, Say } from './words.ts';

/** Names of everything in a design by its id. */
export function namesOf(design: Design): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const list of [design.stocks, design.finishes, design.keepClears, design.groups, design.parts]) {
    for (const item of list) names.set(item.id, item.name === '' ? item.id : item.name);
  }
  return names;
}

/** The bed's own bodies, as the sweep names them. */
const BED_NAMES: Readonly<Record<string, string>> = {
  'bed:frame': 'The bed frame',
  'bed:platform': 'The platform',
  'bed:mattress': 'The mattress',
  'bed:legs': 'The legs',
  'bed:skin': 'The skin',
};

/** `Battens 3` for the member `battens[2,0]`; with several rows `Battens 3, row 1`. */
function nameWith(names: ReadonlyMap<string, string>, id: string): string {
  if (id in BED_NAMES) return BED_NAMES[id] ?? id;
  if (id.startsWith('keep:')) return names.get(id.slice(5)) ?? id.slice(5);
  const member = /^(.*)\[(\d+),(\d+)\]$/.exec(id);
  if (!member) return names.get(id) ?? id;
  const base = names.get(member[1] ?? '') ?? member[1] ?? id;
  const [column, row] = [Number(member[2]) + 1, Number(member[3]) + 1];
  return row === 1 ? `${base} ${column}` : `${base} ${column}, row ${row}`;
}

/** How a plan's figures are said, in the design's units. */
export function sayFor(plan: Pick<Plan, 'design' | 'stocks'>): Say {
  const { measure } = plan.design;
  const names = new Map(namesOf(plan.design));
  for (const [id, stock] of plan.stocks) if (!names.has(id)) names.set(id, stock.name);
  return {
    length: (mm) => formatLength(mm, measure),
    angle: (deg) => formatAngle(deg),
    mass: (kg) => formatMass(kg, measure),
    force: (newtons) => formatForce(newtons, measure),
    area: (m2) => formatArea(m2, measure),
    share: (ratio) => `${Math.round(ratio * 100)} %`,
    name: (id) => nameWith(names, id),
  };
}

const SIDES = {
  x: { low: 'left edge', mid: 'center line', high: 'right edge' },
  y: { low: 'bottom edge', mid: 'center line', high: 'top edge' },
} as const;

const LEVEL_NAMES: Readonly<Record<string, string>> = {
  face: 'the face',
  'level:rim': 'the rim',
  'level:ledge': 'the ledge',
  'level:field': 'the field',
  'level:skin': 'the skin',
};

/** As `sayFor`, with edges in words for rule sentences. */
export function ruleSayFor(plan: Pick<Plan, 'design' | 'stocks'>): RuleSay {
  const say = sayFor(plan);
  return {
    ...say,
    edge: ({ of, side, inner }, axis) =>
      `${inner ? 'inner ' : ''}${SIDES[axis][side]} of ${LEVEL_NAMES[of] ?? say.name(of)}`,
  };
}
