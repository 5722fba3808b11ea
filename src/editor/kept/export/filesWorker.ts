import { planFiles, unwrittenWords } from '../../../output/files.ts';
import type { Plan } from '../../../plan/types.ts';
import { offer } from '../../planning/alive.ts';
import { lettersFor } from '../../shipped/letters.ts';

/** A file with its bytes, as it goes from the worker to the disk. */
export interface MadeFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** What was made, and what has to be read before it is printed. */
export interface Made {
  readonly files: readonly MadeFile[];
  readonly warnings: readonly string[];
}

/** Writes files away from the drawing, so that it stays quick while a long packet is made. */
const work = {
  async make(
    plan: Plan,
    wanted: readonly string[],
    onFile: (done: number, of: number) => void,
  ): Promise<Made> {
    const letters = await lettersFor(JSON.stringify(plan.design));
    const files = planFiles(plan, letters).filter((file) =>
      wanted.some((stem) => file.name.startsWith(stem)),
    );
    const made: MadeFile[] = [];
    for (const file of files) {
      onFile(made.length, files.length);
      made.push({ name: file.name, type: file.type, bytes: await file.make() });
    }
    onFile(made.length, files.length);
    const printed = files.some((file) => file.type === 'application/pdf');
    return { files: made, warnings: printed ? unwrittenWords(plan, letters.scripts) : [] };
  },
};

export type FilesWork = typeof work;

offer(work);
