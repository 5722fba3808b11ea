import { decodePDFRawStream, PDFArray, PDFDict, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';

/** A text as a page sets it: its characters by the font's own map, and its height by the matrices in force. */
export interface SetText {
  readonly words: string;
  /** Size of the font in points of the page (ISO 32000-1, 9.4.4: the size by the text matrix by that of the page). */
  readonly points: number;
}

type Matrix = readonly [number, number, number, number, number, number];
const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** The first, then the second (ISO 32000-1, 8.3.4: rows times matrices). */
const times = ([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix => [
  a * p + b * r,
  a * q + b * s,
  c * p + d * r,
  c * q + d * s,
  e * p + f * r + t,
  e * q + f * s + u,
];

const plain = (stream: unknown): string => {
  if (!(stream instanceof PDFRawStream)) throw new Error('A stream of the file is none.');
  return Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1');
};

const fromUtf16 = (hex: string): string =>
  String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((code) => Number.parseInt(code, 16)));

/** Characters by the codes of a font (ISO 32000-1, 9.10.3). */
function charactersOf(font: PDFDict): ReadonlyMap<string, string> {
  const map = plain(font.context.lookup(font.get(PDFName.of('ToUnicode'))));
  return new Map(
    [...map.matchAll(/^<(\w{4})> <(\w+)>$/gm)].map(([, code = '', text = '']) => [
      code.toUpperCase(),
      fromUtf16(text),
    ]),
  );
}

const TOKEN = /<<|>>|<[0-9a-fA-F]*>|\/[^\s/<>[\]()]+|[[\]]|[^\s/<>[\]()]+/g;

/** Texts in the order in which an interpreter of the content comes to them; what is set unseen (`3 Tr`) is left out. */
function textsIn(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): SetText[] {
  const found: SetText[] = [];
  const kept: Matrix[] = [];
  let page = IDENTITY;
  let line = IDENTITY;
  let [font, size, unseen] = ['', 0, false];
  let operands: string[] = [];
  const matrix = () => operands.slice(-6).map(Number) as unknown as Matrix;
  for (const [token] of content.matchAll(TOKEN)) {
    if (token === 'q') kept.push(page);
    else if (token === 'Q') page = kept.pop() ?? IDENTITY;
    else if (token === 'cm') page = times(matrix(), page);
    else if (token === 'BT') line = IDENTITY;
    else if (token === 'Tm') line = matrix();
    else if (token === 'Tf') [font, size] = [operands.at(-2) ?? '', Number(operands.at(-1))];
    else if (token === 'Tr') unseen = operands.at(-1) === '3';
    else if (token === 'Do') throw new Error('A page draws what is kept elsewhere, which may have text.');
    else if (['Td', 'TD', 'T*', 'TJ', "'", '"'].includes(token)) throw new Error(`${token} is not read.`);
    else if (token === 'Tj' && !unseen) {
      const codes = (operands.at(-1) ?? '').replace(/[<>]/g, '').toUpperCase().match(/.{4}/g) ?? [];
      const words = codes.map((code) => fonts.get(font)?.get(code) ?? '').join('');
      const [, , c, d] = times(line, page);
      found.push({ words, points: size * Math.hypot(c, d) });
    } else {
      operands.push(token);
      continue;
    }
    operands = [];
  }
  return found;
}

/** What every page of a file sets, read from its operators (ISO 32000-1, 9). */
export async function setTexts(bytes: Uint8Array): Promise<SetText[][]> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  return document.getPages().map(({ node }) => {
    const all = node.Resources()?.lookup(PDFName.of('Font'), PDFDict);
    const fonts = new Map(
      (all?.entries() ?? []).map(([name, ref]) => {
        const font = document.context.lookup(ref, PDFDict);
        return [name.asString(), charactersOf(font)] as const;
      }),
    );
    const contents = node.Contents();
    const streams = contents instanceof PDFArray ? contents.asArray() : [contents];
    const content = streams
      .map((one) => plain(document.context.lookup(one ?? PDFName.of('none'))))
      .join('\n');
    return textsIn(content, fonts);
  });
}
