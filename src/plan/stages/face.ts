import type { KeepClear } from '../../bed/bed.ts';
import type { Face } from '../../bed/face.ts';
import { faceOf } from '../../bed/faceOf.ts';
import { allKeepClears } from '../../bed/legFootprints.ts';
import { isBought, isLettered } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import { type Looks, looksOf, sameLooks } from '../../finish/look.ts';
import { alongEdges } from '../../layout/along.ts';
import { hasReadings, laidAsRead } from '../../layout/asRead.ts';
import type { LaidPart, Layout } from '../../layout/laid.ts';
import { laidFrom } from '../../layout/layout.ts';
import type { Remembered } from '../../layout/remembered.ts';
import { byId } from '../../materials/lookup.ts';
import type { Material, Stock, Tables } from '../../materials/types.ts';
import { reuse } from '../reuse.ts';
import { type Stages, stage } from './stage.ts';

/** What the face as it is shown follows from. */
export interface FaceGiven {
  readonly design: Design;
  readonly tables: Tables;
  /** Parts that the hand holds just now: others give way to them. */
  readonly held: ReadonlySet<string>;
}

/** The face with all that lies on it: what a drag shows, and what a plan begins with. */
export interface FaceFacts {
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly materials: ReadonlyMap<string, Material>;
  readonly bed: ReturnType<typeof faceOf>;
  readonly face: Face;
  /** Those of the design and, where the legs stand on the face, theirs. */
  readonly keepClears: readonly KeepClear[];
  /** The layout without what a tape read in place, with what the next one is made from. */
  readonly planned: Remembered;
  /** The same with it. */
  readonly asRead: Remembered;
  readonly layout: Layout;
  /** The laid parts, or earlier ones that look alike in the same order, wherever they are. */
  readonly alike: readonly LaidPart[];
  readonly looks: Looks;
}

/** The stages that the editor and the plan share. */
export const FACE_STAGES: Stages<FaceGiven & FaceFacts, FaceFacts> = {
  stocks: stage(
    ({ tables, design }) => ({ known: tables.stocks, own: design.stocks }),
    ({ known, own }) => byId([...known, ...own]),
  ),
  materials: stage(
    ({ tables }) => ({ all: tables.materials }),
    ({ all }) => byId(all),
  ),
  bed: stage(
    ({ design }) => ({ bed: design.bed }),
    ({ bed }) => faceOf(bed),
  ),
  face: stage(
    ({ bed }) => ({ face: bed.face }),
    ({ face }) => face,
  ),
  keepClears: stage(
    ({ design, face }) => ({ own: design.keepClears, face, bed: design.bed }),
    ({ own, face, bed }) => allKeepClears(own, face, bed),
  ),
  planned: stage(
    ({ design: { parts, rules, finishes }, face, keepClears, stocks, held }) => ({
      ...{ parts, rules, finishes, face, keepClears, stocks, held },
    }),
    ({ parts, rules, finishes, ...more }, last) =>
      laidFrom({ design: { parts, rules, finishes }, ...more }, last ?? null),
  ),
  asRead: stage(
    ({ planned, design: { parts, rules, finishes }, face, keepClears, stocks, held }) => ({
      ...{ planned, parts, rules, finishes, face, keepClears, stocks, held },
    }),
    ({ planned, parts, rules, finishes, ...more }) =>
      hasReadings(parts) ? laidAsRead({ design: { parts, rules, finishes }, ...more }, planned) : planned,
  ),
  layout: stage(
    ({ asRead, face, design, stocks }) => ({
      ...{ layout: asRead.layout, face, border: design.bed.measured?.border, stocks },
    }),
    ({ layout, face, border, stocks }, last) => {
      if (border !== 'along' || !face.real) return layout;
      const along = alongEdges(layout, face, stocks);
      return { ...along, parts: reuse(last?.parts, along.parts) };
    },
  ),
  alike: stage(
    ({ layout }) => ({ parts: layout.parts }),
    ({ parts }, last) =>
      last?.length === parts.length && parts.every((part, i) => looksLike(part, last[i])) ? last : parts,
  ),
  looks: stage(
    ({ alike, face, design, stocks, materials }) => ({
      ...{ parts: alike, levels: face.levels, finishes: design.finishes, stocks, materials },
    }),
    // Of parts that come to lie on others most look as they did: the drawing is as it was, but where they are.
    (inputs, last) => {
      const now = looksOf(inputs);
      return last && sameLooks(last, now) ? last : now;
    },
  ),
};

/** Whether a part looks as it did, wherever it is now. */
function looksLike(a: LaidPart, b: LaidPart | undefined): boolean {
  if (a === b) return true;
  if (a.id !== b?.id || a.finish !== b.finish || a.stock !== b.stock || a.on !== b.on) return false;
  if (isBought(a)) return isBought(b) && a.spec.color === b.spec.color;
  if (isLettered(a)) return isLettered(b) && a.lettering === b.lettering;
  return a.kind === b.kind;
}
