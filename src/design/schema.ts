import { z } from 'zod';
import { FEATURE_TAGS } from './features.ts';
import {
  capHeight,
  color,
  type Immutable,
  id,
  label,
  length,
  money,
  partId,
  pictureId,
  size,
  sizeOrZero,
  thing,
} from './field.ts';
import { FORMS } from './fileWords.ts';
import { jobSchema } from './job/schema.ts';
import {
  FARTHEST_BOW,
  FARTHEST_HANDLE,
  FORMAT_VERSION,
  leastCorners,
  MOST_CORNERS,
  MOST_FORMS,
  MOST_PHOTO,
  MOST_PHOTOS,
  MOST_PICTURE_COLORS,
  MOST_SIDES,
  PACKET_SECTIONS,
  PICTURE_HEIGHT,
} from './limits.ts';
import { ruleSchema } from './rule/schema.ts';

export type { Axis, Edge } from './field.ts';
export { type Rule, type RuleKind, type RuleOf, ruleSchema } from './rule/schema.ts';

/**
 * The design file. Lengths are millimeters, angles degrees, areas square meters, volumes liters and
 * masses kilograms throughout; origin at the lower left of the face as the room sees it with the bed
 * stowed, x right, y up, z out of the face into the room.
 *
 * This file is the single source of the types, of validation and of the JSON Schema in `assets/`.
 */

// ── Bed ──────────────────────────────────────────────────────────────────────────────────────────

/** What an edge lies out of a string between its corners, a quarter, half and three quarters along from its left or lower end. */
const bow = z.number().min(-FARTHEST_BOW).max(FARTHEST_BOW);
const bowSchema = z.strictObject({ first: bow.optional(), middle: bow.optional(), last: bow.optional() });

/** Readings of a tape; what is left out is true. */
const measuredSchema = z.strictObject({
  bottom: size.optional(),
  middle: size.optional(),
  top: size.optional(),
  left: size.optional(),
  right: size.optional(),
  /** From the lower left corner to the upper right one. */
  rising: size.optional(),
  falling: size.optional(),
  bows: z
    .strictObject({
      bottom: bowSchema.optional(),
      right: bowSchema.optional(),
      top: bowSchema.optional(),
      left: bowSchema.optional(),
    })
    .optional(),
});

export const bedSchema = z.strictObject({
  /** `end`: the bed stands upright when stowed; `side`: it lies lengthwise. */
  pivotAlong: z.enum(['end', 'side']),
  mattress: z.strictObject({ width: size, length: size, thickness: size }),
  /** Added to the mattress to get the platform, in all, across and along. */
  allowance: z.strictObject({ width: sizeOrZero, length: sizeOrZero }),
  frame: z.strictObject({
    thickness: size,
    depth: size,
    /** Which boards run past the others at the corners. */
    runsPast: z.enum(['sides', 'ends']),
    material: id,
  }),
  platform: z.strictObject({ thickness: size, material: id }),
  cleats: z.strictObject({
    /** How far the top of the cleats sits below the frame's top. */
    below: sizeOrZero,
    width: size,
    depth: size,
    runsPast: z.enum(['sides', 'ends']),
  }),
  /** A sheet over the whole underside, or none (recessed field). */
  skin: z.strictObject({ thickness: size, material: id }).nullable(),
  pivot: z.strictObject({
    /** Above the floor. */
    height: size,
    /** Behind the rim (or skin) of the face. */
    fromFace: length,
    fromWall: size,
    /** Above the lower edge of the face, stowed. */
    aboveEdge: length,
  }),
  /** From the face to the floor with the bed lowered. */
  legs: z.strictObject({
    /** `beside`: outside of what is seen, hinged to the frame; `on-face`: two places on the face stay clear. */
    where: z.enum(['beside', 'on-face']).default('beside'),
    length: size,
    section: size,
    /** Set back from the end away from the pivot, and from the sides of the face. */
    fromEnd: sizeOrZero,
    fromSide: sizeOrZero,
  }),
  ceiling: size,
  /** Thickness of a baseboard or wall board behind the bed, and how high it stands. */
  wallBoard: z.strictObject({ thickness: sizeOrZero, height: sizeOrZero }),
  /** Free room beside the face at each side; null where nothing stands. */
  beside: z.strictObject({ left: sizeOrZero.nullable(), right: sizeOrZero.nullable() }),
  /** The face as it really is; absent: true. */
  measured: z
    .strictObject({
      /** Outside of the frame boards. */
      rim: measuredSchema,
      /** The opening between the cleats. */
      field: measuredSchema,
      /** What the layout is square to. */
      keep: z.enum(['bottom', 'top', 'left', 'right', 'level']),
      /** By how much the right end of the lower edge stands higher than the left one. */
      rise: length,
      /** What takes the taper: the reveal around a square layout, or a border along the edges. */
      border: z.enum(['square', 'along']),
    })
    .optional(),
});

export const keepClearSchema = z.strictObject({
  id,
  name: label,
  why: z.enum(['hinge', 'leg', 'latch', 'handle', 'other']),
  box: z.strictObject({ x: length, y: length, w: size, h: size }),
  /** How far it stands out of the face; parts lower than its underside may pass below. */
  height: sizeOrZero,
});

