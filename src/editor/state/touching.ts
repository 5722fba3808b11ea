import { liveFacts } from '../../design/job/record.ts';
import type { Design } from '../../design/schema.ts';
import type { Touching } from '../document/touching.ts';

let here: Touching | null = null;
let coming: Promise<Touching> | null = null;

/** Null where it is still on its way. */
export const touchingNow = (): Touching | null => here;

export function loadTouching(): Promise<Touching> {
  coming ??= import('../document/touching.ts').then(({ createTouching }) => {
    here = createTouching();
    return here;
  });
  // Without it the next one who asks tries again.
  coming.catch(() => {
    coming = null;
  });
  return coming;
}

/** Fetches it where something is done, before a change asks for it. */
export function foreseeTouching({ job }: Pick<Design, 'job'>): void {
  if (liveFacts(job).length > 0) loadTouching().catch(() => {});
}
