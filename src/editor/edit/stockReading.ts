import type { Edit } from '../../design/edit/edit.ts';
import { cutAsRead, readingEdits, type StockReading } from '../../job/reading.ts';
import { type Document, tried } from '../document/document.ts';
import type { Touching } from '../document/touching.ts';

/** All that a stock as a rule reads it changes: the boards, the parts made of them, and what is cut of them already. */
export function takenReading(doc: Document, reading: StockReading, { joined }: Touching): readonly Edit[] {
  const edits = readingEdits(doc.design, reading);
  const after = tried(doc, edits);
  return [...edits, ...cutAsRead(after.design, reading, joined(doc.shown).pieces, joined(after).pieces)];
}
