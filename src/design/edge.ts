import type { Edge } from './field.ts';

/** A side of something, or the inside edge there. */
export const edgeOf = (
  { of, inner }: { readonly of: string; readonly inner?: boolean | undefined },
  side: Edge['side'],
): Edge => (inner ? { of, side, inner } : { of, side });
