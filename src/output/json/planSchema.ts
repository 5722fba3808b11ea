import { z } from 'zod';
import { CHECK_CODES } from '../../check/codes.ts';

/** A figure in a unit that its schema names. */
const measured = (unit: string) => z.number().meta({ unit });
const mm = measured('mm');
const deg = measured('deg');
const m2 = measured('m2');
const liters = measured('l');
const kg = measured('kg');
const money = z.number().meta({ unit: 'currency of the design' });
const count = z.number().int().min(0);

const point = z.tuple([mm, mm]).meta({ description: 'x to the right, y up' });
const ring = z.array(point);
const region = z.array(z.strictObject({ outer: ring, holes: z.array(ring) }));
const box = { x_mm: mm, y_mm: mm, width_mm: mm, height_mm: mm };

const setting = z.strictObject({ miter_deg: deg, bevel_deg: deg }).nullable();

const end = z.strictObject({
  cut: z.enum(['square', 'miter', 'butt', 'cope', 'return', 'plunge', 'point', 'sawn']),
  miter_deg: deg,
  bevel_deg: deg,
  long: z.enum(['left', 'right', 'both', 'middle']),
  with: z.string().nullable().meta({ description: 'part that it meets' }),
  second: setting.meta({ description: 'second cut of an end that comes to a point' }),
  nested: setting.meta({ description: 'settings with sprung molding held at its spring angle' }),
});

const corner = z.enum(['long-point', 'short-point', 'square', 'shoulder', 'corner', 'outermost']);

const edgeRead = z.strictObject({ planned_mm: mm, read_mm: mm });

const piece = z.strictObject({
  id: z.string(),
  part: z.string(),
  label: z.string().meta({ description: 'marked on the wood; identical pieces share it' }),
  stock: z.string(),
  length_mm: mm.meta({ description: 'what a tape reads between two corners along one edge' }),
  measured: z.strictObject({
    edge: z.enum(['left', 'right', 'sawn', 'overall']),
    from: corner,
    to: corner,
  }),
  edges_mm: z.strictObject({ left: mm.nullable(), right: mm.nullable() }),
  overall_mm: mm.meta({ description: 'the wood that it takes' }),
  width_mm: mm,
  thickness_mm: mm,
  outline_mm: ring.meta({ description: 'start end left, left edge up, show face toward the reader' }),
  holes_mm: z.array(ring),
  ends: z.array(end).length(2),
  notches: z.array(
    z.strictObject({
      from_mm: mm,
      to_mm: mm,
      depth_mm: mm,
      side: z.enum(['face', 'back', 'groove']),
      miter_deg: deg,
    }),
  ),
  scribed: z
    .array(
      z.strictObject({
        edge: z.enum(['left', 'right']),
        most_mm: mm,
        at_mm: mm.meta({ description: 'from the start end, where most comes off' }),
        line_mm: ring.meta({ description: 'where the wood ends, from the start end' }),
      }),
    )
    .optional()
    .meta({ description: 'long edges that are planed to an edge of the bed that bows' }),
  fit: z.strictObject({
    in_place: z.boolean(),
    allowance_mm: mm,
    read: z
      .strictObject({
        left: edgeRead.optional(),
        right: edgeRead.optional(),
        diagonal_mm: mm.optional(),
        slant: z.enum(['start', 'end', 'both']).meta({ description: 'the end that takes the angle' }),
        followers: z.array(z.string()).meta({ description: 'parts that are elsewhere for it' }),
      })
      .optional()
      .meta({ description: 'what a tape read in place; the piece is cut to it' }),
  }),
  quantity: count,
});

const bound = z.strictObject({
  stock: z.string(),
  used: count,
  lower_bound: count,
  cost: money,
  lower_cost: money,
  proved: z.boolean(),
});

const cutting = {
  pieces: z.array(piece),
  boards: z.array(
    z.strictObject({
      stock: z.string(),
      length_mm: mm,
      owned: z.string().nullable(),
      cuts: z.array(
        z.strictObject({
          piece: z.string(),
          from_mm: mm,
          to_mm: mm,
          turned: z.boolean(),
          left_deg: deg,
          right_deg: deg,
        }),
      ),
      offcut_mm: mm,
      cost: money,
    }),
  ),
  boards_bound: z.array(bound),
  sheets: z.array(
    z.strictObject({
      stock: z.string(),
      size_mm: z.array(mm).length(2),
      owned: z.string().nullable(),
      placements: z.array(
        z.strictObject({
          ...{ piece: z.string(), ...box, turned: z.boolean() },
          /** What it is sawn out of with others that lie in each other. */
          blank: z.strictObject(box).optional(),
        }),
      ),
      sequence: z.array(
        z.strictObject({
          number: count,
          kind: z.enum(['rip', 'cross']),
          of: z.strictObject(box),
          fence_mm: mm,
        }),
      ),
      cost: money,
    }),
  ),
  sheets_bound: z.array(bound),
};

