import type { SawnArch, SegmentedArch } from '../../../joinery/piece.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, type ColumnOf, heading, paragraph, space, tableOf, withNote } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/** Of one laid part. */
type Of<A> = A & { readonly part: string };

/** What the straight segments of arched runs are sawn by, and what arcs sawn from sheet or bent are laid out by. */
export function archBlocks({ plan, terms, told, say }: Packet, width: Mm): Block[] {
  const { arches, sawnArches, bentArches } = terms;
  const all = plan.joinery.arches;
  const segmented: ColumnOf<Of<SegmentedArch>>[] = [
    [arches.part, 4, ({ part }) => say.name(part)],
    [arches.radius, 2.4, ({ radius }) => told(radius), 'figure'],
    [arches.segments, 1.8, ({ segments }) => String(segments), 'figure'],
    [arches.miter, 1.8, ({ miter }) => say.angle(miter), 'figure'],
    [arches.chord, 2.4, ({ chord }) => told(chord), 'figure'],
    [arches.sagitta, 2.6, ({ sagitta }) => told(sagitta), 'figure'],
  ];
  const made: ColumnOf<Of<SawnArch>>[] = [
    [sawnArches.part, 4, ({ part }) => say.name(part)],
    [sawnArches.inner, 2.2, ({ inner }) => told(inner), 'figure'],
    [sawnArches.outer, 2.2, ({ outer }) => told(outer), 'figure'],
    [sawnArches.pieces, 1.5, ({ pieces }) => String(pieces), 'figure'],
    [sawnArches.angle, 1.8, ({ angle }) => say.angle(angle), 'figure'],
    [sawnArches.innerArc, 2.2, ({ lengths }) => told(lengths.inner), 'figure'],
    [sawnArches.middleArc, 2.2, ({ lengths }) => told(lengths.middle), 'figure'],
    [sawnArches.outerArc, 2.2, ({ lengths }) => told(lengths.outer), 'figure'],
  ];
  const own = all.filter((arch) => 'segments' in arch);
  const madeIn = (bent: boolean) =>
    all.flatMap((arch) => ('pieces' in arch && arch.bent === bent ? [arch] : []));
  return [
    ...noted(arches, tableOf(segmented, own, width), width),
    ...noted(sawnArches, tableOf(made, madeIn(false), width), width),
    ...noted(bentArches, tableOf(made, madeIn(true), width), width),
  ];
}

/** A table under its title, with what to mind below it; nothing where it has no rows. */
const noted = (
  { title, note }: { readonly title: string; readonly note: string },
  rows: readonly Block[],
  width: Mm,
): Block[] =>
  rows.length === 0 ? [] : [heading(title), ...withNote(rows, paragraph(note, width)), space(3)];
