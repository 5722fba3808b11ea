import { z } from 'zod';
import type { Check } from '../../check/check.ts';
import { CHECK_CODES } from '../../check/codes.ts';
import type { PlacedPhoto } from '../../lettering/photo/placed.ts';
import type { Plan } from '../../plan/types.ts';
import { CUT_FIELDS, type CutRows, cutRows } from './cutFields.ts';
import {
  A_COUNT,
  A_LENGTH,
  A_TEXT,
  box,
  boxIn,
  count,
  deg,
  flag,
  list,
  listed,
  measured,
  mm,
  money,
  nullable,
  oneOf,
  optional,
  pair,
  point,
  record,
  region,
  row,
  text,
  via,
  within,
} from './field.ts';

type Step = Plan['marks']['steps'][number];

/** Sentences that go into the file beside the figures. */
export interface PlanJsonWords {
  readonly check: (check: Check) => string;
  readonly step: (step: Step) => string;
}

/** What the file tells of. */
interface Told {
  readonly plan: Plan;
  readonly cut: CutRows;
  readonly words: PlanJsonWords;
}

const m2 = measured('m2');
const liters = measured('l');
const kg = measured('kg');
const texts = <S>(from: (source: S) => readonly string[]) => list(from, A_TEXT);

const face = record<Plan>({
  width_mm: mm((plan) => plan.face.width),
  height_mm: mm((plan) => plan.face.height),
  levels: list(
    (plan) => plan.face.levels,
    record<Plan['face']['levels'][number]>({
      id: text(({ id }) => id),
      z_mm: mm(({ z }) => z),
      ...boxIn((level) => level.box),
      inner: nullable(({ inner }) => inner, record(box)),
    }),
  ),
  keep_clears: list(
    ({ keepClears }) => keepClears,
    record<Plan['keepClears'][number]>({
      id: text(({ id }) => id),
      name: text(({ name }) => name),
      why: text(({ why }) => why),
      ...boxIn((one) => one.box),
      z_mm: mm(({ height }) => height),
    }),
  ),
});

const part = record<Plan['layout']['parts'][number]>({
  id: text(({ id }) => id),
  name: text(({ name }) => name),
  kind: text(({ kind }) => kind),
  outline_mm: via((laid) => laid.region, region),
  z_mm: row(2, ({ z0, z1 }) => [z0, z1], A_LENGTH, 'over the rim, from and to'),
});

const finish = record<Plan['finish']['uses'][number]>({
  finish: text((use) => use.finish),
  face_m2: m2((use) => use.face),
  edge_m2: m2(({ edge }) => edge),
  back_m2: m2(({ painted }) => painted.back),
  painted_face_m2: m2(({ painted }) => painted.face),
  painted_edge_m2: m2(({ painted }) => painted.edge),
  coats: count(({ coats }) => coats),
  volume_l: liters(({ volume }) => volume),
  primer_l: liters(({ primer }) => primer),
  buy: list(
    ({ buy }) => buy,
    record<Plan['finish']['uses'][number]['buy'][number]>({
      container: text(({ container }) => container),
      count: count((bought) => bought.count),
      volume_l: liters(({ volume }) => volume),
      price: money(({ price }) => price),
    }),
  ),
  left_l: liters(({ left }) => left),
  tape_m: measured('m')(({ tape }) => tape / 1000),
});

const bare = record<Plan['finish']['bare'][number]>({
  glued: text((one) => one.part),
  on: text(({ on }) => on),
  finish: text((one) => one.finish),
  z_mm: mm(({ z }) => z),
  outline_mm: via((one) => one.region, region),
});

const load = record<Plan['load']>({
  added_kg: kg(({ added }) => added),
  center_mm: row(3, ({ center: { x, y, z } }) => [x, y, z], A_LENGTH),
  moment_nm: measured('N m')(({ moment }) => moment),
  lift_added_n: measured('N')(({ liftAdded }) => liftAdded),
  bare_kg: kg((one) => one.bare),
});

const fold = record<Plan['fold']>({
  floor_clear_mm: mm(({ floorClear }) => floorClear),
  wall_clear_mm: mm(({ wallClear }) => wallClear),
  wall_board_clear_mm: nullable(({ wallBoardClear }) => wallBoardClear, A_LENGTH),
  ceiling_clear_mm: mm(({ ceilingClear }) => ceilingClear),
  floor_space_mm: mm(({ floorSpace }) => floorSpace),
  hits: list(
    ({ hits }) => hits,
    record<Plan['fold']['hits'][number]>({
      part: text((hit) => hit.part),
      what: oneOf(
        ['floor', 'wall', 'ceiling', 'legs', 'side-left', 'side-right', 'wall-board'],
        ({ what }) => what,
      ),
      angle_deg: deg(({ angle }) => angle, '0 stowed, 90 lowered'),
      over_mm: mm(({ over }) => over),
    }),
  ),
});

const fastening = record<Plan['fastening']['parts'][number]>({
  part: text((fastened) => fastened.part),
  how: oneOf(['brads', 'screws', 'glue', 'none'], ({ how }) => how),
  fastener: nullable(({ fastener }) => fastener, A_TEXT),
  length_mm: nullable(({ length }) => length, A_LENGTH),
  at_mm: list(({ at }) => at, point),
  depth_mm: mm(({ depth }) => depth),
  glue_l: liters(({ glue }) => glue),
});

const photo = record<PlacedPhoto>({
  photo: text((one) => one.photo.id),
  name: text((one) => one.photo.name),
  pixels: pair((one) => [one.photo.width, one.photo.height], A_COUNT),
  /** All of it, and what is left once its sides are cut off. */
  whole_mm: record(boxIn(({ frame }) => frame)),
  shown_mm: record(boxIn(({ shown }) => shown)),
  dpi: measured('pixels to an inch')(({ dpi }) => dpi),
});

