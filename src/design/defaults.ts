import { isInch, type LengthUnit } from '../measure/style.ts';
import { inches } from '../measure/units.ts';
import { SQUARE_ENDS } from './ends.ts';
import type { PacketSection } from './limits.ts';
import type { Bed, Design, Finish, Lettering, Part, PartKind, PartOf, ShedSupplies } from './schema.ts';

/** Between the holes of a pounce pattern at first, at most: an eighth of an inch. Common practice, no source. */
export const POUNCE = inches(1 / 8);
/** How far color runs beyond the edge of a printed sign: an eighth of an inch. Common practice, no source. */
export const BLEED = inches(1 / 8);
/** Width of pieces of a fill that are ripped from sheet. */
export const RIPPED = inches(6);

/**
 * A bed to start from: a mattress of 38 by 75 in on a half-inch platform between 2x6 boards, upright.
 * Common practice, no source; every measure is there to be replaced by what the person measured.
 */
export const DEFAULT_BED: Bed = {
  pivotAlong: 'end',
  mattress: { width: inches(38), length: inches(75), thickness: inches(5) },
  allowance: { width: inches(0.5), length: 0 },
  frame: { thickness: inches(1.5), depth: inches(5.5), runsPast: 'sides', material: 'spruce' },
  platform: { thickness: inches(0.5), material: 'plywood' },
  cleats: { below: inches(4), width: inches(1.5), depth: inches(0.75), runsPast: 'sides' },
  skin: null,
  pivot: { height: inches(11.75), fromFace: inches(2.75), fromWall: inches(6), aboveEdge: inches(2.75) },
  legs: {
    where: 'beside',
    length: inches(9),
    section: inches(1.5),
    fromEnd: inches(4),
    fromSide: inches(4),
  },
  ceiling: inches(96),
  wallBoard: { thickness: inches(0.5), height: inches(4) },
  beside: { left: null, right: null },
};

/**
 * The same for who measures in millimeters: a mattress of 900 by 2000 on a platform of 12 between boards of 28 by
 * 145, under a ceiling of 2500. Common practice, no source.
 */
const METRIC_BED: Bed = {
  pivotAlong: 'end',
  mattress: { width: 900, length: 2000, thickness: 120 },
  allowance: { width: 10, length: 0 },
  frame: { thickness: 28, depth: 145, runsPast: 'sides', material: 'spruce' },
  platform: { thickness: 12, material: 'plywood' },
  cleats: { below: 100, width: 44, depth: 21, runsPast: 'sides' },
  skin: null,
  pivot: { height: 300, fromFace: 70, fromWall: 150, aboveEdge: 70 },
  legs: { where: 'beside', length: 230, section: 44, fromEnd: 100, fromSide: 100 },
  ceiling: 2500,
  wallBoard: { thickness: 16, height: 60 },
  beside: { left: null, right: null },
};

/** The bed to start from for who measures so. */
export const usualBed = (unit: LengthUnit): Bed => (isInch(unit) ? DEFAULT_BED : METRIC_BED);

/** Stock of a part that has just been placed, where the inch stock of `newPart` is not sold. */
const METRIC_STOCK: Partial<Readonly<Record<PartKind, string>>> = {
  strip: 'planed-21x70',
  run: 'half-round-20',
  panel: 'mdf-6',
  sign: 'mdf-12',
  array: 'planed-5x30',
  fill: 'planed-21x70',
};

/** What to make a new part of for who measures so; nothing where `newPart` knows. */
export const usualStock = (kind: PartKind, unit: LengthUnit): string | undefined =>
  isInch(unit) ? undefined : METRIC_STOCK[kind];

/**
 * A finish to start from. The spreading rate is 350 ft2 per US gallon, the low end of what cans print; the primer's 300,
 * coats and sheen are common practice, no source.
 */
export function newFinish(id: string, name: string, color: string): Finish {
  return {
    id,
    name,
    kind: 'paint',
    color,
    sheen: 'satin',
    coats: 2,
    rate_m2_l: (350 * 0.09290304) / 3.785411784,
    containers: [],
    owned_l: 0,
    primer: { coats: 1, rate_m2_l: (300 * 0.09290304) / 3.785411784 },
  };
}

/** Nothing in the shed, and the prices of the tables. */
export const NO_SUPPLIES: ShedSupplies = {
  owned: { primer_l: 0, glue_l: 0, tape: 0, screws: [] },
  prices: {},
  primer: [],
};

/** A tenth more brads and screws than are driven, for bent ones. Common practice, no source. */
export const USUAL_SPARE: NonNullable<ShedSupplies['spare']> = {
  boards: 0,
  sheets: 0,
  fasteners: 0.1,
  one: false,
};

/** What the packet leaves out where the design says nothing: marks, elevation and sections tell every place already. */
export const LEFT_OUT: readonly PacketSection[] = ['places'];

/**
 * A new design around a bed, with nothing on its face yet. What is set for saw, paint, fasteners, limits, pages and light is
 * common practice, no source: each is there to be replaced by what the person has.
 */
