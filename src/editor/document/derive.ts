import type { KeepClear } from '../../bed/bed.ts';
import type { Face } from '../../bed/face.ts';
import { faceOf } from '../../bed/faceOf.ts';
import { allKeepClears } from '../../bed/legFootprints.ts';
import type { Design } from '../../design/schema.ts';
import { type LookInput, type Looks, looksOf } from '../../finish/look.ts';
import { type Bounds, boundsOf, boundsOfPart } from '../../layout/bounds.ts';
import type { LaidPart, Layout } from '../../layout/laid.ts';
import { type LayoutInput, laidFrom as laidAfter } from '../../layout/layout.ts';
import type { Remembered } from '../../layout/remembered.ts';
import { remembering } from '../../plan/memory.ts';
import { materialsOf, stocksOf } from '../shipped/tables.ts';

const faces = new WeakMap<Design['bed'], Face>();
const layouts = new WeakMap<Design, Layout>();
const laidFrom = new WeakMap<Layout, Design>();
const bounds = new WeakMap<Layout, ReadonlyMap<string, Bounds>>();
/** One memory for all of this tab's layouts: a drag step lays out again only what it touches. */
let last: Remembered | null = null;
const keepClears = remembering(allKeepClears);
const looks = remembering(
  (
    parts: Layout['parts'],
    levels: Face['levels'],
    finishes: Design['finishes'],
    stocks: LookInput['stocks'],
    materials: LookInput['materials'],
  ) => looksOf({ parts, levels, finishes, stocks, materials }),
);

/** The face of a bed, computed once for each bed. */
export function faceFor(bed: Design['bed']): Face {
  let face = faces.get(bed);
  if (!face) {
    face = faceOf(bed).face;
    faces.set(bed, face);
  }
  return face;
}

/** What must stay free on the face, the legs' places too; the same list while nothing of it changes. */
export function keepClearsOf(design: Design): readonly KeepClear[] {
  return keepClears(design.keepClears, faceFor(design.bed), design.bed);
}

/**
 * The layout of a design, computed once for each design; quick enough to follow a drag. `held`: parts that
 * the hand holds, to which others give way; it counts when the design is laid out for the first time.
 */
export function layoutOf(design: Design, held?: ReadonlySet<string>): Layout {
  let layout = layouts.get(design);
  if (!layout) {
    const input = inputOf(design);
    const now = laidAfter(held ? { ...input, held } : input, last);
    last = now;
    layout = now.layout;
    layouts.set(design, layout);
    laidFrom.set(layout, design);
  }
  return layout;
}

/** Parts that look alike, in the order of a layout: of two lists that do, the first. */
const alike = (() => {
  let last: Layout['parts'] = [];
  return (parts: Layout['parts']): Layout['parts'] => {
    if (parts.length !== last.length || !parts.every((part, i) => looksLike(part, last[i]))) last = parts;
    return last;
  };
})();

/** Whether a part looks as it did, wherever it is now. */
function looksLike(a: LaidPart, b: LaidPart | undefined): boolean {
  if (a === b) return true;
  if (a.id !== b?.id || a.finish !== b.finish || a.stock !== b.stock || a.on !== b.on) return false;
  if (a.kind === 'fitting') return b.kind === 'fitting' && a.spec.color === b.spec.color;
  if (a.kind === 'sign') return b.kind === 'sign' && a.lettering === b.lettering;
  return a.kind === b.kind;
}

/** What the parts of a layout look like, finished; the same object while they only move. */
export const looksFor = (design: Design, layout: Layout): Looks =>
  looks(alike(layout.parts), faceFor(design.bed).levels, design.finishes, stocksOf(design), materialsOf());

/** The edges that rules and snapping mean, by part: the visible outside of everything, and the inside of frames. */
export function boundsFor(layout: Layout): ReadonlyMap<string, Bounds> {
  let found = bounds.get(layout);
  if (!found) {
    const design = laidFrom.get(layout);
    found = new Map(design ? boundsOf(inputOf(design), layout).map((b) => [b.id, b]) : []);
    bounds.set(layout, found);
  }
  return found;
}

/** Those of one part: a drag asks for few of them in each frame. */
export function boundsIn(layout: Layout, id: string): Bounds | undefined {
  const design = laidFrom.get(layout);
  const part = design?.parts.find((p) => p.id === id);
  return design && part ? boundsOfPart(inputOf(design), layout, part) : undefined;
}

/** What a design is laid out from. */
export const inputOf = (design: Design): LayoutInput => ({
  design,
  face: faceFor(design.bed),
  keepClears: keepClearsOf(design),
  stocks: stocksOf(design),
});