// ── Stock and finishes that the design adds to the tables ───────────────────────────────────────

const boardLengths = z.array(z.strictObject({ length: size, price: money })).max(40);
const flatStock = z.strictObject({
  form: z.literal('flat'),
  id,
  name: label,
  material: id,
  width: size,
  thickness: size,
  lengths: boardLengths,
});
const shapedStock = z.strictObject({
  form: z.literal('shaped'),
  id,
  name: label,
  material: id,
  width: size,
  thickness: size,
  girth: size,
  section: z
    .array(z.strictObject({ x: length, y: length }))
    .min(3)
    .max(400),
  spring: z.number().gt(0).lt(90).optional(),
  boardWidth: size.optional(),
  lengths: boardLengths,
});
const sheetStock = z.strictObject({
  form: z.literal('sheet'),
  id,
  name: label,
  material: id,
  thickness: size,
  grain: z.boolean(),
  sizes: z.array(z.strictObject({ length: size, width: size, price: money })).max(40),
});
export const stockSchema = z.discriminatedUnion('form', [flatStock, shapedStock, sheetStock]);

/** An offcut on the shelf: a length of board, or a piece of sheet. */
export const ownedSchema = z.strictObject({
  id,
  stock: id,
  length: size,
  /** Sheets only. */
  width: size.optional(),
  count: z.number().int().min(1).max(500),
  /** Bad stretches of a board, from its left end. */
  defects: z.array(z.strictObject({ from: sizeOrZero, to: sizeOrZero })).max(40),
});

export const finishSchema = z.strictObject({
  id,
  name: label,
  kind: z.enum(['paint', 'stain', 'clear']),
  color,
  sheen: z.enum(['flat', 'eggshell', 'satin', 'gloss']),
  coats: z.number().int().min(1).max(12),
  /** Square meters that a liter covers, one coat. */
  rate_m2_l: z.number().positive().max(100),
  /** Bought for it: containers by table id with the price paid; empty: every size of the system, unpriced. */
  containers: z.array(z.strictObject({ container: id, price: money })).max(20),
  /** Already in the shed. */
  owned_l: z.number().min(0).max(1000),
  primer: z
    .strictObject({ coats: z.number().int().min(0).max(6), rate_m2_l: z.number().positive().max(100) })
    .nullable(),
});

// ── Parts ────────────────────────────────────────────────────────────────────────────────────────

const unitPoint = z.strictObject({ u: z.number().min(0).max(1), v: z.number().min(0).max(1) });

const fixing = z.strictObject({
  how: z.enum(['brads', 'screws', 'glue', 'none']),
  /** Glue under the brads or screws. */
  glue: z.boolean(),
});

const freeEnd = z.discriminatedUnion('cut', [
  z.strictObject({ cut: z.literal('square') }),
  /** Turned from square by `angle`; positive leaves the long point on the left of the direction of travel. */
  z.strictObject({ cut: z.literal('miter'), angle: z.number().gt(-80).lt(80) }),
  /** Mitered return: a short piece turned back to the face. */
  z.strictObject({ cut: z.literal('return') }),
  /** Cut to the border of `at` that it comes to, wherever that is: a part, a member of one, a level or the face. */
  z.strictObject({ cut: z.literal('stop'), at: thing }),
]);
const ends = z.strictObject({ start: freeEnd, end: freeEnd });

const partBase = {
  id,
  name: label,
  /** Last good position and size; rules move it. */
  box: z.strictObject({ x: length, y: length, w: sizeOrZero, h: sizeOrZero }),
  /** What it lies on: `face` (whichever level is beneath most of it), a level, or another part's id. */
  on: thing,
  /** The person said what it lies on: it stays so wherever the part is carried. */
  onChosen: z.literal(true).optional(),
  /** Finish id; null: left bare. */
  finish: id.nullable(),
  fixing,
  /** Not to be moved by dragging. */
  locked: z.boolean(),
};

const stripFields = {
  kind: z.literal('strip'),
  stock: id,
  /**
   * `across` and `up` follow their box; `rising` and `falling` are braces along a diagonal of the box,
   * cut to its corners; `turned` is a strip of `length` at `angle` about the center of the box.
   */
  lie: z.enum(['across', 'up', 'rising', 'falling', 'turned']),
  angle: z.number().min(-180).max(180),
  length: size,
  /** Stock stood on its edge: width and thickness change places. */
  onEdge: z.boolean(),
  ends,
  /** Cut rough with the shop's allowance and measured in place. */
  fit: z.boolean(),
};

/**
 * What a tape read where a strip is to go, along the long edges as it lies to be cut. `planned` is what the plan had
 * when it was read. What is read holds while the piece is cut to fit.
 */
const edgeRead = z.strictObject({ planned: size, read: size });
const tapeRead = z.strictObject({
  left: edgeRead.optional(),
  right: edgeRead.optional(),
  /** From the start of the left edge to the end of the right one. */
  diagonal: size.optional(),
  /** The end that takes the angle where the two edges differ otherwise than planned; a diagonal tells it by itself. */
  slant: z.enum(['start', 'end', 'both']),
  /** The long side of its box when it was read. */
  of: size,
  /** What stands elsewhere than planned: what the piece ends at, or nothing but the piece. */
  moves: z.enum(['start', 'end', 'nothing']),
});

