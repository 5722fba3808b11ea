import type { Design } from '../../design/schema.ts';
import { castShadows, type ShadowArea } from '../../finish/shadow.ts';
import { keptBy } from '../../list/keptBy.ts';
import type { Pictured } from '../../plan/types.ts';

/** Shadows on the face of a plan under a light. */
export const shadowsUnder = (
  { joinery, sawnLetters, face, finish }: Pictured,
  light: Design['light'],
): readonly ShadowArea[] =>
  castShadows([...joinery.solids, ...sawnLetters], face.levels, finish.shown, light);

/** The same under the light of its design. */
export const shadowsOn = keptBy((plan: Pictured) => shadowsUnder(plan, plan.design.light));
