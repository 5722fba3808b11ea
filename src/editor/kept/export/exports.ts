import type { CurrentPlan } from '../../planning/planner.ts';
import type { WordKey } from '../../words/t.ts';
import { fileName } from '../file.ts';
import { facePicture } from './facePicture.ts';
import type { Made } from './filesWorker.ts';
import { type Making, makeFiles } from './makeFiles.ts';

/** One entry of the export menu: its words, and what it writes from a plan. */
export interface ExportEntry {
  readonly id: string;
  readonly words: WordKey;
  readonly write: (plan: CurrentPlan, making: Making) => Promise<Made>;
}

const named = (id: string, words: WordKey, ...stems: string[]): ExportEntry => ({
  id,
  words,
  write: (plan, making) => makeFiles(plan, stems, making),
});

const pictureAlone = async (plan: CurrentPlan, making: Making): Promise<Made> => ({
  files: await facePicture(plan, making),
  warnings: [],
});

/** All of it in one file, named as the design is. */
async function everything(plan: CurrentPlan, making: Making): Promise<Made> {
  const made = await makeFiles(plan, [''], making);
  const files = [...made.files, ...(await facePicture(plan, making))];
  const { zipOf } = await import('../../../output/zip.ts');
  const zip = { name: `${fileName(plan.design.name)}.zip`, type: 'application/zip', bytes: zipOf(files) };
  return { files: [zip], warnings: made.warnings };
}

/** The face as a PNG. */
export const PICTURE: ExportEntry = { id: 'picture', words: 'export.picture', write: pictureAlone };

/** What can be written, in the order of the menu: the same files as the command's, and a picture. */
export const EXPORTS: readonly ExportEntry[] = [
  { id: 'all', words: 'export.all', write: everything },
  named('packet', 'export.packet', 'packet.pdf'),
  named('patterns', 'export.patterns', 'patterns.pdf'),
  named('labels', 'export.labels', 'labels.pdf'),
  named('cut-list', 'export.cutList', 'cut-list.csv'),
  named('paint', 'export.paint', 'paint.csv'),
  named('shopping', 'export.shopping', 'shopping.csv'),
  named('lists', 'export.lists', 'prices.csv', 'on-hand.csv'),
  PICTURE,
  named('face', 'export.face', 'face.svg'),
  named('room', 'export.room', 'room.svg'),
  named('outlines', 'export.outlines', 'face-outlines.svg', 'face.dxf'),
  named('signs', 'export.signs', 'sign-'),
  named('plan', 'export.plan', 'plan.json'),
];
