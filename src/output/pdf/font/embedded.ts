import { type PDFContext, type PDFRef, PDFString } from '@cantoo/pdf-lib';
import { CAP_HEIGHT } from '../../../drawing/typeface.ts';
import { need } from '../../../lettering/font/tables.ts';
import { under } from '../../../list/at.ts';
import { keptByValue } from '../../../list/keptBy.ts';
import { fingerprint } from '../fingerprint.ts';
import type { Face } from './face.ts';
import { subsetOf } from './subset.ts';

const hex = (value: number): string => value.toString(16).padStart(4, '0').toUpperCase();

/** A font of a PDF: remembers which characters are set with it, and is embedded with these alone. */
export class EmbeddedFont {
  /** Characters by the glyphs that stand for them. */
  private readonly used = new Map<number, string>();

  constructor(readonly face: Face) {}

  /** Glyph of a character as it is shown, remembered for the font. */
  private readonly shown = keptByValue((char: string) => {
    const glyph = this.face.glyphOf(char);
    if (!this.used.has(glyph)) this.used.set(glyph, char);
    return hex(glyph);
  });

  /** Glyphs of a text as the hexadecimal string that an operator shows. */
  show(text: string): string {
    let out = '';
    for (const char of text) out += this.shown(char);
    return out;
  }

  /** Whether anything is set with it. */
  get isUsed(): boolean {
    return this.used.size > 0;
  }

  /** Its objects (ISO 32000-1, 9.7 composite fonts: glyphs by number, with the characters for search). */
  register(context: PDFContext): PDFRef {
    const { face } = this;
    const glyphs = [...this.used.keys()].sort((a, b) => a - b);
    const name = `${tagOf(glyphs)}+${face.name}`;
    const program = subsetOf(face, glyphs);
    const head = need(face.tables, 'head');
    const perEm = head.u16(18);
    const em = (value: number) => Math.round((value * 1000) / perEm);
    const hhea = need(face.tables, 'hhea');
    const descriptor = context.register(
      context.obj({
        Type: 'FontDescriptor',
        FontName: name,
        // Symbolic: glyphs are named by number, in no standard encoding.
        Flags: 4,
        FontBBox: [36, 38, 40, 42].map((at) => em(head.i16(at))),
        ItalicAngle: 0,
        Ascent: em(hhea.i16(4)),
        Descent: em(hhea.i16(6)),
        CapHeight: CAP_HEIGHT * 1000,
        // Required, and used only where the font itself cannot be: thickness of upright strokes.
        StemV: 80,
        FontFile2: context.register(context.flateStream(program, { Length1: program.length })),
      }),
    );
    const descendant = context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'CIDFontType2',
        BaseFont: name,
        CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
        FontDescriptor: descriptor,
        CIDToGIDMap: 'Identity',
        DW: 0,
        W: glyphs.flatMap((glyph) => [glyph, [face.advanceOf(glyph)]]),
      }),
    );
    return context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'Type0',
        BaseFont: name,
        Encoding: 'Identity-H',
        DescendantFonts: [descendant],
        ToUnicode: context.register(context.flateStream(this.characters(glyphs))),
      }),
    );
  }

  /** Map from glyphs to characters, a hundred entries at a time (ISO 32000-1, 9.10.3). */
  private characters(glyphs: readonly number[]): string {
    const entries = glyphs.map((glyph) => `<${hex(glyph)}> <${utf16(under(this.used, glyph))}>`);
    const groups: string[] = [];
    for (let i = 0; i < entries.length; i += 100) {
      const group = entries.slice(i, i + 100);
      groups.push(`${group.length} beginbfchar`, ...group, 'endbfchar');
    }
    return [
      '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
      '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
      '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
      '1 begincodespacerange <0000> <FFFF> endcodespacerange',
      ...groups,
      'endcmap CMapName currentdict /CMap defineresource pop end end',
    ].join('\n');
  }
}

/** Six capitals that follow from the glyphs (ISO 32000-1, 9.6.4: the tag of a subset). */
function tagOf(glyphs: readonly number[]): string {
  const digits = fingerprint([glyphs.join(' ')]);
  return Array.from({ length: 6 }, (_, i) =>
    String.fromCharCode(65 + (Number.parseInt(digits.slice(4 * i, 4 * i + 4), 16) % 26)),
  ).join('');
}

/** UTF-16, big-endian, as PDF writes characters in strings. */
export function utf16(text: string): string {
  let out = '';
  for (let i = 0; i < text.length; i++) out += hex(text.charCodeAt(i));
  return out;
}
