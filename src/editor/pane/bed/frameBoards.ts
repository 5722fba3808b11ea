import type { Bed } from '../../../design/schema.ts';
import { isInch, type LengthUnit } from '../../../measure/style.ts';
import { inches, type Mm } from '../../../measure/units.ts';

/** A board that frames of beds are made of, by the name it is sold under, the same in every language. */
export interface FrameBoard {
  readonly name: string;
  readonly thickness: Mm;
  readonly depth: Mm;
}

const inch = (name: string, thickness: number, depth: number): FrameBoard => ({
  name,
  thickness: inches(thickness),
  depth: inches(depth),
});
const metric = (thickness: Mm, depth: Mm): FrameBoard => ({
  name: `${thickness} x ${depth} mm`,
  thickness,
  depth,
});

/** Minimum dressed dry sizes of PS 20 (American Softwood Lumber Standard), as the stocks of the tables have them. */
const INCH: readonly FrameBoard[] = [
  inch('1 x 6', 3 / 4, 5.5),
  inch('1 x 8', 3 / 4, 7.25),
  inch('5/4 x 6', 1, 5.5),
  inch('2 x 4', 1.5, 3.5),
  inch('2 x 6', 1.5, 5.5),
  inch('2 x 8', 1.5, 7.25),
];

/** Planed sizes that metric countries sell: common practice, no source. */
const METRIC: readonly FrameBoard[] = [
  metric(18, 144),
  metric(21, 145),
  metric(28, 120),
  metric(28, 145),
  metric(28, 195),
  metric(45, 145),
];

/** The boards offered to who measures so. */
export const frameBoards = (unit: LengthUnit): readonly FrameBoard[] => (isInch(unit) ? INCH : METRIC);

/** The board that a frame is made of already, if it is one of them. */
export const frameBoardOf = ({ thickness, depth }: Bed['frame'], unit: LengthUnit): FrameBoard | undefined =>
  frameBoards(unit).find(
    (board) => Math.abs(board.thickness - thickness) < 0.1 && Math.abs(board.depth - depth) < 0.1,
  );
