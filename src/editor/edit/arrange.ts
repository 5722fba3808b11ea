import { applyEdits, type Edit } from '../../design/edit/edit.ts';
import { inserting, replacing } from '../../design/edit/make.ts';
import type { Arranged, Arranging } from '../../layout/arrange/arranged.ts';
import { type Shown, shownFrom } from '../document/shown.ts';
import { namesFor, type Unnamed } from './naming.ts';

/** What arrangements of the layout room work from. */
export const arrangingOf = (shown: Shown): Arranging => ({ input: shown, layout: shown.layout });

/** An arrangement as edits, with others that go along; what it adds is named by where it comes to lie. */
export function editsToArrange(shown: Shown, arranged: Arranged, along: readonly Edit[] = []): Edit[] {
  const axes = new Map(arranged.rules.flatMap((r) => (r.kind === 'mirror' ? [[r.twin, r.axis]] : [])));
  const edits = [
    ...arranged.add.map((item) => inserting('parts', item)),
    ...arranged.change.map((item) => replacing('parts', item)),
    ...arranged.rules.map((item) => inserting('rules', item)),
    ...arranged.joints.map((item) => inserting('joints', item)),
    ...along,
  ];
  return named(
    shown,
    edits,
    arranged.add.map(({ id }) => ({ id, mirrored: axes.get(id) })),
  );
}

/** Edits with those that name the parts that they make. */
export function named(from: Shown, edits: readonly Edit[], made: readonly Unnamed[]): Edit[] {
  const done = made.length > 0 ? applyEdits(from.design, edits) : null;
  return done?.ok ? [...edits, ...namesFor(shownFrom(done.design, undefined, from), made)] : [...edits];
}
