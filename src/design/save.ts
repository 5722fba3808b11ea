import type { Design } from './schema.ts';

/** The text of a design file; opening it gives the same design again. */
export const saveDesign = (design: Design): string => `${JSON.stringify(design, null, 2)}\n`;