export function newDesign(bed: Bed = DEFAULT_BED, name = 'New face'): Design {
  return {
    showface: 1,
    name,
    date: '',
    note: '',
    measure: { unit: 'in', fraction: '16', currency: '$' },
    bed,
    keepClears: [],
    stocks: [],
    owned: [],
    finishes: [newFinish('ground', 'Ground', '#d9cdb4'), newFinish('trim', 'Trim', '#2f4a4f')],
    parts: [],
    groups: [],
    rules: [],
    joints: [],
    shop: {
      boardKerf: inches(1 / 8),
      sheetKerf: inches(1 / 8),
      endTrim: inches(1 / 2),
      edgeTrim: 0,
      saw: { miter: 50, bevel: 45 },
      fitAllowance: inches(1),
      keepOffcut: inches(12),
    },
    paint: { waste: 0.1, containers: 'us', backPriming: false },
    fastening: {
      brad: 'brad-18',
      lengths: [],
      spacing: inches(8),
      fromEdge: inches(1 / 2),
      shortOfFar: inches(1 / 8),
      bite: inches(1 / 4),
      screw: 'screw-8',
      screwOver_kg: 4,
    },
    load: { warnAdded_kg: 18, warnLift_n: 90 },
    pages: {
      paper: 'letter',
      margin: { left: inches(0.5), right: inches(0.5), top: inches(0.5), bottom: inches(0.5) },
      join: 'overlap',
      overlap: inches(0.5),
      wholeLetters: false,
      also: ['story-sticks', 'parts', 'drilling'],
    },
    light: { azimuth: 135, altitude: 50 },
    fonts: [],
  };
}

/** Lettering to start from: one line, two-inch capitals, centered. */
export function newLettering(text: string, finish: string): Lettering {
  return {
    font: 'bebas-neue',
    lines: [{ text }],
    capHeight: inches(2),
    tracking: 0.04,
    wordSpace: 0,
    lineSpace: 1.5,
    align: 'center',
    kerning: true,
    arcRise: 0,
    fit: 'none',
    margin: inches(0.75),
    shift: { x: 0, y: 0 },
    finish,
    outline: null,
    inline: null,
    shade: null,
    make: 'stencil',
    stencil: {
      bridgeWidth: inches(3 / 16),
      bridges: 2,
      direction: 'thinnest',
      tongue: inches(3 / 32),
      frame: inches(1),
      placed: [],
    },
  };
}

type Given = Pick<Part, 'id' | 'name' | 'box'> & { readonly stock?: string; readonly finish?: string | null };

/** A part of each kind as it is when it has just been placed. */
const NEW: { readonly [K in PartKind]: (given: Given) => PartOf<K> } = {
  strip: (g) => ({ ...common(g), ...stripFields(g.stock ?? 'pine-1x3') }),
  run: (g) => ({
    ...common(g),
    kind: 'run',
    stock: g.stock ?? 'panel-molding',
    path: { form: 'frame' },
    side: 'inside',
    corner: 'miter',
    ends: SQUARE_ENDS,
    fit: false,
  }),
  panel: (g) => ({ ...common(g), ...panelFields(g.stock ?? 'mdf-quarter') }),
  sign: (g) => ({
    ...common(g),
    ...panelFields(g.stock ?? 'mdf-half'),
    kind: 'sign',
    lettering: newLettering('SIGN', g.finish ?? 'trim'),
  }),
  fitting: (g) => ({
    ...common(g),
    kind: 'fitting',
    shape: { form: 'rectangle' },
    depth: 25,
    mass_kg: 0.2,
    price: 0,
    color: '#3a3a38',
    fixing: { how: 'screws', glue: false },
  }),
  painted: (g) => ({ ...common(g), kind: 'painted', shape: { form: 'rectangle' }, fixing: NO_FIXING }),
  lettering: (g) => ({
    ...common(g),
    kind: 'lettering',
    shape: { form: 'rectangle' },
    fixing: NO_FIXING,
    finish: null,
    lettering: { ...newLettering('WORDS', g.finish ?? 'trim'), make: 'pounce' },
  }),
  array: (g) => ({
    ...common(g),
    kind: 'array',
    member: { finish: g.finish ?? null, ...stripFields(g.stock ?? 'lath-quarter'), lie: 'up' },
    memberSize: { w: 40, h: 40 },
    across: { mode: 'gaps', count: 5 },
    up: null,
    overrides: {},
  }),
  fill: (g) => ({
    ...common(g),
    kind: 'fill',
    shape: { form: 'rectangle' },
    stock: g.stock ?? 'pine-1x4',
    pattern: { form: 'planks', edge: 'square', lap: inches(3 / 8) },
    gap: 0,
    angle: 90,
    start: 'balanced',
    overrides: {},
  }),
};

const NO_FIXING = { how: 'none', glue: false } as const;

function common(g: Given) {
  return {
    id: g.id,
    name: g.name,
    box: g.box,
    on: 'face',
    finish: g.finish ?? null,
    fixing: { how: 'brads', glue: true } as const,
    locked: false,
  };
}

function stripFields(stock: string) {
  return {
    kind: 'strip',
    stock,
    lie: 'across',
    angle: 0,
    length: 500,
    onEdge: false,
    ends: SQUARE_ENDS,
    fit: false,
  } as const;
}

function panelFields(stock: string) {
  return { kind: 'panel', stock, shape: { form: 'rectangle' }, openings: [], grain: 'any' } as const;
}

export function newPart<K extends PartKind>(kind: K, given: Given): PartOf<K> {
  return NEW[kind](given);
}