/** What a tape read of straight lengths of a run, by their place along it; it holds while there are as many as then. */
const runReads = z.strictObject({
  legs: z.number().int().min(1),
  at: z.record(z.string().regex(/^\d+$/), tapeRead),
});

const cornerCut = z.enum(['rounded', 'coved', 'clipped', 'stepped']);
const handleShare = z.number().min(-FARTHEST_HANDLE).max(FARTHEST_HANDLE);
/** Where a handle of a smooth side stands, in the box around the corners. */
const sideHandle = z.strictObject({ u: handleShare, v: handleShare });

/** A corner of a drawn outline: where it is, how the side to the next one runs, and what is taken off it. */
const outlineCorner = z.strictObject({
  ...unitPoint.shape,
  /** Straight where nothing is said. Rise and radius bow it out of the outline, less than 0 into it. */
  side: z
    .discriminatedUnion('as', [
      z.strictObject({ as: z.literal('rise'), rise: length }),
      z.strictObject({ as: z.literal('radius'), radius: length }),
      /** Without handles it runs on into the sides beside it. */
      z.strictObject({ as: z.literal('smooth'), handles: z.tuple([sideHandle, sideHandle]).optional() }),
    ])
    .optional(),
  cut: z.strictObject({ how: cornerCut, size }).optional(),
});

/** Which way a head or a shaped edge looks; up where nothing is said. */
const toward = z.literal('down').optional();
const many = (least: number, most: number) => z.number().int().min(least).max(most);

/** Each fills its box. Those that have measures of their own are told in `layout/place/outlines.ts`. */
export const panelShapeSchema = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('rectangle') }),
  /** A rectangle with its corners taken off by `size`. */
  z.strictObject({
    form: z.literal('corners'),
    cut: cornerCut,
    size,
  }),
  /** Straight sides and a circular head that rises by `rise` to the top of the box. */
  z.strictObject({ form: z.literal('arched'), rise: size, toward }),
  /** Heads of two centers, of three, and of half an ellipse. */
  z.strictObject({ form: z.literal('pointed'), rise: size, toward }),
  z.strictObject({ form: z.literal('basket'), rise: size, toward }),
  z.strictObject({ form: z.literal('elliptical'), rise: size, toward }),
  /** Heads of four centers; `radius` is that of the lower arcs. */
  z.strictObject({ form: z.literal('four-centered'), rise: size, radius: size, toward }),
  z.strictObject({ form: z.literal('ogee'), rise: size, radius: size, toward }),
  /** What goes around an arched opening, `width` wide, open at the foot. */
  z.strictObject({ form: z.literal('arch-band'), rise: size, width: size, toward }),
  /** The ellipse of the box. */
  z.strictObject({ form: z.literal('round') }),
  z.strictObject({ form: z.literal('ring'), width: size }),
  z.strictObject({ form: z.literal('regular'), sides: many(3, 24) }),
  /** Hollows of a star lie at `waist` of the way out to its points. */
  z.strictObject({ form: z.literal('star'), points: many(3, 24), waist: z.number().min(0.05).max(0.95) }),
  z.strictObject({ form: z.literal('quatrefoil') }),
  z.strictObject({ form: z.literal('ribbon'), notch: size }),
  /** Both ends run out into a point, as the foot of a shield does. */
  z.strictObject({ form: z.literal('shield'), point: size }),
  /** One edge in arcs that hang, or in waves. */
  z.strictObject({ form: z.literal('scalloped'), count: many(1, 60), depth: size, toward }),
  z.strictObject({ form: z.literal('waved'), count: many(1, 60), depth: size, toward }),
  /** Drawn corner by corner, in the box around its corners; what is curved may reach out of that, and fills the part's own. */
  z.strictObject({
    form: z.literal('polygon'),
    points: z.array(outlineCorner).min(leastCorners(true)).max(MOST_CORNERS),
  }),
]);

/**
 * Of the sides of the whole path only so many, from one on: what is left of a run that was cut in two. Sides are counted in
 * order of travel from 0, counterclockwise where the path goes around, and back from its last one where less; one more than
 * it has where both ends lie on the same side.
 */
const only = z
  .strictObject({
    from: z.number().int().min(-MOST_SIDES).max(MOST_SIDES),
    count: many(1, MOST_SIDES),
  })
  .optional();

/** How the arch or the bows of a run are made. */
const bowsMade = {
  /** Straight segments of the stock, each. */
  segments: z.number().int().min(2).max(48).optional(),
  /**
   * Arcs are made as they are instead, each in so many pieces: sawn from this sheet, or bent of the run's own boards where
   * none is named. What is smooth stays made of segments.
   */
  band: z.strictObject({ stock: id.nullable(), pieces: z.number().int().min(1).max(24) }).optional(),
};

