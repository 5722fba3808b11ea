import { planFiles } from '../../../output/files.ts';
import { scriptsOf } from '../../../output/script/scripts.ts';
import type { Plan } from '../../../plan/types.ts';
import { offer } from '../../planning/alive.ts';
import { scriptFonts } from '../../shipped/scriptFonts.ts';

/** A file with its bytes, as it goes from the worker to the disk. */
export interface MadeFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** Writes files away from the drawing, so that it stays quick while a long packet is made. */
const work = {
  async make(
    plan: Plan,
    wanted: readonly string[],
    onFile: (done: number, of: number) => void,
  ): Promise<MadeFile[]> {
    const scripts = scriptsOf(await scriptFonts(JSON.stringify(plan.design)));
    const files = planFiles(plan, scripts).filter((file) =>
      wanted.some((stem) => file.name.startsWith(stem)),
    );
    const made: MadeFile[] = [];
    for (const file of files) {
      onFile(made.length, files.length);
      made.push({ name: file.name, type: file.type, bytes: await file.make() });
    }
    onFile(made.length, files.length);
    return made;
  },
};

export type FilesWork = typeof work;

offer(work);
