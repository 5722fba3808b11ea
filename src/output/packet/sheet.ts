import type { DrawItem } from '../../drawing/drawing.ts';
import { line, rectangle, text } from '../../drawing/items.ts';
import { scaleBar, scaleWords } from '../../drawing/scaleBar.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { shortened, textWidth } from '../../drawing/text.ts';
import type { Box } from '../../geometry/shape.ts';
import { inches, type Mm } from '../../measure/units.ts';
import { benchPaper } from '../../patterns/cover.ts';
import type { PacketWords } from './words/shape.ts';

/** Sheet of the packet: Letter for inch papers, A4 for the ISO ones. */
export interface Sheet {
  /** As the trade calls it. */
  readonly paper: string;
  readonly width: Mm;
  readonly height: Mm;
}

/** The design's paper may be a roll or larger than what lies on a bench: the packet keeps to its small sibling. */
export function packetSheet(paper: string): Sheet {
  return benchPaper(paper) === 'a4'
    ? { paper: 'A4', width: 210, height: 297 }
    : { paper: 'Letter', width: inches(8.5), height: inches(11) };
}

export const turned = ({ paper, width, height }: Sheet): Sheet => ({ paper, width: height, height: width });

/** Left margin wide enough for a binder. */
const MARGIN = { left: 20, right: 12, top: 12, bottom: 12 } as const;
/** Height of one of the two rows of the title block, and of the heading with its rule. */
const ROW: Mm = 9;
const BLOCK = 2 * ROW;
export const HEAD: Mm = 11;

/** Room for a page's own content. */
export function bodyOf(sheet: Sheet): Box {
  return {
    x: MARGIN.left,
    y: MARGIN.bottom + BLOCK + 4,
    w: sheet.width - MARGIN.left - MARGIN.right,
    h: sheet.height - MARGIN.top - MARGIN.bottom - BLOCK - 4 - HEAD,
  };
}

/** The room on a page that may be turned. */
export const roomOn = (sheet: Sheet, landscape: boolean): Box => bodyOf(landscape ? turned(sheet) : sheet);

export interface TitleBlock {
  readonly design: string;
  readonly date: string;
  readonly title: string;
  readonly page: number;
  readonly of: number;
  /** The number under 1, for drawings to scale. */
  readonly scale: number | null;
  readonly unit: 'in' | 'mm';
  /** What figures are told in. */
  readonly told: 'in' | 'mm' | 'cm';
  /** Short name of this state of the design. */
  readonly revision: string;
  readonly terms: PacketWords['block'];
}

/** A field of the title block: its share of the row, what it is called, and what it says. */
interface Field {
  readonly share: number;
  readonly label: string;
  readonly words?: string;
  readonly strong?: boolean;
  readonly items?: (room: Box) => DrawItem[];
}

/**
 * The title block's two rows, with the fields of ISO 7200 that a packet has: title, sheet title and number, date of
 * issue as the design gives it, revision; and what is read by: scale, units, paper.
 */
function fieldsOf(sheet: Sheet, block: TitleBlock): readonly (readonly Field[])[] {
  const { terms, scale } = block;
  return [
    [
      { share: 0.36, label: terms.design, words: block.design, strong: true },
      { share: 0.49, label: terms.title, words: block.title },
      { share: 0.15, label: terms.page, words: terms.pageOf(block.page, block.of), strong: true },
    ],
    [
      scale === null
        ? { share: 0.36, label: terms.scale, words: terms.noScale }
        : {
            share: 0.36,
            label: terms.scale,
            words: scaleWords(scale, block.unit),
            items: ({ x, y, w }) => {
              const bar = textWidth(scaleWords(scale, block.unit), { size: TEXT.body }) + BAR;
              return [
                { kind: 'group', move: { x: x + bar, y }, items: scaleBar(scale, block.unit, w - bar - 10) },
              ];
            },
          },
      { share: 0.11, label: terms.units, words: terms.unit[block.told] },
      { share: 0.1, label: terms.paper, words: sheet.paper },
      { share: 0.28, label: terms.date, words: block.date === '' ? terms.noDate : block.date },
      { share: 0.15, label: terms.revision, words: block.revision },
    ],
  ];
}

const INSET: Mm = 1.6;
/** From the scale's words to its bar. */
const BAR: Mm = 6;

function fieldItems({ label, words, strong, items }: Field, { x, y, w }: Box): DrawItem[] {
  const room = { x: x + INSET, y: y + 1.6, w: w - 2 * INSET, h: ROW };
  const style = { size: TEXT.body, bold: strong ?? false };
  const note = { size: TEXT.note, color: INK.soft };
  return [
    text({ x: room.x, y: y + ROW - 3 }, shortened(label, note, room.w), note),
    ...(words === undefined ? [] : [text({ x: room.x, y: room.y }, shortened(words, style, room.w), style)]),
    ...(items?.(room) ?? []),
  ];
}

/** The title block at the foot of every sheet, with what to mind below it. */
export function titleBlock(sheet: Sheet, block: TitleBlock): DrawItem[] {
  const x0 = MARGIN.left;
  const y0 = MARGIN.bottom;
  const w = sheet.width - x0 - MARGIN.right;
  const bold = { stroke: INK.line, width: WEIGHT.bold };
  const thin = { stroke: INK.line, width: WEIGHT.thin };
  const rows = fieldsOf(sheet, block).map((fields, i): DrawItem[] => {
    const y = y0 + BLOCK - (i + 1) * ROW;
    let x = x0;
    return fields.flatMap((field, k) => {
      const box = { x, y, w: field.share * w, h: ROW };
      x += box.w;
      const rule = k === 0 ? [] : [line({ x: box.x, y }, { x: box.x, y: y + ROW }, thin)];
      return [...rule, ...fieldItems(field, box)];
    });
  });
  const note = { size: TEXT.note, anchor: 'end' } as const;
  return [
    rectangle({ x: x0, y: y0, w, h: BLOCK }, bold),
    line({ x: x0, y: y0 + ROW }, { x: x0 + w, y: y0 + ROW }, thin),
    ...rows.flat(),
    text({ x: x0 + w, y: y0 - 4 }, block.terms.check, note),
    // ISO 129-1, from memory: where one unit holds for all figures it stands once, and not beside each.
    ...(block.told === 'mm'
      ? [text({ x: x0, y: y0 - 4 }, block.terms.all, { size: TEXT.note, bold: true })]
      : []),
  ];
}

/** The room from the title block to the upper margin, with the heading of the page at its top. */
export const pageHead = (sheet: Sheet, title: string): DrawItem[] => {
  const body = bodyOf(sheet);
  return sectionHead({ ...body, h: body.h + HEAD }, title);
};

/** Heading with its rule, at the top of the room. */
export function sectionHead({ x, y, w, h }: Box, title: string): DrawItem[] {
  const top = y + h;
  const style = { size: TEXT.heading, bold: true, heading: 1 } as const;
  return [
    text({ x, y: top - 5.5 }, shortened(title, style, w), { ...style, place: title }),
    line({ x, y: top - 8 }, { x: x + w, y: top - 8 }, { stroke: INK.line, width: WEIGHT.bold }),
  ];
}
