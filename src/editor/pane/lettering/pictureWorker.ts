import { expose } from 'comlink';
import { readSvg } from '../../../lettering/picture/svg/svg.ts';

/** Reads a picture apart from everything else: whatever is in the file, the page and the plan go on. */
const work = { read: readSvg };

export type PictureWork = typeof work;

expose(work);
