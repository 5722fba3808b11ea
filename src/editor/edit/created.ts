import type { Edit } from '../../design/edit/edit.ts';
import type { Axis, Part } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';

/** What is made and not yet in the design. */
export interface Created {
  readonly edits: readonly Edit[];
  readonly id: string;
  readonly name: string;
  /** The group that it is the ground of, which is selected in its place. */
  readonly group?: string;
  /** Along which axes it keeps its length, whatever is drawn. */
  readonly keeps?: Readonly<Record<Axis, boolean>>;
  /** What it takes up: its stock may decide one side of it. */
  readonly box: Box;
  /** Null for a keep-clear. */
  readonly part: Part | null;
}
