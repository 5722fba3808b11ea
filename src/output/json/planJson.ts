import type { Check } from '../../check/check.ts';
import type { PlacedPhoto } from '../../lettering/photo/placed.ts';
import type { Plan } from '../../plan/types.ts';
import { cutFields } from './cutFields.ts';
import { boxFields, cents, deg, micro, mm, orNull, pair, regionFields } from './figures.ts';
import type { PlanFile } from './planSchema.ts';

/** The same to read only, as all of a plan is. */
type Shown<T> = T extends object ? { readonly [K in keyof T]: Shown<T[K]> } : T;

type Step = Plan['marks']['steps'][number];

/** Sentences that go into the file beside the figures. */
export interface PlanJsonWords {
  readonly check: (check: Check) => string;
  readonly step: (step: Step) => string;
}

/**
 * The plan as the file `plan.json` by contract: units in the names, lengths in full precision (a micrometer),
 * the same bytes for the same design.
 */
export function planJson(plan: Plan, words: PlanJsonWords): string {
  const data = {
    showface_plan: 1 as const,
    design: { name: plan.design.name, date: plan.design.date },
    face: faceFields(plan),
    parts: plan.layout.parts.map(partFields),
    ...cutFields(plan.joinery.pieces, plan.cutting, plan.layout.read),
    finishes: plan.finish.uses.map(finishFields),
    bare: plan.finish.bare.map(bareFields),
    load: loadFields(plan.load),
    fold: foldFields(plan.fold),
    fastening: plan.fastening.parts.map(fasteningFields),
    lettering: plan.signs.map(letteringFields),
    patterns: plan.patterns.map(patternFields),
    marks: plan.marks.marks.map(markFields),
    steps: plan.marks.steps.map((step) => stepFields(step, words.step(step))),
    shopping: plan.shopping.map(shoppingFields),
    checks: plan.checks.map((check) => checkFields(check, words.check(check))),
  };
  const checked: Shown<PlanFile> = data;
  return `${JSON.stringify(checked, null, 1)}\n`;
}

const faceFields = (plan: Plan) => ({
  width_mm: mm(plan.face.width),
  height_mm: mm(plan.face.height),
  levels: plan.face.levels.map((l) => ({
    id: l.id,
    z_mm: mm(l.z),
    ...boxFields(l.box),
    inner: l.inner && boxFields(l.inner),
  })),
  keep_clears: plan.keepClears.map((k) => ({
    id: k.id,
    name: k.name,
    why: k.why,
    ...boxFields(k.box),
    z_mm: mm(k.height),
  })),
});

const partFields = (p: Plan['layout']['parts'][number]) => ({
  id: p.id,
  name: p.name,
  kind: p.kind,
  outline_mm: regionFields(p.region),
  z_mm: [mm(p.z0), mm(p.z1)] as const,
});

const finishFields = (u: Plan['finish']['uses'][number]) => ({
  finish: u.finish,
  face_m2: micro(u.face),
  edge_m2: micro(u.edge),
  back_m2: micro(u.painted.back),
  painted_face_m2: micro(u.painted.face),
  painted_edge_m2: micro(u.painted.edge),
  coats: u.coats,
  volume_l: micro(u.volume),
  primer_l: micro(u.primer),
  buy: u.buy.map((b) => ({
    container: b.container,
    count: b.count,
    volume_l: micro(b.volume),
    price: cents(b.price),
  })),
  left_l: micro(u.left),
  tape_m: micro(u.tape / 1000),
});

const bareFields = (b: Plan['finish']['bare'][number]) => ({
  glued: b.part,
  on: b.on,
  finish: b.finish,
  z_mm: mm(b.z),
  outline_mm: regionFields(b.region),
});

const loadFields = (load: Plan['load']) => ({
  added_kg: micro(load.added),
  center_mm: [mm(load.center.x), mm(load.center.y), mm(load.center.z)] as const,
  moment_nm: micro(load.moment),
  lift_added_n: micro(load.liftAdded),
  bare_kg: micro(load.bare),
});

const foldFields = (fold: Plan['fold']) => ({
  floor_clear_mm: mm(fold.floorClear),
  wall_clear_mm: mm(fold.wallClear),
  wall_board_clear_mm: orNull(fold.wallBoardClear),
  ceiling_clear_mm: mm(fold.ceilingClear),
  floor_space_mm: mm(fold.floorSpace),
  hits: fold.hits.map((h) => ({
    part: h.part,
    what: h.what,
    angle_deg: deg(h.angle),
    over_mm: mm(h.over),
  })),
});

const fasteningFields = (f: Plan['fastening']['parts'][number]) => ({
  part: f.part,
  how: f.how,
  fastener: f.fastener,
  length_mm: orNull(f.length),
  at_mm: f.at.map(pair),
  depth_mm: mm(f.depth),
  glue_l: micro(f.glue),
});

const letteringFields = ({ lettered, photos, stencils }: Plan['signs'][number]) => ({
  sign: lettered.sign,
  text: lettered.text,
  font: lettered.font,
  cap_height_mm: mm(lettered.capHeight),
  cap_heights_mm: lettered.capHeights.map(mm),
  ink_mm2: micro(lettered.ink_mm2),
  width_mm: mm(lettered.width),
  bridges: sum(stencils?.layers.map((l) => l.stencil.bridges.length) ?? []),
  islands_loose: sum(stencils?.layers.map((l) => l.stencil.loose) ?? []),
  ...(photos.length === 0 ? {} : { photos: photos.map(photoFields) }),
});

const photoFields = ({ photo, frame, shown, dpi }: PlacedPhoto) => ({
  photo: photo.id,
  name: photo.name,
  pixels: [photo.width, photo.height] as const,
  whole_mm: boxFields(frame),
  shown_mm: boxFields(shown),
  dpi: micro(dpi),
});

const patternFields = (s: Plan['patterns'][number]) => ({
  for: s.for,
  paper: s.paper,
  rows: s.rows,
  columns: s.columns,
  pages: s.pages.map((p) => p.name),
});

const markFields = (m: Plan['marks']['marks'][number]) => ({
  datum: m.datum,
  axis: m.axis,
  at_mm: mm(m.at),
  part: m.part,
  edge: m.edge,
});

const stepFields = (s: Step, text: string) => ({
  number: s.number,
  act: s.act,
  parts: s.parts,
  text,
  paints: s.paints.map((p) => ({
    part: p.part,
    finish: p.finish,
    of: p.of,
    face_m2: micro(p.face),
    edge_m2: micro(p.edge),
    back_m2: micro(p.back),
    coats: p.coats,
    primer_coats: p.primerCoats,
    primed_m2: micro(p.primed),
  })),
});

const shoppingFields = (l: Plan['shopping'][number]) => ({
  kind: l.kind,
  item: l.item,
  name: l.name,
  ...l.size,
  count: l.count,
  each: cents(l.each),
  price: cents(l.price),
  owned: l.owned,
  priced: l.priced,
});

const checkFields = (c: Check, message: string) => ({
  code: c.code,
  severity: c.severity,
  parts: c.parts,
  at_mm: c.at ? pair(c.at) : null,
  message,
});

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
