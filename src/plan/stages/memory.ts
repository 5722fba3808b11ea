import { shapeMemory } from '../../geometry/shapeMemory.ts';
import { KeptResults } from '../../layout/kept.ts';
import { textByContent } from '../memory.ts';

/**
 * What a planner owns beside the last result of each stage, which is a value: tables of what was found of a thing, by
 * all that it followed from. A look in a table gives what finding it again would, so that it changes how soon a plan
 * comes, never which.
 */
export const createPlanMemory = () => ({
  /** By the thing: a part, bar, surface, solid, sign or stock. */
  results: new KeptResults(),
  /** By the shape of a letter. */
  letters: shapeMemory(),
  textOf: textByContent(),
});

export type PlanMemory = ReturnType<typeof createPlanMemory>;
