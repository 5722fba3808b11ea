import type { AssemblyName } from '../../design/assembly/table.ts';
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
  'lettering',
  'array',
  'fill',
  'keep-clear',
];

/** A whole that is drawn as one: a door, a window. */
export type BuiltTool = `build:${AssemblyName}`;
/** An assembly of the person's own, by its id on the shelf. */
export type OwnTool = `own:${string}`;
export type DrawTool = DrawnKind | BuiltTool | OwnTool;

/** `path` sets the corners of a run one by one, `opening` draws an opening in the selected part. */
export type ToolId = 'select' | 'hand' | 'path' | 'opening' | DrawTool;

export const isDrawn = (tool: ToolId): tool is DrawTool =>
  tool !== 'select' && tool !== 'hand' && tool !== 'path' && tool !== 'opening';

export const builtTool = (name: AssemblyName): BuiltTool => `build:${name}`;

export const isBuilt = (tool: ToolId): tool is BuiltTool => tool.startsWith('build:');

export const ownTool = (id: string): OwnTool => `own:${id}`;

export const isOwn = (tool: ToolId): tool is OwnTool => tool.startsWith('own:');

/** The id on the shelf of what a tool draws. */
export const ownBy = (tool: OwnTool): string => tool.slice('own:'.length);

/** The whole that a tool draws. */
export const builtBy = (tool: BuiltTool): AssemblyName => tool.slice('build:'.length) as AssemblyName;
