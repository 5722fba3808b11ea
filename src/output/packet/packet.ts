import { LEFT_OUT } from '../../design/defaults.ts';
import type { Design } from '../../design/schema.ts';
import { keptBy } from '../../list/keptBy.ts';
import { formatMoney, formatReading } from '../../measure/format.ts';
import { isInch } from '../../measure/style.ts';
import type { Joined, Plan } from '../../plan/types.ts';
import { styleIn } from '../../plan/words/languages.ts';
import { sayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { fingerprint } from '../pdf/fingerprint.ts';
import type { Letters } from '../pdf/letters.ts';
import { type PdfPage, pdfOf } from '../pdf/pdf.ts';
import { type KindsFrom, PAGE_KINDS, type PageKind } from './kinds.ts';
import type { Content, Contents, Leaf, Packet } from './leaf.ts';
import { leavesOf } from './leaves.ts';
import { bodyOf, packetSheet, pageHead, roomOn, titleBlock, turned } from './sheet.ts';
import { PACKET_WORDS } from './words/words.ts';

const KINDS = Object.keys(PAGE_KINDS) as PageKind[];

/** What pages say and measure by. */
export function packetFor<P extends Joined>(plan: P): Packet<P> {
  const { pages } = plan.design;
  const measure = { ...styleIn(plan.language, plan.design.measure), bare: true };
  const sheet = packetSheet(pages.paper);
  return {
    plan,
    say: sayFor(plan),
    words: PLAN_WORDS[plan.language],
    terms: PACKET_WORDS[plan.language],
    measure,
    told: (mm) => formatReading(mm, measure),
    money: (value) => formatMoney(value, plan.design.measure.currency, measure.notation),
    unit: isInch(measure.unit) ? 'in' : 'mm',
    sheet,
    body: bodyOf(sheet),
    revision: revisionOf(plan.design),
  };
}

/** Entries of objects by name: an edit adds an entry at the end, a file that is opened again has it elsewhere. */
const inOrder = (_: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value;

/**
 * Short name of a design's state: another wherever anything of it is another, the same in whatever order it is written
 * and for whatever unit and paper, and with whatever sections, it is printed.
 */
export const revisionOf = keptBy(({ measure, pages, ...design }: Design): string => {
  const [{ unit: _, ...measured }, { paper: __, without: ___, ...paged }] = [measure, pages];
  const state = JSON.stringify({ ...design, measure: measured, pages: paged }, inOrder);
  return fingerprint([state]).slice(0, 8).toUpperCase();
});

/** What pages consist of, as far as it is made. */
export type PacketBegun = { readonly [K in PageKind]?: readonly Content[] };

/**
 * What pages of these kinds consist of. Pages of their own are drawn; the drawings of sections follow when they have
 * their places.
 */
export function beginPacket<P extends Joined>(kinds: KindsFrom<P>, known: P): PacketBegun {
  const packet = packetFor(known);
  const drawn = (content: Content): Content => {
    if ('blocks' in content) return content;
    const items = content.draw(roomOn(packet.sheet, content.landscape), []);
    return { ...content, draw: () => items };
  };
  return Object.fromEntries(Object.entries(kinds).map(([kind, make]) => [kind, make(packet).map(drawn)]));
}

/** The packet's pages, numbered and framed, as drawings on paper; `early` is what is made of it. */
export function packetPages(plan: Plan, early: PacketBegun = {}): PdfPage[] {
  const packet = packetFor(plan);
  const made = KINDS.map((kind) => {
    const own = early[kind] ?? PAGE_KINDS[kind](packet);
    return { kind, own: own.filter((content) => !('blocks' in content) || content.blocks.length > 0) };
  });
  const without = new Set<string>(plan.design.pages.without ?? LEFT_OUT);
  const begun = leavesOf(
    made.flatMap(({ kind, own }) => (without.has(kind) ? [] : own)),
    packet,
  );
  const leaves = begun.map(({ leaf }) => leaf);
  const contents = made.flatMap(({ kind, own: [first] }): Contents[] => {
    if (!first || kind === 'cover') return [];
    const page = begun.findIndex(({ begins }) => begins.includes(first)) + 1;
    return [{ title: packet.terms.titles[kind], page: page === 0 ? null : page }];
  });
  return leaves.map((leaf, i) => ({
    ...framed(packet, leaf, { page: i + 1, of: leaves.length }, contents),
    begins: contents.filter(({ page }) => page === i + 1).map(({ title }) => title),
  }));
}

/** A page with its heading and title block. */
export function framed(
  packet: Packet,
  leaf: Leaf,
  number: { readonly page: number; readonly of: number },
  contents: readonly Contents[],
): PdfPage {
  const sheet = leaf.landscape ? turned(packet.sheet) : packet.sheet;
  const { design } = packet.plan;
  const block = {
    ...number,
    design: design.name,
    date: design.date,
    title: leaf.title,
    scale: leaf.scale,
    unit: packet.unit,
    told: packet.measure.unit === 'cm' ? ('cm' as const) : packet.unit,
    revision: packet.revision,
    terms: packet.terms.block,
  };
  const items = [
    ...pageHead(sheet, leaf.title),
    ...leaf.draw(bodyOf(sheet), contents),
    ...titleBlock(sheet, block),
  ];
  return {
    width_mm: sheet.width,
    height_mm: sheet.height,
    drawing: { width: sheet.width, height: sheet.height, title: leaf.title, items },
  };
}

/** The whole packet as a PDF. */
export function packetOf(plan: Plan, letters: Letters, early?: PacketBegun): Promise<Uint8Array> {
  const { name, date } = plan.design;
  return pdfOf(packetPages(plan, early), { title: name, date, language: plan.language }, letters);
}