type Layers = NonNullable<Plan['signs'][number]['stencils']>['layers'];
const sumOf = (sign: Plan['signs'][number], of: (layer: Layers[number]) => number): number =>
  (sign.stencils?.layers ?? []).reduce((sum, layer) => sum + of(layer), 0);

const lettering = record<Plan['signs'][number]>({
  sign: text(({ lettered }) => lettered.sign),
  text: text(({ lettered }) => lettered.text),
  font: text(({ lettered }) => lettered.font),
  cap_height_mm: mm(({ lettered }) => lettered.capHeight),
  cap_heights_mm: list(({ lettered }) => lettered.capHeights, A_LENGTH),
  ink_mm2: measured('mm2')(({ lettered }) => lettered.ink_mm2),
  width_mm: mm(({ lettered }) => lettered.width),
  bridges: count((sign) => sumOf(sign, ({ stencil }) => stencil.bridges.length)),
  islands_loose: count((sign) => sumOf(sign, ({ stencil }) => stencil.loose)),
  /** On the paper of a printed sign, from its lower left; absent: none. */
  photos: optional(
    ({ photos }) => (photos.length === 0 ? undefined : photos),
    list((all: readonly PlacedPhoto[]) => all, photo),
  ),
});

const pattern = record<Plan['patterns'][number]>({
  for: text((set) => set.for),
  paper: text(({ paper }) => paper),
  rows: count(({ rows }) => rows),
  columns: count(({ columns }) => columns),
  pages: texts(({ pages }) => pages.map(({ name }) => name)),
});

const mark = record<Plan['marks']['marks'][number]>({
  datum: oneOf(['left', 'bottom'], ({ datum }) => datum),
  axis: oneOf(['x', 'y'], ({ axis }) => axis),
  at_mm: mm(({ at }) => at),
  part: text((one) => one.part),
  edge: oneOf(['low', 'mid', 'high', 'hole'], ({ edge }) => edge),
});

const step = record<Step & { readonly text: string }>({
  number: count(({ number }) => number),
  act: text(({ act }) => act),
  parts: texts(({ parts }) => parts),
  text: text((one) => one.text),
  paints: list(
    ({ paints }) => paints,
    record<Step['paints'][number]>({
      part: text((paint) => paint.part),
      finish: text((paint) => paint.finish),
      of: text(({ of }) => of),
      face_m2: m2((paint) => paint.face),
      edge_m2: m2(({ edge }) => edge),
      back_m2: m2(({ back }) => back),
      coats: count(({ coats }) => coats),
      primer_coats: count(({ primerCoats }) => primerCoats),
      primed_m2: m2(({ primed }) => primed),
    }),
  ),
});

const shoppingLine = record<Plan['shopping'][number]>({
  kind: text(({ kind }) => kind),
  item: text(({ item }) => item),
  name: text(({ name }) => name),
  length_mm: optional(
    ({ size }) => size.length_mm,
    listed('mm')((value: number) => value),
  ),
  width_mm: optional(
    ({ size }) => size.width_mm,
    listed('mm')((value: number) => value),
  ),
  volume_l: optional(
    ({ size }) => size.volume_l,
    listed('l')((value: number) => value),
  ),
  pieces: optional(({ size }) => size.pieces, A_COUNT),
  count: count((line) => line.count),
  each: money(({ each }) => each),
  price: money(({ price }) => price),
  owned: flag(({ owned }) => owned),
  priced: flag(({ priced }) => priced),
});

const check = record<Check & { readonly message: string }>({
  code: oneOf(CHECK_CODES, ({ code }) => code),
  severity: oneOf(['error', 'warning', 'note'], ({ severity }) => severity),
  parts: texts(({ parts }) => parts),
  at_mm: nullable(({ at }) => at ?? null, point),
  message: text(({ message }) => message),
});

/** The file `plan.json`, with the unit of every figure. */
const file = record<Told>({
  showface_plan: { schema: () => z.literal(1), of: () => 1 },
  design: via(
    ({ plan }) => plan.design,
    record<Plan['design']>({ name: text(({ name }) => name), date: text(({ date }) => date) }),
  ),
  face: via(({ plan }) => plan, face),
  parts: list(({ plan }) => plan.layout.parts, part),
  ...within(({ cut }) => cut, CUT_FIELDS),
  finishes: list(({ plan }) => plan.finish.uses, finish),
  bare: list(({ plan }) => plan.finish.bare, bare),
  load: via(({ plan }) => plan.load, load),
  fold: via(({ plan }) => plan.fold, fold),
  fastening: list(({ plan }) => plan.fastening.parts, fastening),
  lettering: list(({ plan }) => plan.signs, lettering),
  patterns: list(({ plan }) => plan.patterns, pattern),
  marks: list(({ plan }) => plan.marks.marks, mark),
  steps: list(({ plan, words }) => plan.marks.steps.map((one) => ({ ...one, text: words.step(one) })), step),
  shopping: list(({ plan }) => plan.shopping, shoppingLine),
  checks: list(({ plan, words }) => plan.checks.map((one) => ({ ...one, message: words.check(one) })), check),
});

/**
 * The plan as the file `plan.json` by contract: units in the names, lengths in full precision (a micrometer),
 * the same bytes for the same design.
 */
export const planJson = (plan: Plan, words: PlanJsonWords): string =>
  `${JSON.stringify(file.of({ plan, words, cut: cutRows(plan) }), null, 1)}\n`;

/** The JSON Schema (draft 2020-12) of `plan.json`, generated from the code. */
export function planJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(file.schema()) as Record<string, unknown>;
  return { $id: 'showface-plan-1', title: 'Showface plan file, format 1', ...schema };
}
