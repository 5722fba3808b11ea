import type { Color, DrawItem } from '../../drawing/drawing.ts';
import { rectangle, text } from '../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { fittedSize, wrapped } from '../../drawing/text.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

interface Look {
  readonly size: Mm;
  readonly bold?: boolean;
  readonly color?: Color;
}

const SMALL = { size: TEXT.small } as const;
const LEAD: Mm = 4;
/** Room of what a figure is called, and of a swatch before words. */
const TERM: Mm = 24;
const SWATCH: Mm = 2.6;

/** Text that is set from the top of a room downward. */
export class Column {
  readonly items: DrawItem[] = [];
  /** Where what was set last ends. */
  y: Mm;

  constructor(private readonly room: Box) {
    this.y = room.y + room.h;
  }

  gap(height: Mm): void {
    this.y -= height;
  }

  /** What was set elsewhere, and where it ends. */
  put(items: readonly DrawItem[], foot: Mm): void {
    this.items.push(...items);
    this.y = foot;
  }

  /** A name in up to three lines, as large as has room. */
  title(words: string): void {
    const { x, w } = this.room;
    for (const row of wrapped(words, { size: TEXT.title, bold: true }, w).slice(0, 3)) {
      const size = fittedSize(row, { size: TEXT.title, bold: true }, w);
      this.y -= TEXT.title;
      this.items.push(text({ x, y: this.y }, row, { size, bold: true }));
    }
    this.y -= 2;
  }

  heading(words: string): void {
    this.y -= 6;
    this.items.push(text({ x: this.room.x, y: this.y }, words, { size: TEXT.large, bold: true }));
    this.y -= 2.4;
  }

  lines(words: string, look: Look): void {
    for (const row of wrapped(words, look, this.room.w)) {
      this.y -= 4.2;
      this.items.push(text({ x: this.room.x, y: this.y }, row, look));
    }
  }

  /** Rows in a frame, not to be read over. */
  framed(rows: readonly string[], pitch: Mm, look: Look): void {
    const { x, w } = this.room;
    const h = rows.length * pitch + 3;
    this.y -= 4;
    this.items.push(rectangle({ x, y: this.y - h, w, h }, { stroke: INK.line, width: WEIGHT.bold }));
    rows.forEach((row, i) => {
      this.items.push(text({ x: x + 2, y: this.y - pitch - 0.2 - i * pitch }, row, look));
    });
    this.y -= h;
  }

  figure(term: string, words: string): void {
    const { x, w } = this.room;
    this.items.push(text({ x, y: this.y - 3.4 }, term, { ...SMALL, color: INK.soft }));
    this.rows(words, x + TERM, w - TERM);
  }

  /** Words behind a spot of color; without one where there is none. */
  swatch(color: Color | null, words: string): void {
    const { x, w } = this.room;
    if (color) {
      const box = { x, y: this.y - 3.6, w: SWATCH, h: SWATCH };
      this.items.push(rectangle(box, { fill: color, stroke: INK.line, width: WEIGHT.hair }));
    }
    this.rows(words, x + SWATCH + 1.4, w - SWATCH - 1.4);
  }

  /** What was noted, as much of it as has room. */
  note(title: string, words: string): void {
    if (words === '') return;
    this.gap(4);
    this.heading(title);
    const most = Math.max(0, Math.floor((this.y - this.room.y - 8) / LEAD));
    for (const row of wrapped(words, SMALL, this.room.w).slice(0, most)) {
      this.items.push(text({ x: this.room.x, y: this.y - 3.4 }, row, SMALL));
      this.y -= LEAD;
    }
  }

  private rows(words: string, x: Mm, w: Mm): void {
    const rows = wrapped(words, SMALL, w).slice(0, 3);
    rows.forEach((row, i) => {
      this.items.push(text({ x, y: this.y - 3.4 - i * LEAD }, row, SMALL));
    });
    this.y -= rows.length * LEAD + 1;
  }
}
