import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Edge, Part, Rule } from '../../src/design/schema.ts';
import { type Chance, pick } from '../chance.ts';

/** A value somewhere in plain data, with the object or list that holds it. */
interface Slot {
  readonly holder: Record<string, unknown> | unknown[];
  readonly key: string;
  readonly value: unknown;
}

/** Every value inside of plain data, each with its place. */
function slotsOf(data: unknown): Slot[] {
  const slots: Slot[] = [];
  const walk = (holder: unknown): void => {
    if (typeof holder !== 'object' || holder === null) return;
    for (const [key, value] of Object.entries(holder)) {
      slots.push({ holder: holder as Slot['holder'], key, value });
      walk(value);
    }
  };
  walk(data);
  return slots;
}

const put = ({ holder, key }: Slot, value: unknown): void => {
  (holder as Record<string, unknown>)[key] = value;
};

/** What no field is meant to hold; JSON turns NaN and infinities into null. */
const HOSTILE: readonly unknown[] = [
  null,
  '',
  -1,
  1e308,
  -1e308,
  5e-324,
  1e-300,
  9007199254740992,
  0.1 + 0.2,
  true,
  [],
  {},
  Number.NaN,
  '__proto__',
  'constructor',
  '\u0000\ud800',
  'x'.repeat(5000),
  { length: 4294967295 },
  [[[[[]]]]],
];

/** Numbers that fields do hold, though nobody builds with them. */
const EXTREME = [
  0, 1e-9, 1e-3, 0.5, 1, 2, 7, 25.4, 89, 300, 2500, 10_000, 20_000, -1, -300, -20_000,
] as const;

type Damage = (data: Record<string, unknown>, chance: Chance) => void;

const isNumber = ({ value }: Slot): boolean => typeof value === 'number';
const isText = ({ value }: Slot): boolean => typeof value === 'string';
const isList = ({ value }: Slot): boolean => Array.isArray(value);

/** Ways to damage a design: the first ones leave files that open more often than not. */
const extreme: Damage = (data, chance) => {
  const slots = slotsOf(data).filter(isNumber);
  const slot = pick(slots, chance);
  const value = slot.value as number;
  put(slot, chance() < 0.5 ? pick(EXTREME, chance) : value * pick([-1, 0.001, 0.1, 3, 50, 1000], chance));
};
/** A word taken from another field of the same name, or any: ids that name others, kinds that do not fit. */
const swapText: Damage = (data, chance) => {
  const slots = slotsOf(data).filter(isText);
  const slot = pick(slots, chance);
  const alike = slots.filter((s) => s.key === slot.key);
  put(slot, pick(chance() < 0.7 ? alike : slots, chance).value);
};
const turnFlag: Damage = (data, chance) => {
  const flags = slotsOf(data).filter(({ value }) => typeof value === 'boolean');
  const slot = pick(flags, chance);
  put(slot, !slot.value);
};
const cutList: Damage = (data, chance) => {
  const slot = pick(slotsOf(data).filter(isList), chance);
  const list = slot.value as unknown[];
  put(slot, chance() < 0.3 ? [] : list.filter(() => chance() < 0.6));
};
const repeatItem: Damage = (data, chance) => {
  const full = slotsOf(data).filter((s) => isList(s) && (s.value as unknown[]).length > 0);
  const slot = pick(full, chance);
  const list = slot.value as unknown[];
  put(slot, [
    ...list,
    ...Array.from({ length: pick([1, 1, 2, 30], chance) }, () => structuredClone(pick(list, chance))),
  ]);
};
const shuffleList: Damage = (data, chance) => {
  const slot = pick(slotsOf(data).filter(isList), chance);
  put(
    slot,
    (slot.value as unknown[])
      .map((item) => ({ item, at: chance() }))
      .sort((a, b) => a.at - b.at)
      .map(({ item }) => item),
  );
};
/** Parts that lie on one another in a ring, or on themselves. */
const cycle: Damage = (data, chance) => {
  const parts = data.parts as { id: string; on: string }[] | undefined;
  if (!Array.isArray(parts) || parts.length === 0) return;
  const [a, b] = [pick(parts, chance), pick(parts, chance)];
  if (typeof a === 'object' && a !== null && typeof b === 'object' && b !== null) [a.on, b.on] = [b.id, a.id];
};
const hostile: Damage = (data, chance) => put(pick(slotsOf(data), chance), pick(HOSTILE, chance));
const swapValue: Damage = (data, chance) => {
  const slots = slotsOf(data);
  put(pick(slots, chance), structuredClone(pick(slots, chance).value));
};
const dropField: Damage = (data, chance) => {
  const { holder, key } = pick(slotsOf(data), chance);
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
};
const addField: Damage = (data, chance) => {
  const { value } = pick(slotsOf(data), chance);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
  // Defined, not assigned: this is what a parsed file can hold under such a name.
  const key = pick(['__proto__', 'constructor', 'toString', 'extra', ''], chance);
  Object.defineProperty(value, key, {
    value: pick(HOSTILE, chance),
    enumerable: true,
    configurable: true,
    writable: true,
  });
};
const version: Damage = (data, chance) => {
  data.showface = pick([0, 2, 1.5, -1, 1e9, '1', null, [], 1e308], chance);
};

