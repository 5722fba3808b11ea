import { type PDFContext, PDFHexString, type PDFRef } from '@cantoo/pdf-lib';
import type { TextItem } from '../../drawing/drawing.ts';
import { roleOf } from './content.ts';

/**
 * The outline that a reader shows beside the pages (ISO 32000-1, 12.3.3): the sections that begin on each page; null
 * where none does.
 */
export function outlineOf(
  context: PDFContext,
  begun: readonly (readonly string[])[],
  pages: readonly PDFRef[],
): PDFRef | null {
  const sections = begun.flatMap((titles, page) => titles.map((title) => ({ title, page })));
  if (sections.length === 0) return null;
  const root = context.nextRef();
  const refs = sections.map(() => context.nextRef());
  sections.forEach(({ title, page }, i) => {
    const [own, before, after, target] = [refs[i], refs[i - 1], refs[i + 1], pages[page]];
    if (!own || !target) return;
    const entry = {
      Title: PDFHexString.fromText(title),
      Parent: root,
      Dest: [target, 'Fit'],
      ...(before ? { Prev: before } : {}),
      ...(after ? { Next: after } : {}),
    };
    context.assign(own, context.obj(entry));
  });
  const ends = { First: refs[0] ?? root, Last: refs.at(-1) ?? root, Count: refs.length };
  context.assign(root, context.obj({ Type: 'Outlines', ...ends }));
  return root;
}

/** Neighbors in reading order that are read as one: a heading by itself, else what runs up to the next one. */
function runs(read: readonly TextItem[]): { readonly role: string; readonly marks: number[] }[] {
  const found: { role: string; marks: number[] }[] = [];
  read.forEach((item, mark) => {
    const role = roleOf(item);
    const last = found.at(-1);
    if (last?.role === 'P' && role === 'P') last.marks.push(mark);
    else found.push({ role, marks: [mark] });
  });
  return found;
}

/**
 * The tree of tags for reading aloud (ISO 32000-1, 14.7): a section a page, in it headings and what stands under
 * them in the order in which it is drawn. `read` are the texts of each page in the order of their marks.
 */
export function structureOf(
  context: PDFContext,
  read: readonly (readonly TextItem[])[],
  pages: readonly PDFRef[],
): PDFRef {
  const root = context.nextRef();
  const document = context.nextRef();
  const parents: (number | PDFRef)[] = [];
  const sections = read.flatMap((items, i): PDFRef[] => {
    const page = pages[i];
    if (!page || items.length === 0) return [];
    const section = context.nextRef();
    const byMark: PDFRef[] = [];
    const kids = runs(items).map(({ role, marks }) => {
      const ref = context.register(
        context.obj({ Type: 'StructElem', S: role, P: section, Pg: page, K: marks }),
      );
      byMark.push(...marks.map(() => ref));
      return ref;
    });
    context.assign(section, context.obj({ Type: 'StructElem', S: 'Sect', P: document, K: kids }));
    parents.push(i, context.register(context.obj(byMark)));
    return [section];
  });
  context.assign(document, context.obj({ Type: 'StructElem', S: 'Document', P: root, K: sections }));
  context.assign(
    root,
    context.obj({ Type: 'StructTreeRoot', K: document, ParentTree: context.obj({ Nums: parents }) }),
  );
  return root;
}