const runFields = {
  kind: z.literal('run'),
  stock: id,
  path: z.discriminatedUnion('form', [
    /** The box itself, closed. */
    z.strictObject({ form: z.literal('frame'), only }),
    /** Sill, two stiles and a segmented arch of the given rise; closed. */
    z.strictObject({
      form: z.literal('arched'),
      rise: size,
      only,
      ...bowsMade,
    }),
    /** Drawn corner by corner, in the box around its corners. Bows of an open path reach to the right of the way. */
    z.strictObject({
      form: z.literal('points'),
      points: z.array(outlineCorner).min(leastCorners(false)).max(MOST_CORNERS),
      closed: z.boolean(),
      only,
      ...bowsMade,
    }),
    /** Along the outer border of a shape in the box; a head that is open runs from foot to foot, without the side between. */
    z.strictObject({
      form: z.literal('shape'),
      shape: panelShapeSchema,
      open: z.literal(true).optional(),
      ...bowsMade,
    }),
  ]),
  /** Where the stock lies, walking the path: closed runs inside or outside of it; open runs left or right. */
  side: z.enum(['inside', 'outside']),
  corner: z.enum(['miter', 'butt-across', 'butt-up']),
  /** Stock stood on its edge: width and thickness change places. */
  onEdge: z.literal(true).optional(),
  ends,
  fit: z.boolean(),
};

const opening = z.strictObject({
  id,
  shape: panelShapeSchema,
  /** Margins from the sides of the panel's box. */
  margin: z.strictObject({ left: sizeOrZero, right: sizeOrZero, bottom: sizeOrZero, top: sizeOrZero }),
});

const panelFields = {
  kind: z.literal('panel'),
  stock: id,
  shape: panelShapeSchema,
  openings: z.array(opening).max(60),
  grain: z.enum(['up', 'across', 'any']),
};

/** Letters of a line that are larger or smaller than the others. */
const letterSize = z.strictObject({
  /** First character, counted from 0, and how many: code points of the line's text. */
  from: z.number().int().min(0).max(500),
  count: z.number().int().min(1).max(500),
  /** Share of the line's cap height. */
  size: z.number().min(0.2).max(3),
  /** On the line's baseline, half way up its caps, or level with the top of its caps. */
  stand: z.enum(['baseline', 'middle', 'top']),
});

/** What is painted of letters: themselves, and around, in and behind them. */
const look = {
  finish: id,
  outline: z.strictObject({ width: size, finish: id }).nullable(),
  inline: z.strictObject({ inset: size, width: size, finish: id }).nullable(),
  shade: z
    .strictObject({
      kind: z.enum(['drop', 'block']),
      angle: z.number().min(-180).max(180),
      distance: size,
      finish: id,
    })
    .nullable(),
  /** A band behind each line, so far beyond its letters, with ends notched in so deep. */
  ribbon: z.strictObject({ margin: sizeOrZero, notch: sizeOrZero, finish: id }).optional(),
};

const MOST_LINES = 40;

/** Colors of lines that have a look of their own, by the first line of that look, counted from 1. */
const lineRole = z.templateLiteral([
  z.enum(['ribbon', 'shade', 'outline', 'fill', 'inline']),
  '-',
  z.int().min(1).max(MOST_LINES),
]);

/** Colors of pictures that are no color of the letters, counted from 1 as they are painted. */
const pictureRole = z.templateLiteral(['picture-', z.int().min(1).max(100)]);
export type PictureRole = z.infer<typeof pictureRole>;
export type LineRole = z.infer<typeof lineRole>;

const cropped = z.number().min(0).max(0.95);

/** A photo on the paper of a printed sign, over its color and under its letters. */
const lyingPhoto = z.strictObject({
  /** Of the design's list. */
  photo: id,
  /** `cover`: over all of the board and its bleed; `inside`: as large as the margin leaves room; `sized`: by its width. */
  fit: z.enum(['cover', 'inside', 'sized']),
  /** Of the whole photo, before anything is cut off. */
  width: size,
  /** What is cut off at its sides, shares of its width and height. */
  crop: z.strictObject({ left: cropped, right: cropped, bottom: cropped, top: cropped }).optional(),
  /** From the middle of the board. */
  shift: z.strictObject({ x: length, y: length }),
});

/** Of the table, or `own:` and the id of a font kept with the design. */
const fontId = z.string().min(1).max(120);

/** Features of fonts that letters are set with; those that a font lacks change nothing. */
const features = z.array(z.enum(FEATURE_TAGS)).max(FEATURE_TAGS.length);

