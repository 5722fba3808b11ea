import type { SawnArch, SegmentedArch } from '../../../joinery/piece.ts';
import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, paragraph, space, table, withNote } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/** Of one laid part. */
type Of<A> = A & { readonly part: string };

/** What the straight segments of arched runs are sawn by, and what arcs sawn from sheet or bent are laid out by. */
export function archBlocks(packet: Packet, width: Mm): Block[] {
  const { arches } = packet.plan.joinery;
  return [
    ...segmentBlocks(
      packet,
      arches.filter((arch) => 'segments' in arch),
      width,
    ),
    ...([false, true] as const).flatMap((bent) =>
      madeBlocks(
        packet,
        bent ? packet.terms.bentArches : packet.terms.sawnArches,
        arches.filter((arch): arch is Of<SawnArch> => 'pieces' in arch && arch.bent === bent),
        width,
      ),
    ),
  ];
}

function segmentBlocks(packet: Packet, arches: readonly Of<SegmentedArch>[], width: Mm): Block[] {
  if (arches.length === 0) return [];
  const terms = packet.terms.arches;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = arches.map((arch) => ({
    cells: [
      packet.say.name(arch.part),
      told(arch.radius),
      String(arch.segments),
      packet.say.angle(arch.miter),
      told(arch.chord),
      told(arch.sagitta),
    ],
  }));
  const columns = [
    { title: terms.part, share: 4 },
    { title: terms.radius, share: 2.4, figure: true },
    { title: terms.segments, share: 1.8, figure: true },
    { title: terms.miter, share: 1.8, figure: true },
    { title: terms.chord, share: 2.4, figure: true },
    { title: terms.sagitta, share: 2.6, figure: true },
  ];
  return noted(terms, table(columns, rows, width), width);
}

function madeBlocks(
  packet: Packet,
  own: { readonly title: string; readonly note: string },
  arches: readonly Of<SawnArch>[],
  width: Mm,
): Block[] {
  if (arches.length === 0) return [];
  const terms = packet.terms.sawnArches;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = arches.map(({ part, inner, outer, pieces, angle, lengths }) => ({
    cells: [
      packet.say.name(part),
      told(inner),
      told(outer),
      String(pieces),
      packet.say.angle(angle),
      told(lengths.inner),
      told(lengths.middle),
      told(lengths.outer),
    ],
  }));
  const columns = [
    { title: terms.part, share: 4 },
    { title: terms.inner, share: 2.2, figure: true },
    { title: terms.outer, share: 2.2, figure: true },
    { title: terms.pieces, share: 1.5, figure: true },
    { title: terms.angle, share: 1.8, figure: true },
    { title: terms.innerArc, share: 2.2, figure: true },
    { title: terms.middleArc, share: 2.2, figure: true },
    { title: terms.outerArc, share: 2.2, figure: true },
  ];
  return noted(own, table(columns, rows, width), width);
}

/** A table under its title, with what to mind below it. */
const noted = (
  { title, note }: { readonly title: string; readonly note: string },
  rows: readonly Block[],
  width: Mm,
): Block[] => [heading(title), ...withNote(rows, paragraph(note, width)), space(3)];
