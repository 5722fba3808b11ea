import type { FileWords } from '../../design/fileWords.ts';
import type { Opened } from '../../design/open.ts';

/** The guarded door for files comes with the first one: it brings the schema, an eighth of the first visit. */
export const theDoor = () => import('../../design/open.ts');

/** Opens the text of a design file, as `openDesign` does. Rejects where the door's own file cannot be had. */
export const openText = async (text: string, words: FileWords): Promise<Opened> =>
  (await theDoor()).openDesign(text, words);
