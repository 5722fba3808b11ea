import type { MadeFile } from './filesWorker.ts';

const fileOf = ({ name, type, bytes }: MadeFile): File =>
  new File([bytes as Uint8Array<ArrayBuffer>], name, { type });

const PROBE = { name: 'a.pdf', type: 'application/pdf', bytes: new Uint8Array(1) };

/** Whether this system has a board of its own for sharing, which takes files. */
export const canShare = (): boolean => navigator.canShare?.({ files: [fileOf(PROBE)] }) ?? false;

/** Opens the system's board with these files. Rejects where nothing was shared, with an abort where that was wished. */
export const share = (title: string, files: readonly MadeFile[]): Promise<void> =>
  navigator.share({ title, files: files.map(fileOf) });