const MILD: readonly Damage[] = [
  extreme,
  extreme,
  extreme,
  swapText,
  turnFlag,
  cutList,
  repeatItem,
  shuffleList,
  cycle,
];
const RUDE: readonly Damage[] = [hostile, swapValue, dropField, addField, version, hostile];

/** A copy of the data, damaged in up to `most` places so that many still open. */
export function mildlyDamaged(data: object, chance: Chance, most = 3): Record<string, unknown> {
  return damagedBy(data, MILD, chance, most);
}

/** A copy of the data that a file of this tool would hardly hold. */
export function rudelyDamaged(data: object, chance: Chance): Record<string, unknown> {
  return damagedBy(data, [...MILD, ...RUDE, ...RUDE], chance, 4);
}

function damagedBy(
  data: object,
  ways: readonly Damage[],
  chance: Chance,
  most: number,
): Record<string, unknown> {
  const copy = structuredClone(data) as Record<string, unknown>;
  const times = 1 + Math.floor(chance() * most);
  for (let i = 0; i < times; i++) pick(ways, chance)(copy, chance);
  return copy;
}

/** The text with a piece left out, put in or cut off: what a bad disk or a bad editor makes of a file. */
export function tornText(text: string, chance: Chance): string {
  const at = Math.floor(chance() * text.length);
  const length = Math.floor(chance() ** 3 * 400);
  const put = pick(
    ['', '', '{', ']', ',', '"', '\\', '1e999', '\u0000', '['.repeat(200), '{"a":'.repeat(70)],
    chance,
  );
  return chance() < 0.2 ? text.slice(0, at) : text.slice(0, at) + put + text.slice(at + length);
}

const edge = (of: string, side: Edge['side'], inner?: boolean): Edge =>
  inner === undefined ? { of, side } : { of, side, inner };
const box = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });

/** A design small enough to plan by the hundred that holds every kind of part, path, end, rule and joint. */
export function everyKind(): Design {
  const start = newDesign();
  const parts: Part[] = [
    {
      ...newPart('strip', {
        id: 'left',
        name: 'Left',
        box: box(0, 0, 38.1, 1900),
        stock: 'pine-1x2',
        finish: 'trim',
      }),
      lie: 'up',
    },
    {
      ...newPart('strip', {
        id: 'right',
        name: 'Right',
        box: box(900, 0, 38.1, 1900),
        stock: 'pine-1x2',
        finish: 'trim',
      }),
      lie: 'up',
    },
    newPart('strip', {
      id: 'rail',
      name: 'Rail',
      box: box(38.1, 600, 861.9, 38.1),
      stock: 'pine-1x2',
      finish: 'trim',
    }),
    {
      ...newPart('strip', { id: 'brace', name: 'Brace', box: box(38.1, 0, 861.9, 600), stock: 'pine-1x2' }),
      lie: 'rising',
      fit: true,
    },
    {
      ...newPart('strip', { id: 'turned', name: 'Turned', box: box(300, 1500, 200, 200) }),
      lie: 'turned',
      angle: 20,
      length: 220,
      ends: { start: { cut: 'miter', angle: 30 }, end: { cut: 'return' } },
    },
    newPart('run', { id: 'frame', name: 'Frame', box: box(100, 700, 300, 300), finish: 'trim' }),
    {
      ...newPart('run', { id: 'arch', name: 'Arch', box: box(500, 700, 300, 400), stock: 'pine-1x2' }),
      path: { form: 'arched', rise: 100, segments: 4 },
    },
    {
      ...newPart('run', { id: 'path', name: 'Path', box: box(100, 1100, 300, 200), stock: 'cornice-45' }),
      path: {
        form: 'points',
        points: [
          { u: 0, v: 0 },
          { u: 0.5, v: 1 },
          { u: 1, v: 0 },
        ],
        closed: false,
      },
      corner: 'butt-up',
    },
    {
      ...newPart('panel', { id: 'panel', name: 'Panel', box: box(450, 1150, 200, 200), finish: 'ground' }),
      shape: { form: 'arched', rise: 60 },
      openings: [{ id: 'o', shape: { form: 'round' }, margin: { left: 30, right: 30, bottom: 30, top: 90 } }],
    },
    {
      ...newPart('panel', { id: 'plate', name: 'Plate', box: box(700, 1150, 150, 150), finish: 'ground' }),
      shape: {
        form: 'polygon',
        points: [
          { u: 0, v: 0 },
          { u: 1, v: 0.2 },
          { u: 0.5, v: 1 },
        ],
      },
    },
    signPart(),
    newPart('fitting', { id: 'lamp', name: 'Lamp', box: box(500, 100, 60, 60) }),
    newPart('painted', { id: 'pane', name: 'Pane', box: box(600, 100, 90, 60), finish: 'ground' }),
    {
      ...newPart('array', { id: 'laths', name: 'Laths', box: box(100, 1700, 600, 150), finish: 'trim' }),
      overrides: { '1,0': { omit: true }, '2,0': { finish: null } },
    },
  ];
  return {
    ...start,
    parts,
    rules: RULES,
    joints: JOINTS,
    groups: [{ id: 'g', name: 'G', parts: ['left', 'right'] }],
    ...SMALL,
  };
}