export const letteringSchema = z.strictObject({
  font: fontId,
  features: features.optional(),
  lines: z
    .array(
      z.strictObject({
        text: z.string().max(500),
        /** Cap height of this line where it differs. */
        capHeight: capHeight.optional(),
        /** Letters with a size of their own. Where they overlap, the first one listed counts. */
        sizes: z.array(letterSize).max(100).optional(),
        /** Font and look of this line where they are its own. */
        font: fontId.optional(),
        look: z.strictObject(look).optional(),
        /** Features of its font where they are the line's own. */
        features: features.optional(),
        /** Letters that are drawn in another form of their font: which one, by a feature that has several. */
        forms: z
          .array(
            z.strictObject({
              /** The letter, counted from 0: a code point of the line's text. */
              at: z.number().int().min(0).max(500),
              tag: z.string().regex(/^[a-z]{2}[a-z0-9]{2}$/),
              value: z.number().int().min(1).max(MOST_FORMS),
            }),
          )
          .max(500)
          .optional(),
        /** Stands before the line, which then begins where the others begin that have one; numbers count on. */
        mark: z.enum(['bullet', 'number']).optional(),
        /** Along an outline: at its foot. */
        foot: z.literal(true).optional(),
      }),
    )
    .min(1)
    .max(MOST_LINES),
  capHeight,
  /** Added between letters, share of the cap height. */
  tracking: z.number().min(-0.5).max(3),
  /** Added to each word space, share of the cap height. */
  wordSpace: z.number().min(-0.5).max(5),
  /** Baseline to baseline, share of the cap height. */
  lineSpace: z.number().min(0.5).max(6),
  align: z.enum(['left', 'center', 'right']),
  kerning: z.boolean(),
  /** Letters and figures are set apart by the white between them, in place of their font's pairs. */
  optical: z.literal(true).optional(),
  /** Baseline bent to a circle; rise of the middle over the chord, positive arches up. 0: straight. */
  arcRise: z.number().min(-5000).max(5000),
  /** The text runs along the outline of its board, the margin from it, or along a path of its own. */
  along: z.enum(['inside', 'outside', 'path']).optional(),
  /** That open path, in the box of the board, from where the last line begins to its end; level across the middle when left out. */
  path: z.array(outlineCorner).min(leastCorners(false)).max(MOST_CORNERS).optional(),
  /**
   * `none`: cap height as given; else the cap height follows the sign and its margin. `lines`: each line has one of its
   * own, so that all are as wide. Along an outline, half of that is filled.
   */
  fit: z.enum(['none', 'width', 'height', 'both', 'lines']),
  margin: sizeOrZero,
  /** From the centered place. */
  shift: z.strictObject({ x: length, y: length }),
  ...look,
  /** How it is made. */
  make: z.enum(['trace', 'pounce', 'stencil', 'mirrored', 'cut-out', 'printed']),
  /** The largest space between the holes of a pounce pattern; `POUNCE` of `design/defaults.ts` when left out. */
  pounce: size.min(0.5).optional(),
  /** How far color is printed beyond the edge that is trimmed; `BLEED` of `design/defaults.ts` when left out. */
  bleed: sizeOrZero.max(50).optional(),
  /** Printed signs only, from the back to the front. */
  photos: z.array(lyingPhoto).max(MOST_PHOTOS).optional(),
  /** Sheet that cut-out letters are sawn from; the sign's own stock when left out. */
  stock: id.optional(),
  stencil: z.strictObject({
    bridgeWidth: size,
    bridges: z.number().int().min(1).max(8),
    direction: z.enum(['thinnest', 'up', 'across']),
    /** Tongues of the sheet thinner than this are held by a bridge. */
    tongue: sizeOrZero,
    /** Sheet left around the lettering. */
    frame: sizeOrZero,
    /**
     * Bridges put by hand: island by its index from the left, and the angle at which each one leaves it. No
     * angles: the island's bridges were taken away.
     */
    placed: z
      .array(
        z.strictObject({
          /** The color whose stencil it is; the letters themselves when left out. */
          layer: z
            .union([z.enum(['ribbon', 'shade', 'outline', 'inline']), pictureRole, lineRole])
            .optional(),
          island: z.number().int().min(0),
          angles: z.array(z.number()).max(8),
        }),
      )
      .max(500),
  }),
});

const signFields = { ...panelFields, kind: z.literal('sign'), lettering: letteringSchema };

/** Hardware of a usual size, as the table had it when it was chosen. */
const sold = z.strictObject({
  /** Its entry in the table. */
  entry: id,
  /** What it takes up, whatever it lies between. */
  w: size,
  h: size,
  /** How it may be held, the best first: how much of the screw's length is in the hardware itself. */
  ways: z
    .array(z.strictObject({ screw: id, from: z.enum(['front', 'back']), into: sizeOrZero }))
    .min(1)
    .max(4),
  /** Middles of its screws in its box. */
  holes: z.array(unitPoint).min(1).max(40),
});

const fittingFields = {
  kind: z.literal('fitting'),
  shape: panelShapeSchema,
  depth: sizeOrZero,
  mass_kg: z.number().min(0).max(200),
  price: money,
  color,
  /** Absent: of any size, with screws of its own. */
  sold: sold.optional(),
};

/** No thickness, only color. */
const paintedFields = { kind: z.literal('painted'), shape: panelShapeSchema };

/** Letters on whatever is beneath: no board; where it has a finish, its shape is painted under them. */
const letteringFields = { ...paintedFields, kind: z.literal('lettering'), lettering: letteringSchema };

