import type { Face } from '../../bed/face.ts';
import type { KeepClear } from '../../design/schema.ts';

/** What a part is checked against, beside its neighbors. */
export interface CheckContext {
  readonly face: Face;
  readonly keepClears: readonly KeepClear[];
}
