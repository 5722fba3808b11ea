import type { PartKind } from '../../design/schema.ts';

/** What can be drawn or placed: every kind of part, and keep-clears. */
export type DrawnKind = PartKind | 'keep-clear';
export const DRAWN_KINDS: readonly DrawnKind[] = [
  'strip',
  'run',
  'panel',
  'sign',
  'fitting',
  'painted',
  'array',
  'fill',
  'keep-clear',
];

/** `path` sets the corners of a run one by one. */
export type ToolId = 'select' | 'hand' | 'path' | DrawnKind;

export const isDrawn = (tool: ToolId): tool is DrawnKind =>
  tool !== 'select' && tool !== 'hand' && tool !== 'path';