/** How pieces are set out over a shape; each is told in `layout/fill/patterns.ts`. */
const fillPattern = z.discriminatedUnion('form', [
  /**
   * Boards side by side; lapped and tongued ones reach `lap` under the next one. With a `length`, unless it is 0, a
   * row that is longer is made of several boards, whose joints are staggered.
   */
  z.strictObject({
    form: z.literal('planks'),
    edge: z.enum(['square', 'lapped', 'tongued']),
    lap: sizeOrZero,
    length: sizeOrZero.optional(),
  }),
  /** Boards with a batten over every joint; across it their gap. */
  z.strictObject({ form: z.literal('battened'), stock: id }),
  /**
   * Laths over laths that cross them square; the gap is the opening between two of one layer. Halved ones lie in one
   * layer, let into each other at every crossing.
   */
  z.strictObject({ form: z.literal('lattice'), halved: z.literal(true).optional() }),
  /**
   * Rows of pieces of one length, each row moved against the one below. With painted joints they are pieces of color on
   * a board of sheet, which has the finish of the joints.
   */
  z.strictObject({
    form: z.literal('courses'),
    length: size,
    bond: z.enum(['half', 'third', 'stacked']),
    joints: z.strictObject({ finish: id.nullable() }).optional(),
  }),
  /** Squares of `count` pieces side by side, every other one turned. */
  z.strictObject({ form: z.literal('basket'), count: many(2, 12) }),
  /** Pieces of one length whose ends meet the sides of the next, square. */
  z.strictObject({ form: z.literal('herringbone'), length: size }),
  /**
   * Sheet with grooves along it, `depth` deep and as wide as the gap, `face` apart; pieces of sheet meet at a groove.
   */
  z.strictObject({ form: z.literal('grooved'), face: size, depth: size }),
  /**
   * Slats that lie over each other by at least `lap`, their lower edges out, whole from edge to edge. They lean by `tilt`
   * from the face, between stiles; without it each lies on the one below, as siding does, and the lowest on a `starter`
   * ripped from the same boards.
   */
  z.strictObject({
    form: z.literal('louvers'),
    lap: sizeOrZero,
    tilt: z.number().min(5).max(60).optional(),
    starter: z.literal(true).optional(),
  }),
  /** Columns `span` wide of pieces that rise and fall at `slope`, cut to meet. */
  z.strictObject({ form: z.literal('chevron'), span: size, slope: z.number().min(5).max(75) }),
]);

const fillFields = {
  kind: z.literal('fill'),
  shape: panelShapeSchema,
  /** Left free of pieces: doors, windows, holes. */
  openings: z.array(opening).max(60).optional(),
  /** What its pieces end at, wherever that is: parts, members of one, levels. */
  around: z.array(thing).min(1).max(60).optional(),
  /** Boards that all pieces are sawn from, whose width is the pieces', or sheet. */
  stock: id,
  /** Of pieces that are ripped from sheet; `RIPPED` of `design/defaults.ts` when left out. */
  width: size.optional(),
  pattern: fillPattern,
  /** Seen between two pieces. */
  gap: sizeOrZero,
  /** Along the pieces, counterclockwise from level. */
  angle: z.number().min(-180).max(180),
  /**
   * Across the pieces: a piece or a gap in the middle of the shape, or a whole piece at its lower (left) or upper
   * (right) edge. `balanced`: a piece or a gap in the middle, whichever leaves the wider pieces at both edges. Of a
   * herringbone: a piece or the corner of a V in the middle, or a whole piece or V in the lower or upper corner.
   */
  start: z.enum(['balanced', 'piece', 'gap', 'low', 'high']),
  /** Turned about, as in a mirror: from end to end of the pieces, from edge to edge across them. */
  flip: z.enum(['along', 'across', 'both']).optional(),
  /** By `column,row` from the lower left: leave out, or another finish. */
  overrides: z.record(
    z.string().regex(/^\d+,\d+$/),
    z.strictObject({ omit: z.boolean().optional(), finish: id.nullable().optional() }),
  ),
};

export const spacingSchema = z.strictObject({
  /**
   * `gaps`: equal gaps, at the ends too. `flush`: first and last touch the ends. `half`: half a gap at
   * each end. `centers`: centers a fixed `pitch` apart, centered as a group. `most`: as `gaps`, with the
   * least count whose gap is not over `most`.
   */
  mode: z.enum(['gaps', 'flush', 'half', 'centers', 'most']),
  count: z.number().int().min(1).max(400),
  pitch: size.optional(),
  most: size.optional(),
});

const memberBase = { finish: id.nullable() };
const member = z.discriminatedUnion('kind', [
  z.strictObject({ ...memberBase, ...stripFields }),
  z.strictObject({ ...memberBase, ...runFields }),
  z.strictObject({ ...memberBase, ...panelFields }),
  z.strictObject({ ...memberBase, ...fittingFields }),
  z.strictObject({ ...memberBase, ...paintedFields }),
]);

const arrayFields = {
  kind: z.literal('array'),
  member,
  /**
   * Size of a member; a direction without spacing stretches the member over the whole box, and a strip
   * takes its width from its stock.
   */
  memberSize: z.strictObject({ w: sizeOrZero, h: sizeOrZero }),
  across: spacingSchema.nullable(),
  up: spacingSchema.nullable(),
  /** By `column,row` from the lower left: leave out, another finish or stock, or what a tape read there. */
  overrides: z.record(
    z.string().regex(/^\d+,\d+$/),
    z.strictObject({
      omit: z.boolean().optional(),
      finish: id.nullable().optional(),
      stock: id.optional(),
      read: tapeRead.optional(),
    }),
  ),
};

