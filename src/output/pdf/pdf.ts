import { PDFContext, PDFHexString, type PDFRef, PDFString, PDFWriter } from '@cantoo/pdf-lib';
import type { Drawing, Raster } from '../../drawing/drawing.ts';
import type { Path } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import { keptBy, keptByValue } from '../../list/keptBy.ts';
import type { Mm } from '../../measure/units.ts';
import { decimal } from '../number.ts';
import { utf8 } from '../utf8.ts';
import { contentOf, type Names, POINTS_PER_MM } from './content.ts';
import { fingerprint } from './fingerprint.ts';
import { EmbeddedFont } from './font/embedded.ts';
import { writeImage } from './image.ts';
import type { Letters } from './letters.ts';
import { linksOf } from './links.ts';
import { color, pathOperators } from './operators.ts';
import { outlineOf, structureOf } from './structure.ts';

export interface PdfPage {
  readonly width_mm: Mm;
  readonly height_mm: Mm;
  readonly drawing: Drawing;
  /** Sections of the outline that begin on it. */
  readonly begins?: readonly string[] | undefined;
  /** What a viewer calls it in place of its number; on all pages of a file or on none. */
  readonly label?: string | undefined;
}

export interface PdfInfo {
  readonly title: string;
  readonly author?: string | undefined;
  /** As the design gives it; no clock is read, so the same design makes the same bytes. */
  readonly date: string;
  /** Of its text, as a tag such as `en`. */
  readonly language: string;
}

/** Names that content uses and the objects they stand for, one table for the whole file. */
class Resources implements Names {
  readonly layers = new Map<string, { name: string; ref: PDFRef }>();
  readonly states = new Map<number, { name: string; ref: PDFRef }>();
  readonly images = new Map<Raster, { name: string; ref: PDFRef }>();

  readonly color = keptByValue(color);
  readonly path = keptBy((path: Path) => pathOperators(path));
  private readonly fonts;
  readonly scripts;

  constructor(
    private readonly context: PDFContext,
    { typeface, scripts }: Letters,
  ) {
    this.scripts = scripts;
    this.fonts = [
      { name: 'F1', font: new EmbeddedFont(typeface.regular) },
      { name: 'F2', font: new EmbeddedFont(typeface.bold) },
    ] as const;
  }

  font(bold: boolean) {
    return this.fonts[bold ? 1 : 0];
  }

  layer(layer: string): string {
    const known = this.layers.get(layer);
    if (known) return known.name;
    const ref = this.context.register(this.context.obj({ Type: 'OCG', Name: PDFHexString.fromText(layer) }));
    const name = `L${this.layers.size}`;
    this.layers.set(layer, { name, ref });
    return name;
  }

  opacity(exact: number): string {
    // Sines and powers differ in their last digits from engine to engine; files do not.
    const value = Number(decimal(exact, 5));
    const known = this.states.get(value);
    if (known) return known.name;
    const ref = this.context.register(this.context.obj({ Type: 'ExtGState', ca: value }));
    const name = `G${this.states.size}`;
    this.states.set(value, { name, ref });
    return name;
  }

  image(raster: Raster): string {
    const known = this.images.get(raster) ?? { name: `I${this.images.size}`, ref: this.context.nextRef() };
    this.images.set(raster, known);
    return known.name;
  }

  /** Pictures are unpacked where they have to be, which takes its time. */
  async writeImages(): Promise<void> {
    for (const [raster, { ref }] of this.images) await writeImage(this.context, ref, raster);
  }

  dictionary() {
    const { context } = this;
    const named = (entries: Iterable<{ name: string; ref: PDFRef }>) =>
      Object.fromEntries([...entries].map(({ name, ref }) => [name, ref]));
    const fonts = this.fonts
      .filter(({ font }) => font.isUsed)
      .map(({ name, font }) => ({ name, ref: font.register(context) }));
    return context.obj({
      Font: named(fonts),
      ExtGState: named(this.states.values()),
      Properties: named(this.layers.values()),
      ...(this.images.size > 0 ? { XObject: named(this.images.values()) } : {}),
    });
  }
}

/**
 * A PDF of drawings, one a page, in true size: a millimeter of the drawing is a millimeter on paper. Layers
 * become optional content that a viewer can switch. The fonts of its text are embedded, as far as it uses them. It has an
 * outline and tags for reading aloud.
 *
 * The file is put together from objects rather than through the library's document class, which reads the
 * clock when it is made and when it is saved.
 */
export async function pdfOf(pages: readonly PdfPage[], info: PdfInfo, letters: Letters): Promise<Uint8Array> {
  const context = PDFContext.create();
  const resources = new Resources(context, letters);
  const resourcesRef = context.nextRef();
  const treeRef = context.nextRef();
  const refs = pages.map(() => context.nextRef());
  const links = linksOf(context, pages, refs);
  const written = pages.map((page) => contentOf(page.drawing.items, resources));
  pages.forEach((page, i) => {
    const annotations = pick(links, i);
    const content = context.register(context.flateStream(utf8(pick(written, i).content)));
    const dictionary = {
      Type: 'Page',
      Parent: treeRef,
      MediaBox: [0, 0, page.width_mm * POINTS_PER_MM, page.height_mm * POINTS_PER_MM],
      Resources: resourcesRef,
      Contents: content,
      StructParents: i,
      ...(annotations.length > 0 ? { Annots: annotations, Tabs: 'S' } : {}),
    };
    context.assign(pick(refs, i), context.obj(dictionary));
  });
  await resources.writeImages();
  context.assign(resourcesRef, resources.dictionary());
  context.assign(treeRef, context.obj({ Type: 'Pages', Kids: refs, Count: refs.length }));
  const groups = [...resources.layers.values()].map(({ ref }) => ref);
  const outline = outlineOf(
    context,
    pages.map(({ begins }) => begins ?? []),
    refs,
  );
  // Names of pages, each a prefix without a number (ISO 32000-1, 12.4.2).
  const labels = pages.flatMap(({ label }, i) =>
    label === undefined ? [] : [i, { P: PDFHexString.fromText(label) }],
  );
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      Pages: treeRef,
      Lang: PDFString.of(info.language),
      MarkInfo: { Marked: true },
      StructTreeRoot: structureOf(
        context,
        written.map(({ read }) => read),
        refs,
      ),
      ...(outline ? { Outlines: outline, PageMode: 'UseOutlines' } : {}),
      ...(labels.length > 0 ? { PageLabels: { Nums: labels } } : {}),
      ...(groups.length > 0 ? { OCProperties: { OCGs: groups, D: { Order: groups, ON: groups } } } : {}),
      // Printing at any other size than the true one spoils every pattern.
      ViewerPreferences: { PrintScaling: 'None', DisplayDocTitle: true },
    }),
  );
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: PDFHexString.fromText(info.title),
      ...(info.author === undefined ? {} : { Author: PDFHexString.fromText(info.author) }),
      Subject: PDFHexString.fromText(info.date),
      Creator: PDFString.of('Showface'),
    }),
  );
  const images = [...resources.images.keys()].map(({ data }) => data);
  const told = [info.title, info.date, ...written.map(({ content }) => content), ...images];
  const id = PDFHexString.of(fingerprint(told));
  context.trailerInfo.ID = context.obj([id, id]);
  // In one go, as pages are made: between so many objects each the library waits for a timer.
  return PDFWriter.forContext(context, Number.POSITIVE_INFINITY).serializeToBuffer();
}
