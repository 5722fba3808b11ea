import type { DrawItem } from '../../drawing/drawing.ts';
import { line, rectangle, text } from '../../drawing/items.ts';
import { scaleFor } from '../../drawing/scaleBar.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { wrapped } from '../../drawing/text.ts';
import type { Box } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Plan } from '../../plan/types.ts';
import type { Letters } from '../pdf/letters.ts';
import { type PdfPage, pdfOf } from '../pdf/pdf.ts';
import type { Packet } from './leaf.ts';
import { framed, packetFor } from './packet.ts';
import { keyFigures, pictureIn, stateOf } from './pages/cover.ts';
import { roomOn } from './sheet.ts';
import { viewAt } from './view.ts';

/** A face that is set beside others. */
export interface Beside {
  readonly name: string;
  readonly plan: Plan;
}

/** What is told of one of them, the same rows of each. */
export interface FaceFigures {
  readonly rows: readonly { readonly term: string; readonly words: string }[];
  /** Paint and primer to buy. */
  readonly paints: readonly {
    /** Of the finish; null of a primer. */
    readonly color: string | null;
    readonly words: string;
    readonly price: string;
  }[];
  /** What to mind: errors and warnings of its checks, and lines that have no price. */
  readonly notes: readonly string[];
}

export function faceFigures(plan: Plan): FaceFigures {
  const packet = packetFor(plan);
  const { design, shopping } = plan;
  const { cover, shopping: terms } = packet.terms;
  const colors = new Map(design.finishes.map(({ id, color }) => [id, color]));
  const unpriced = shopping.filter(({ priced }) => !priced).length;
  return {
    // Paints are told one by one.
    rows: keyFigures(packet).flatMap(([term, words]) =>
      term === 'paint' ? [] : [{ term: cover[term], words }],
    ),
    paints: shopping
      .filter(({ kind }) => kind === 'paint' || kind === 'primer')
      .map(({ item, name, count, owned, priced, price }) => ({
        color: colors.get(item) ?? null,
        words: `${count} × ${name}`,
        price: owned ? terms.owned : priced ? packet.money(price) : terms.unpriced,
      })),
    notes: [...stateOf(packet), ...(unpriced > 0 ? [terms.without(unpriced)] : [])],
  };
}

/** Room of the terms on the left, and between two faces. */
const TERMS: Mm = 24;
const GAP: Mm = 4;
const LEAD: Mm = 4;
const SWATCH: Mm = 2.6;
/** Of the sheet's height the pictures get at least so much; what is then too long ends with how much more there is. */
const LEAST_PICTURE = 0.25;

const SMALL = { size: TEXT.small };
const HEAD = { size: TEXT.large, bold: true };

/** Rows of text in the width of a column. */
interface Cell {
  readonly rows: readonly string[];
  readonly style: { readonly size: Mm; readonly bold?: boolean };
  readonly swatch?: string | null;
}

/** What stands under the pictures, from the top: terms on the left, a cell for each face. */
interface Line {
  readonly term: string;
  readonly cells: readonly Cell[];
}

const heightOf = ({ cells }: Line): Mm => Math.max(1, ...cells.map(({ rows }) => rows.length)) * LEAD + 1;

function linesOf(packet: Packet, faces: readonly FaceFigures[], names: readonly string[], w: Mm): Line[] {
  const terms = packet.terms.sideBySide;
  const cell = (words: string, style: Cell['style'] = SMALL): Cell => ({
    rows: wrapped(words, style, w),
    style,
  });
  const [first] = faces;
  const told = (first?.rows ?? []).map(({ term }, i): Line => {
    const cells = faces.map(({ rows }) => cell(pick(rows, i).words));
    return { term, cells };
  });
  const most = Math.max(...faces.map(({ paints }) => paints.length));
  const paints = Array.from({ length: most }, (_, i): Line => {
    const cells = faces.map(({ paints: { [i]: paint } }): Cell => {
      if (!paint) return { rows: [], style: SMALL };
      const rows = wrapped(`${paint.words}, ${paint.price}`, SMALL, w - SWATCH - 1.4);
      return { rows, style: SMALL, swatch: paint.color };
    });
    return { term: i === 0 ? terms.paints : '', cells };
  });
  const notes = { term: terms.notes, cells: faces.map((face) => cell(face.notes.join(' '))) };
  const isNoted = faces.some((face) => face.notes.length > 0);
  return [
    { term: '', cells: names.map((name) => cell(name, HEAD)) },
    ...told,
    ...(isNoted ? [notes] : []),
    ...paints,
  ];
}

