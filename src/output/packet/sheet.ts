import type { DrawItem } from '../../drawing/drawing.ts';
import { line, rectangle, text } from '../../drawing/items.ts';
import { scaleBar } from '../../drawing/scaleBar.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { shortened } from '../../drawing/text.ts';
import type { Box } from '../../geometry/shape.ts';
import { inches, type Mm } from '../../measure/units.ts';
import type { PacketWords } from './words/shape.ts';

/** Sheet of the packet: Letter for inch papers, A4 for the ISO ones. */
export interface Sheet {
  readonly width: Mm;
  readonly height: Mm;
}

/** The design's paper may be a roll or larger than what lies on a bench: the packet keeps to its small sibling. */
export function packetSheet(paper: string): Sheet {
  return /^a\d$/i.test(paper) ? { width: 210, height: 297 } : { width: inches(8.5), height: inches(11) };
}

export const turned = ({ width, height }: Sheet): Sheet => ({ width: height, height: width });

/** Left margin wide enough for a binder. */
const MARGIN = { left: 20, right: 12, top: 12, bottom: 12 } as const;
/** Height of the title block, and of the heading with its rule. */
const BLOCK: Mm = 12;
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

export interface TitleBlock {
  readonly design: string;
  readonly date: string;
  readonly title: string;
  readonly page: number;
  readonly of: number;
  /** The number under 1, for drawings to scale. */
  readonly scale: number | null;
  readonly unit: 'in' | 'mm';
  readonly terms: PacketWords['block'];
}

/** Border of the sheet's foot: design, page title, scale bar, date, page number; and the page's heading. */
export function frame(sheet: Sheet, block: TitleBlock): DrawItem[] {
  const x0 = MARGIN.left;
  const x1 = sheet.width - MARGIN.right;
  const y0 = MARGIN.bottom;
  const w = x1 - x0;
  const bold = { stroke: INK.line, width: WEIGHT.bold };
  const thin = { stroke: INK.line, width: WEIGHT.thin };
  const columns = [0.38, 0.68, 0.85].map((share) => x0 + share * w);
  const cell = (from: Mm, to: Mm, label: string, words: string, strong = false): DrawItem[] => [
    text({ x: from + 1.8, y: y0 + BLOCK - 3.4 }, label, { size: TEXT.note, color: INK.soft }),
    text(
      { x: from + 1.8, y: y0 + 2.6 },
      shortened(words, { size: TEXT.large, bold: strong }, to - from - 3.6),
      {
        size: TEXT.large,
        bold: strong,
      },
    ),
  ];
  const [c1, c2, c3] = columns as [Mm, Mm, Mm];
  const top = sheet.height - MARGIN.top;
  return [
    rectangle({ x: x0, y: y0, w, h: BLOCK }, bold),
    ...columns.map((x) => line({ x, y: y0 }, { x, y: y0 + BLOCK }, thin)),
    ...cell(x0, c1, block.terms.design, block.design, true),
    ...(block.scale === null
      ? cell(c1, c2, block.terms.scale, block.terms.noScale)
      : [
          text({ x: c1 + 1.8, y: y0 + BLOCK - 3.4 }, `${block.terms.scale} 1 : ${block.scale}`, {
            size: TEXT.note,
            color: INK.soft,
          }),
          {
            kind: 'group',
            move: { x: c1 + 3, y: y0 + 1.8 },
            items: scaleBar(block.scale, block.unit, c2 - c1 - 12),
          } as const,
        ]),
    ...cell(c2, c3, block.terms.date, block.date === '' ? block.terms.noDate : block.date),
    ...cell(c3, x1, block.terms.page, block.terms.pageOf(block.page, block.of), true),
    ...sectionHead({ x: x0, y: y0, w, h: top - y0 }, block.title),
  ];
}

/** Heading with its rule, at the top of the room. */
export function sectionHead({ x, y, w, h }: Box, title: string): DrawItem[] {
  const top = y + h;
  const style = { size: TEXT.heading, bold: true };
  return [
    text({ x, y: top - 5.5 }, shortened(title, style, w), style),
    line({ x, y: top - 8 }, { x: x + w, y: top - 8 }, { stroke: INK.line, width: WEIGHT.bold }),
  ];
}
