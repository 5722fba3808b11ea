import type { Color, TextItem } from '../../drawing/drawing.ts';
import { asTyped, spelled } from '../../drawing/spelled.ts';
import { otherWidth, textWidth } from '../../drawing/text.ts';
import { compose, type Matrix, turnAndMove } from '../../drawing/transform.ts';
import { anchorShift } from '../../drawing/walk.ts';
import { joined, unjoined } from '../script/arabic.ts';
import { fromLeft } from '../script/order.ts';
import type { ScriptGlyph, Scripts } from '../script/scripts.ts';
import { type EmbeddedFont, utf16 } from './font/embedded.ts';
import { factor, matrix, n, pathOperators } from './operators.ts';

/** What text refers to. */
export interface TextNames {
  /** A color as the three operands of `rg` and `RG`. */
  color(hex: Color): string;
  /** A weight of the typeface of the sheets with its resource name. */
  font(bold: boolean): { readonly name: string; readonly font: EmbeddedFont };
  readonly scripts: Scripts;
}

/** A stretch of one line: characters of the typeface of the sheets, or glyphs drawn as outlines. */
interface Stretch {
  readonly text: string;
  readonly glyphs: readonly ScriptGlyph[] | null;
}

const shifted = (place: Matrix, e: number): Matrix => compose(place, { a: 1, b: 0, c: 0, d: 1, e, f: 0 });

/**
 * A line of text. What the typeface of the sheets lacks is drawn as outlines of the script fonts, with the
 * characters beside it for search and reading aloud (ISO 32000-1, 14.9.4, replacement text); without a font
 * that has them it falls back to the nearest letters.
 */
export function textItem(item: TextItem, names: TextNames): string[] {
  const place = shifted(turnAndMove(item.angle ?? 0, item.at), anchorShift(item));
  const stretches = stretchesOf(item.text, names.scripts);
  const [only] = stretches;
  if (stretches.length === 1 && only?.glyphs === null) return standard(only.text, item, place, names);
  const drawn: string[] = [];
  let x = 0;
  for (const { text, glyphs } of stretches) {
    if (glyphs === null) {
      drawn.push(...standard(text, item, shifted(place, x), names));
      x += textWidth(text, item);
    } else {
      const advance = glyphs.reduce((sum, glyph) => sum + glyph.advance, 0) * item.size;
      const room = roomOf(text, item);
      const narrow = advance > room && room > 0 ? room / advance : 1;
      const squeezed = compose(shifted(place, x), squeeze(item.size, narrow));
      drawn.push(...outlined(text, glyphs, item, squeezed, names));
      x += advance * narrow;
    }
  }
  return drawn;
}

const squeeze = (size: number, narrow: number): Matrix => ({
  a: size * narrow,
  b: 0,
  c: 0,
  d: size,
  e: 0,
  f: 0,
});

const roomOf = (text: string, item: TextItem): number =>
  [...text].reduce((sum, char) => sum + otherWidth(char), 0) * (item.size / 1000);

function stretchesOf(text: string, scripts: Scripts): Stretch[] {
  const normal = text.normalize('NFC');
  if (asTyped(normal)) return [{ text: normal, glyphs: null }];
  const out: Stretch[] = [];
  for (const char of fromLeft(joined(normal))) {
    const glyph = asTyped(char) ? null : scripts(char);
    const last = out.at(-1);
    if (last && (last.glyphs === null) === (glyph === null)) {
      out[out.length - 1] = {
        text: last.text + char,
        glyphs: glyph && last.glyphs ? [...last.glyphs, glyph] : null,
      };
    } else {
      out.push({ text: char, glyphs: glyph ? [glyph] : null });
    }
  }
  return out;
}

function standard(text: string, item: TextItem, place: Matrix, names: TextNames): string[] {
  const set = spelled(text);
  if (set === '') return [];
  const { name, font } = names.font(item.bold ?? false);
  return [
    `BT ${names.color(item.color)} rg /${name} ${n(item.size)} Tf ${matrix(place)} Tm <${font.show(set)}> Tj ET`,
  ];
}

/** Heavier for bold by a line around the outline, in ems. */
const BOLDER = 0.03;

function outlined(
  text: string,
  glyphs: readonly ScriptGlyph[],
  item: TextItem,
  place: Matrix,
  names: TextNames,
): string[] {
  let x = 0;
  const shapes = glyphs.flatMap(({ path, advance }) => {
    const at = x;
    x += advance;
    return path.length === 0
      ? []
      : [`q 1 0 0 1 ${factor(at)} 0 cm`, pathOperators(path, factor), item.bold ? 'B' : 'f', 'Q'];
  });
  const { name, font } = names.font(false);
  const heavy = item.bold ? [`${names.color(item.color)} RG ${factor(BOLDER)} w`] : [];
  return [
    `q ${matrix(place)} cm ${names.color(item.color)} rg`,
    ...heavy,
    `/Span << /ActualText <FEFF${utf16(unjoined(text))}> >> BDC`,
    // An unseen space as wide as the glyphs: readers hang the replacement text on something that is set.
    `BT 3 Tr /${name} 1 Tf ${factor((100 * x) / SPACE)} Tz <${font.show(' ')}> Tj 100 Tz 0 Tr ET`,
    ...shapes,
    'EMC',
    'Q',
  ];
}

/** Advance of a space of the typeface of the sheets, in ems. */
const SPACE = textWidth(' ', { size: 1 });