/** As many lines as have room, and how many there are not. */
function within(
  lines: readonly Line[],
  room: Mm,
): { readonly shown: readonly Line[]; readonly more: number } {
  let used = 0;
  const shown = lines.filter((one) => {
    used += heightOf(one);
    return used <= room;
  });
  return { shown, more: lines.length - shown.length };
}

/** What a sheet shows: faces at one scale, in columns of one width, and the lines under them. */
interface Shown {
  readonly faces: readonly Beside[];
  readonly scale: number;
  readonly lines: readonly Line[];
  readonly w: Mm;
}

/** Pictures of some faces at one scale, and under each what it takes. */
function drawSheet(packet: Packet, { faces, scale, lines, w }: Shown, body: Box): DrawItem[] {
  const xOf = (i: number) => body.x + TERMS + i * (w + GAP);
  const high = Math.max(...faces.map(({ plan }) => plan.face.height)) / scale;
  const { shown, more } = within(lines, body.h - high - 3);
  let y = body.y + body.h - high - 3;
  const items = faces.map(({ plan }, i): DrawItem => {
    const [w, h] = [plan.face.width / scale, plan.face.height / scale];
    const room = { x: xOf(i), y: body.y + body.h - high, w, h };
    return pictureIn(plan, viewAt(plan.face.box, room, scale));
  });
  for (const one of shown) {
    const top = y;
    items.push(text({ x: body.x, y: top - 3.4 }, one.term, { ...SMALL, color: INK.soft }));
    one.cells.forEach(({ rows, style, swatch }, i) => {
      const x = xOf(i) + (swatch === undefined ? 0 : SWATCH + 1.4);
      rows.forEach((row, k) => {
        items.push(text({ x, y: top - 3.4 - k * LEAD }, row, style));
      });
      if (swatch) {
        const box = { x: xOf(i), y: top - 3.6, w: SWATCH, h: SWATCH };
        items.push(rectangle(box, { fill: swatch, stroke: INK.line, width: WEIGHT.hair }));
      }
    });
    y -= heightOf(one);
    items.push(line({ x: body.x, y }, { x: body.x + body.w, y }, { stroke: INK.soft, width: WEIGHT.hair }));
  }
  if (more > 0) items.push(text({ x: body.x, y: y - 3.4 }, packet.terms.sideBySide.more(more), SMALL));
  return items;
}

type Faces = readonly [Beside, ...Beside[]];

/** Faces side by side on one landscape sheet, in the language and on the paper of the first. */
export function sideBySidePage(faces: Faces): PdfPage {
  const packet = packetFor(faces[0].plan);
  const body = roomOn(packet.sheet, true);
  const w = (body.w - TERMS - (faces.length - 1) * GAP) / faces.length;
  const figures = faces.map(({ plan }) => faceFigures(plan));
  const names = faces.map(({ name }) => name);
  const lines = linesOf(packet, figures, names, w);
  const rest = body.h - lines.reduce((sum, one) => sum + heightOf(one), 0) - 6;
  const room = { w, h: Math.max(LEAST_PICTURE * body.h, rest) };
  const scale = Math.max(...faces.map(({ plan }) => scaleFor(plan.face.box, room, packet.unit)));
  const { title } = packet.terms.sideBySide;
  const draw = (at: Box) => drawSheet(packet, { faces, scale, lines, w }, at);
  return framed(packet, { title, landscape: true, scale, draw }, { page: 1, of: 1 }, []);
}

export function sideBySide(faces: Faces, letters: Letters): Promise<Uint8Array> {
  const { design, language } = faces[0].plan;
  const page = sideBySidePage(faces);
  return pdfOf(
    [page],
    { title: `${design.name}: ${page.drawing.title}`, date: design.date, language },
    letters,
  );
}
