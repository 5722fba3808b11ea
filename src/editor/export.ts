import type { Plan } from '../plan/types.ts';
import type { WordKey } from './words/t.ts';

export interface ExportedFile {
  readonly name: string;
  /** Media type. */
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** One entry of the export menu: its words, and what it writes from a plan. */
export interface ExportEntry {
  readonly id: string;
  readonly words: WordKey;
  readonly write: (plan: Plan) => Promise<readonly ExportedFile[]> | readonly ExportedFile[];
}

/** What can be written, in the order of the menu; the same files as the command's. */
export const EXPORTS: readonly ExportEntry[] = [];
