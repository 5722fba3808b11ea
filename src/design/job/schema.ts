import { z } from 'zod';
import { type Immutable, id, money, size, sizeOrZero } from '../field.ts';

// What is done of a job, as facts about wood and parts. The rules of the record stand in `record.ts`, without the
// library for schemas.

const name = z.string().max(300);

/** What every fact has: the wood or act that it is of, when it was said, and whether it was taken back since. */
const said = {
  id: name,
  /** Counts what was said of the job: later is more, on whichever device. */
  at: z.number().int().min(1).max(1_000_000_000),
  gone: z.literal(true).optional(),
};

/** A rectangle on a sheet, or of the face: x, y, width, height. */
const box = z.tuple([z.number().min(-1e6).max(1e6), z.number().min(-1e6).max(1e6), sizeOrZero, sizeOrZero]);

/** What of a board or sheet a piece took: along the board from its left end, with the blade at both ends. */
const taken = { board: name, from: sizeOrZero, to: sizeOrZero, blade: z.tuple([sizeOrZero, sizeOrZero]) };

/** A board or sheet that is there. */
const board = z.strictObject({
  is: z.literal('board'),
  ...said,
  stock: id,
  length: size,
  /** Sheets only. */
  width: size.optional(),
  got: z.enum(['bought', 'on-hand', 'short']),
  /** Paid for it. */
  paid: money,
  /** The entry of what is on hand that it is one of, or the piece that was to be cut of it. */
  of: name.nullable(),
  /** When it was first said to be there, where more was said of it since. */
  since: z.number().int().min(1).max(1_000_000_000).optional(),
  /** How a sheet is laid out that a saw has been in. */
  lay: z
    .strictObject({
      places: z
        .array(z.strictObject({ piece: name, box, turned: z.boolean(), blank: box.optional() }))
        .max(2000),
      cuts: z.array(z.strictObject({ kind: z.enum(['rip', 'cross']), of: box, fence: sizeOrZero })).max(5000),
      offcuts: z.array(box).max(2000),
    })
    .optional(),
});

export const factSchema = z.discriminatedUnion('is', [
  board,
  /** What the tape reads of a board or sheet. */
  z.strictObject({ is: z.literal('size'), ...said, board: name, length: size, width: size.optional() }),
  /** A stretch of a board that nothing is to be cut of. */
  z.strictObject({ is: z.literal('bad'), ...said, board: name, from: sizeOrZero, to: sizeOrZero }),
  /** A piece that is cut as it was told. */
  z.strictObject({
    is: z.literal('cut'),
    ...said,
    piece: name,
    /** Laid part that it was cut for. */
    part: name,
    stock: id,
    /** Its measures, by which it is known again (`job/mark.ts`). */
    mark: z.array(z.number()).min(1).max(60),
    ...taken,
    /** A piece that no board holds is of none. */
    board: name.nullable(),
    flipped: z.boolean(),
    /** What had been said when the plan was made that it was cut by. */
    by: z.number().int().min(0).max(1_000_000_000),
  }),
  /** A piece that went wrong: its wood is gone from the board. */
  z.strictObject({ is: z.literal('spoiled'), ...said, piece: name, stock: id, ...taken }),
  /** A cut of a sheet. */
  z.strictObject({ is: z.literal('sawn'), ...said, board: name, cut: name }),
  /** What is bought by can, box, bottle, roll, page or one by one: so many, from a number on, so that two devices that bought
   * the same say the same, and what one of them bought more is not lost. */
  z.strictObject({
    is: z.literal('bought'),
    ...said,
    kind: z.enum(['fitting', 'paint', 'primer', 'brads', 'screws', 'glue', 'tape', 'paper']),
    /** Entry of a table, finish or part that it is bought as. */
    item: name,
    /** What the list called it. */
    name,
    size: z.strictObject({
      /** A roll is longer than any bed. */
      length_mm: z.number().min(0).max(10_000_000).optional(),
      width_mm: sizeOrZero.optional(),
      volume_l: sizeOrZero.optional(),
      pieces: z.number().int().min(0).max(1_000_000).optional(),
    }),
    /** Of paint what it looks like, by which it is known again. */
    look: name.optional(),
    /** Bought over what is needed. */
    spare: z.literal(true).optional(),
    from: z.number().int().min(0).max(1_000_000),
    count: z.number().int().min(1).max(1_000_000),
    /** Paid for one. */
    paid: money,
  }),
  /** Something of the order of work: for a part, or, without one, the step as a whole. */
  z.strictObject({
    is: z.literal('done'),
    ...said,
    act: z.string().max(40),
    part: name.nullable(),
    /** Of paint: the color of the lettering, or the part itself, and in what. */
    of: name.nullable(),
    finish: id.nullable(),
    /** Where a part that is fastened lies. */
    box: box.nullable(),
  }),
]);

export const jobSchema = z.strictObject({ facts: z.array(factSchema).max(20_000) });

export type Job = Immutable<z.infer<typeof jobSchema>>;
export type Fact = Job['facts'][number];
export type FactOf<K extends Fact['is']> = Extract<Fact, { readonly is: K }>;