function signPart(): Part {
  const sign = newPart('sign', { id: 'sign', name: 'Sign', box: box(100, 1400, 300, 90), finish: 'ground' });
  return {
    ...sign,
    lettering: {
      ...sign.lettering,
      lines: [
        { text: 'AB' },
        { text: 'o 8', capHeight: 20, sizes: [{ from: 2, count: 1, size: 0.6, stand: 'top' }] },
      ],
    },
  };
}

const RULES: Rule[] = [
  { id: 'r1', kind: 'set', axis: 'x', edge: edge('left', 'low'), from: edge('face', 'low'), distance: 5 },
  { id: 'r2', kind: 'mirror', axis: 'x', part: 'left', twin: 'right', about: edge('face', 'mid') },
  {
    id: 'r3',
    kind: 'between',
    axis: 'x',
    part: 'rail',
    low: edge('left', 'high'),
    high: edge('right', 'low'),
    insetLow: 0,
    insetHigh: 0,
  },
  {
    id: 'r4',
    kind: 'even',
    axis: 'x',
    parts: ['panel', 'plate'],
    low: edge('left', 'high'),
    high: edge('right', 'low'),
    mode: 'gaps',
  },
  { id: 'r5', kind: 'same', axis: 'x', parts: ['frame', 'arch'] },
  {
    id: 'r6',
    kind: 'center',
    axis: 'x',
    parts: ['sign'],
    low: edge('level:rim', 'low', true),
    high: edge('face', 'high'),
  },
  { id: 'r7', kind: 'reveal', part: 'pane', inside: 'arch', inner: true, margin: 10 },
  {
    id: 'r8',
    kind: 'graded',
    axis: 'y',
    parts: ['frame', 'path'],
    low: edge('rail', 'high'),
    high: edge('left', 'high'),
    ratio: [2, 1],
    gap: 9,
  },
  {
    id: 'r9',
    kind: 'set',
    axis: 'y',
    edge: edge('laths[0,0]', 'low'),
    from: edge('rail', 'high'),
    distance: 1050,
  },
  {
    id: 'r10',
    kind: 'gap',
    axis: 'y',
    edge: edge('sign', 'low'),
    from: edge('rail', 'high'),
    likeEdge: edge('rail', 'low'),
    likeFrom: edge('face', 'low'),
  },
];

const JOINTS: Design['joints'] = [
  { id: 'j1', parts: ['left', 'rail'], kind: 'butt', through: 'left' },
  { id: 'j2', parts: ['right', 'rail'], kind: 'half-lap' },
  { id: 'j3', parts: ['frame', 'frame'], kind: 'miter' },
];

const SMALL = {
  keepClears: [{ id: 'k', name: 'Latch', why: 'latch', box: box(850, 1200, 40, 40), height: 30 }],
  owned: [{ id: 'w', stock: 'pine-1x2', length: 900, count: 2, defects: [{ from: 100, to: 140 }] }],
  pages: { ...newDesign().pages, paper: 'a0', also: ['story-sticks', 'face', 'parts', 'drilling'] },
} satisfies Partial<Design>;