const face = z.strictObject({
  width_mm: mm,
  height_mm: mm,
  levels: z.array(
    z.strictObject({ id: z.string(), z_mm: mm, ...box, inner: z.strictObject(box).nullable() }),
  ),
  keep_clears: z.array(
    z.strictObject({ id: z.string(), name: z.string(), why: z.string(), ...box, z_mm: mm }),
  ),
});

const finish = z.strictObject({
  finish: z.string(),
  face_m2: m2,
  edge_m2: m2,
  back_m2: m2,
  painted_face_m2: m2,
  painted_edge_m2: m2,
  coats: count,
  volume_l: liters,
  primer_l: liters,
  buy: z.array(z.strictObject({ container: z.string(), count, volume_l: liters, price: money })),
  left_l: liters,
  tape_m: measured('m'),
});

const step = z.strictObject({
  number: count,
  act: z.string(),
  parts: z.array(z.string()),
  text: z.string(),
  paints: z.array(
    z.strictObject({
      part: z.string(),
      finish: z.string(),
      of: z.string(),
      face_m2: m2,
      edge_m2: m2,
      back_m2: m2,
      coats: count,
      primer_coats: count,
      primed_m2: m2,
    }),
  ),
});

const shoppingLine = z.strictObject({
  kind: z.string(),
  item: z.string(),
  name: z.string(),
  length_mm: mm.optional(),
  width_mm: mm.optional(),
  volume_l: liters.optional(),
  pieces: count.optional(),
  count,
  each: money,
  price: money,
  owned: z.boolean(),
  priced: z.boolean(),
});

/** The file `plan.json`, with the unit of every figure. */
export const planSchema = z.strictObject({
  showface_plan: z.literal(1),
  design: z.strictObject({ name: z.string(), date: z.string() }),
  face,
  parts: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      kind: z.string(),
      outline_mm: region,
      z_mm: z.array(mm).length(2).meta({ description: 'over the rim, from and to' }),
    }),
  ),
  ...cutting,
  finishes: z.array(finish),
  bare: z.array(
    z.strictObject({
      glued: z.string(),
      on: z.string(),
      finish: z.string(),
      z_mm: mm,
      outline_mm: region,
    }),
  ),
  load: z.strictObject({
    added_kg: kg,
    center_mm: z.array(mm).length(3),
    moment_nm: measured('N m'),
    lift_added_n: measured('N'),
    bare_kg: kg,
  }),
  fold: z.strictObject({
    floor_clear_mm: mm,
    wall_clear_mm: mm,
    wall_board_clear_mm: mm.nullable(),
    ceiling_clear_mm: mm,
    floor_space_mm: mm,
    hits: z.array(
      z.strictObject({
        part: z.string(),
        what: z.enum(['floor', 'wall', 'ceiling', 'legs', 'side-left', 'side-right', 'wall-board']),
        angle_deg: deg.meta({ description: '0 stowed, 90 lowered' }),
        over_mm: mm,
      }),
    ),
  }),
  fastening: z.array(
    z.strictObject({
      part: z.string(),
      how: z.enum(['brads', 'screws', 'glue', 'none']),
      fastener: z.string().nullable(),
      length_mm: mm.nullable(),
      at_mm: z.array(point),
      depth_mm: mm,
      glue_l: liters,
    }),
  ),
  lettering: z.array(
    z.strictObject({
      sign: z.string(),
      text: z.string(),
      font: z.string(),
      cap_height_mm: mm,
      cap_heights_mm: z.array(mm),
      ink_mm2: measured('mm2'),
      width_mm: mm,
      bridges: count,
      islands_loose: count,
      /** On the paper of a printed sign, from its lower left; absent: none. */
      photos: z
        .array(
          z.strictObject({
            photo: z.string(),
            name: z.string(),
            pixels: z.tuple([count, count]),
            /** All of it, and what is left once its sides are cut off. */
            whole_mm: z.strictObject(box),
            shown_mm: z.strictObject(box),
            dpi: measured('pixels to an inch'),
          }),
        )
        .optional(),
    }),
  ),
  patterns: z.array(
    z.strictObject({
      for: z.string(),
      paper: z.string(),
      rows: count,
      columns: count,
      pages: z.array(z.string()),
    }),
  ),
  marks: z.array(
    z.strictObject({
      datum: z.enum(['left', 'bottom']),
      axis: z.enum(['x', 'y']),
      at_mm: mm,
      part: z.string(),
      edge: z.enum(['low', 'mid', 'high', 'hole']),
    }),
  ),
  steps: z.array(step),
  shopping: z.array(shoppingLine),
  checks: z.array(
    z.strictObject({
      code: z.enum(CHECK_CODES),
      severity: z.enum(['error', 'warning', 'note']),
      parts: z.array(z.string()),
      at_mm: point.nullable(),
      message: z.string(),
    }),
  ),
});

export type PlanFile = z.infer<typeof planSchema>;

/** The JSON Schema (draft 2020-12) of `plan.json`, generated from the code. */
export function planJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(planSchema) as Record<string, unknown>;
  return { $id: 'showface-plan-1', title: 'Showface plan file, format 1', ...schema };
}
