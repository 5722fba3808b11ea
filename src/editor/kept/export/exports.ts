import { saveDesign } from '../../../design/save.ts';
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
  /** Handed to the system's own board for sharing; else saved. */
  readonly shared?: true;
}

const named = (id: string, words: WordKey, ...stems: string[]): ExportEntry => ({
  id,
  words,
  write: async (plan, making) => namedAfter(plan, await makeFiles(plan, stems, making)),
});

/** Files that leave the tool are named after their design, so that those of two are told apart where they come to lie. */
const namedAfter = ({ design }: CurrentPlan, made: Made): Made => ({
  ...made,
  files: made.files.map((file) => ({ ...file, name: `${fileName(design.name)}-${file.name}` })),
});

const pictureAlone = async (plan: CurrentPlan, making: Making): Promise<Made> =>
  namedAfter(plan, { files: await facePicture(plan, making), warnings: [] });

/** The first day that a ZIP file can tell: the same files make the same bytes. */
const FIRST_DAY = new Date(1980, 0, 1);

/**
 * All of it in one file, named as the design is and by its date as it gives it, with the design itself, which opens by a
 * drop on the page.
 */
async function everything(plan: CurrentPlan, making: Making): Promise<Made> {
  const { design } = plan;
  const { files, warnings } = await makeFiles(plan, [''], making);
  const all = namedAfter(plan, { files: [...files, ...(await facePicture(plan, making))], warnings });
  const stem = fileName(design.name);
  const { strToU8, zipSync } = await import('fflate');
  const entries = all.files.map(({ name, bytes }) => [name, bytes] as const);
  const packed = Object.fromEntries([[`${stem}.json`, strToU8(saveDesign(design))], ...entries]);
  const name = design.date.trim() === '' ? `${stem}.zip` : `${stem}-${fileName(design.date)}.zip`;
  return {
    files: [{ name, type: 'application/zip', bytes: zipSync(packed, { mtime: FIRST_DAY }) }],
    warnings,
  };
}

/** The face as a PNG. */
export const PICTURE: ExportEntry = { id: 'picture', words: 'export.picture', write: pictureAlone };

/** What is shown at home, handed to the system's own board for sharing. */
export const SHARED: ExportEntry = {
  id: 'share',
  words: 'export.share',
  shared: true,
  write: async (plan, making) => {
    const page = await makeFiles(plan, ['one-page.pdf'], making);
    return namedAfter(plan, { ...page, files: [...(await facePicture(plan, making)), ...page.files] });
  },
};

/** What can be written, in the order of the menu: the same files as the command's, and a picture. */
export const EXPORTS: readonly ExportEntry[] = [
  { id: 'all', words: 'export.all', write: everything },
  named('one-page', 'export.onePage', 'one-page.pdf'),
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