export const partSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...partBase, ...stripFields, read: tapeRead.optional() }),
  z.strictObject({ ...partBase, ...runFields, reads: runReads.optional() }),
  z.strictObject({ ...partBase, ...panelFields }),
  z.strictObject({ ...partBase, ...signFields }),
  z.strictObject({ ...partBase, ...fittingFields }),
  z.strictObject({ ...partBase, ...paintedFields }),
  z.strictObject({ ...partBase, ...letteringFields }),
  z.strictObject({ ...partBase, ...arrayFields }),
  z.strictObject({ ...partBase, ...fillFields }),
]);

/**
 * How a group was made, so that it can be asked again (`assembly/`): its kind with the answers, and what has which
 * role in it. A kind that is not known here is a plain group.
 */
const assembly = z.strictObject({
  kind: id,
  answers: z.record(id, z.union([z.number(), z.string().max(200), z.boolean(), z.null()])),
  parts: z.record(id, partId),
  rules: z.record(id, id),
});

export const groupSchema = z.strictObject({
  id,
  name: label,
  parts: z.array(partId).max(2000),
  assembly: assembly.optional(),
});

// ── Joints: what the person decided where the proposal was not right ─────────────────────────────

export const jointSchema = z.strictObject({
  id,
  /** The two parts that meet; a corner of one run names it twice. */
  parts: z.tuple([thing, thing]),
  kind: z.enum(['miter', 'butt', 'cope', 'half-lap']),
  /** For butt, cope and half-lap: the part that runs through. */
  through: thing.optional(),
});

// ── Settings that belong to the job ──────────────────────────────────────────────────────────────

export const shopSchema = z.strictObject({
  boardKerf: sizeOrZero,
  sheetKerf: sizeOrZero,
  /** Cut off each end of a bought board before the first piece. */
  endTrim: sizeOrZero,
  /** Cut off each edge of a bought sheet. */
  edgeTrim: sizeOrZero,
  saw: z.strictObject({ miter: z.number().min(0).max(75), bevel: z.number().min(0).max(60) }),
  /** Left on pieces that are measured in place. */
  fitAllowance: sizeOrZero,
  /** Offcuts shorter than this are waste. */
  keepOffcut: sizeOrZero,
});

export const fasteningSchema = z.strictObject({
  brad: id,
  /** Brad lengths at hand; empty: all of the table's. */
  lengths: z.array(size).max(40),
  spacing: size,
  /** Clear of ends and edges. */
  fromEdge: sizeOrZero,
  /** The brad stops this far short of the far side. */
  shortOfFar: sizeOrZero,
  /** A brad must bite at least this deep. */
  bite: size,
  screw: id,
  /** Parts heavier than this want screws. */
  screwOver_kg: z.number().positive().max(1000),
});

export const loadSchema = z.strictObject({
  warnAdded_kg: z.number().positive().max(1000),
  warnLift_n: z.number().positive().max(5000),
});

/** What is bought besides wood and paint: what of it is in the shed already, and what it costs. */
export const suppliesSchema = z.strictObject({
  owned: z.strictObject({
    primer_l: z.number().min(0).max(1000),
    glue_l: z.number().min(0).max(1000),
    /** Length of masking tape. */
    tape: z.number().min(0).max(1_000_000),
    screws: z
      .array(z.strictObject({ screw: id, length: size, count: z.number().int().min(1).max(100_000) }))
      .max(100),
  }),
  /** Paid for a box, bottle, roll or page, by table id; the table's own price where there is none. */
  prices: z.record(id, money),
  /** Sizes that primer is bought in; empty: every size of the system, unpriced. */
  primer: z.array(z.strictObject({ container: id, price: money })).max(20),
  /** Bought over what is needed, as shares of it; absent: a tenth of the brads and screws. */
  spare: z
    .strictObject({
      boards: z.number().min(0).max(1),
      sheets: z.number().min(0).max(1),
      fasteners: z.number().min(0).max(1),
      /** One more of each kind of board, sheet, can and box where no share brings one. */
      one: z.boolean(),
    })
    .optional(),
});

export const pagesSchema = z.strictObject({
  /** Paper of the tables. */
  paper: id,
  /** Roll width where the paper is a roll. */
  rollWidth: size.optional(),
  margin: z.strictObject({ left: sizeOrZero, right: sizeOrZero, top: sizeOrZero, bottom: sizeOrZero }),
  join: z.enum(['overlap', 'butt']),
  overlap: sizeOrZero,
  /** Keep each letter on one page where it fits. */
  wholeLetters: z.boolean(),
  /** Story sticks and templates to print beside the lettering. */
  also: z.array(z.enum(['story-sticks', 'face', 'parts', 'drilling'])).max(4),
  /** Sections that the packet leaves out; absent: those that say again what others say. */
  without: z.array(z.enum(PACKET_SECTIONS)).max(PACKET_SECTIONS.length).optional(),
});

/**
 * A drawing that the person opened. Each stands for a character of lettering, as high as the capitals, and is made as
 * the letters are.
 */
export const pictureSchema = z.strictObject({
  id: pictureId,
  name: label,
  /** In units of the height. */
  width: z
    .number()
    .int()
    .min(PICTURE_HEIGHT / 100)
    .max(PICTURE_HEIGHT * 100),
  /** From the back to the front: what is painted of each when they go on in this order. */
  colors: z
    .array(
      z.strictObject({
        /** As it was drawn. */
        color,
        /** What it is painted in; null: as the letters around it. */
        finish: id.nullable(),
        /** Closed outlines as `pathOfOutline` reads them, y up, the lower left of the picture at 0. */
        outline: z
          .string()
          .max(400_000)
          .regex(/^(?:M-?\d{1,7} -?\d{1,7}(?:L-?\d{1,7} -?\d{1,7})+Z)+$/, FORMS.outline),
      }),
    )
    .min(1)
    .max(MOST_PICTURE_COLORS),
});

/** A photo that the person opened, as its file has it; it lies on printed signs. */
export const photoSchema = z.strictObject({
  id,
  name: label,
  /** As the bytes themselves say it; a file that says otherwise is told by a check. */
  type: z.enum(['image/png', 'image/jpeg']),
  width: z.number().int().min(1).max(65_535),
  height: z.number().int().min(1).max(65_535),
  /** The file in base64. */
  data: z
    .string()
    .min(1)
    .max(MOST_PHOTO)
    // Outputs write it into addresses as it is. Asked for what must not be in it: that takes no memory, however long it is.
    .refine((s) => !/[^A-Za-z0-9+/=]/.test(s), FORMS.base64),
});

export const designSchema = z.strictObject({
  /** Format version. */
  showface: z.literal(FORMAT_VERSION),
  name: label,
  /** As the person gives it; printed, never read from a clock. */
  date: label,
  note: z.string().max(4000),
  measure: z.strictObject({
    unit: z.enum(['in', 'ft-in', 'mm', 'cm']),
    /** Inch fraction shown: the denominator, or decimals. */
    fraction: z.enum(['8', '16', '32', '64', 'decimal']),
    currency: z.string().max(8),
  }),
  bed: bedSchema,
  keepClears: z.array(keepClearSchema).max(200),
  stocks: z.array(stockSchema).max(500),
  owned: z.array(ownedSchema).max(500),
  finishes: z.array(finishSchema).max(100),
  parts: z.array(partSchema).max(4000),
  groups: z.array(groupSchema).max(500),
  rules: z.array(ruleSchema).max(10_000),
  joints: z.array(jointSchema).max(10_000),
  shop: shopSchema,
  paint: z.strictObject({
    /** Share of paint lost in tray, roller and brush. */
    waste: z.number().min(0).max(1),
    containers: z.enum(['us', 'metric']),
    /** Paint the hidden back of every part too. */
    backPriming: z.boolean(),
  }),
  fastening: fasteningSchema,
  load: loadSchema,
  /** Absent: nothing in the shed, prices of the tables. */
  supplies: suppliesSchema.optional(),
  pages: pagesSchema,
  /** Where the light of the shadow view comes from. */
  light: z.strictObject({ azimuth: z.number().min(-180).max(180), altitude: z.number().min(5).max(85) }),
  /** Fonts the person opened, kept with the design. */
  fonts: z.array(z.strictObject({ id, name: label, data: z.string().max(8_000_000) })).max(20),
  /** Pictures the person opened, kept with the design; absent: none. */
  pictures: z.array(pictureSchema).max(60).optional(),
  /** What is cut, fastened, painted and bought already; absent: nothing. */
  job: jobSchema.optional(),
  /** Photos the person opened, kept with the design; absent: none. */
  photos: z.array(photoSchema).max(MOST_PHOTOS).optional(),
});

export type Design = Immutable<z.infer<typeof designSchema>>;
export type Bed = Design['bed'];
export type KeepClear = Design['keepClears'][number];
export type Group = Design['groups'][number];
export type Assembly = NonNullable<Group['assembly']>;
export type Owned = Design['owned'][number];
export type Picture = Immutable<z.infer<typeof pictureSchema>>;
export type Photo = Immutable<z.infer<typeof photoSchema>>;
export type LyingPhoto = Immutable<z.infer<typeof lyingPhoto>>;
export type Finish = Design['finishes'][number];
export type Part = Design['parts'][number];
export type PartKind = Part['kind'];
export type PartOf<K extends PartKind> = Extract<Part, { readonly kind: K }>;
export type Strip = PartOf<'strip'>;
export type TapeRead = NonNullable<Strip['read']>;
export type Run = PartOf<'run'>;
export type Panel = PartOf<'panel'>;
export type Sign = PartOf<'sign'>;
/** What has letters on it. */
export type LetteredPart = Sign | PartOf<'lettering'>;
export type Fitting = PartOf<'fitting'>;
export type Sold = NonNullable<Fitting['sold']>;
export type Painted = PartOf<'painted'>;
export type PartArray = PartOf<'array'>;
export type Fill = PartOf<'fill'>;
export type Member = PartArray['member'];
export type PanelShape = Panel['shape'];
export type OutlineCorner = Extract<PanelShape, { form: 'polygon' }>['points'][number];
export type FreeEnd = Strip['ends']['start'];
export type Lettering = Sign['lettering'];
export type LetterLine = Lettering['lines'][number];
export type Spacing = Immutable<z.infer<typeof spacingSchema>>;
export type Joint = Design['joints'][number];
export type Shop = Design['shop'];
export type ShedSupplies = NonNullable<Design['supplies']>;
export type Pages = Design['pages'];
