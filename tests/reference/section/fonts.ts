import { boxOfPath } from '../../../src/geometry/path.ts';
import type { Font } from '../../../src/lettering/font.ts';
import { fontProportions } from '../../../src/lettering/legibility.ts';
import { letter } from '../../../src/lettering/letter.ts';
import { inches, MM_PER_INCH } from '../../../src/measure/units.ts';
import { fontOf } from '../../lettering/fonts.ts';
import { lettering } from '../../lettering/lettering.ts';
import { printed, type Row, type Section } from '../table.ts';

/** Figures in font units, read from the files with two libraries. */
const FIGURES = {
  lato: {
    source: 'npm package @fontsource/lato 5.3.0 (OFL-1.1), read with two font libraries',
    unitsPerEm: 2000,
    capHeight: 1433,
    advances: { H: 1512, I: 614, O: 1596, A: 1360, V: 1360, M: 1840, T: 1180, '0': 1160 },
    boxOfI: [210, 404],
    boxOfO: [92, -15, 1505, 1449],
    words: { WELCOME: [10196, 10116], AVA: [4080, 3808], To: [2292, 2082], HOME: [6110, 6110] },
    widthOfO: 98.6,
    strokeOfI: 13.5,
    welcome: 28.237,
  },
  'bebas-neue': {
    source: 'npm package @fontsource/bebas-neue 5.3.0 (OFL-1.1), read with two font libraries',
    unitsPerEm: 1000,
    capHeight: 700,
    advances: { H: 420, I: 192, O: 400, A: 401, V: 382, M: 538, T: 364, '0': 400 },
    boxOfI: [41, 151],
    boxOfO: [33, -10, 367, 710],
    words: { WELCOME: [2948, 2946], AVA: [1184, 1128], To: [764, 760], HOME: [1721, 1721] },
    widthOfO: 47.7,
    strokeOfI: 15.7,
    welcome: 16.834,
  },
} as const;

function widthOf(font: Font, text: string, kerning: boolean, capHeight: number): number {
  const given = lettering(text, { capHeight, kerning });
  return letter({ lettering: given, font, sign: { id: 's', w: 1, h: 1 } }).lettered.width;
}

/** Whole font units, free of the last binary digits of curves cut at their extremes. */
const box = (font: Font, character: string): number[] => {
  const { x, y, w, h } = boxOfPath(font.outline(character));
  return [x, y, x + w, y + h].map((value) => Number(value.toFixed(6)) + 0);
};

function rowsOf(id: keyof typeof FIGURES): Row[] {
  const f = FIGURES[id];
  const { source } = f;
  const font = fontOf(id);
  const [minX, , maxX] = box(font, 'I');
  const [width, stroke] = fontProportions(font);
  const advances = Object.keys(f.advances).map((character) => font.advance(character));
  const words = Object.entries(f.words).flatMap(([word, [plain, kerned]]): Row[] => [
    {
      check: `${id}: ${word} without kerning`,
      source,
      expected: plain,
      found: widthOf(font, word, false, font.capHeight),
      tolerance: 1e-6,
    },
    {
      check: `${id}: ${word} kerned`,
      source,
      expected: kerned,
      found: widthOf(font, word, true, font.capHeight),
      tolerance: 1e-6,
    },
  ]);
  const text = (check: string, expected: string, found: string): Row => ({
    check: `${id}: ${check}`,
    source,
    expected,
    found,
  });
  return [
    text(
      'units per em, cap height',
      `${f.unitsPerEm}, ${f.capHeight}`,
      `${font.unitsPerEm}, ${font.capHeight}`,
    ),
    text(
      `advance of ${Object.keys(f.advances).join(' ')}`,
      Object.values(f.advances).join(' '),
      advances.join(' '),
    ),
    text('box of I, x', f.boxOfI.join(' '), `${minX} ${maxX}`),
    text('box of O', f.boxOfO.join(' '), box(font, 'O').join(' ')),
    ...words,
    {
      check: `${id}: width of O over height of I, %`,
      source: 'computed from the boxes',
      expected: f.widthOfO,
      found: 100 * (width?.share ?? 0),
      tolerance: printed(1),
    },
    {
      check: `${id}: stroke of I over its height, %`,
      source: 'computed from the boxes',
      expected: f.strokeOfI,
      found: 100 * (stroke?.share ?? 0),
      tolerance: printed(1),
    },
    {
      check: `${id}: WELCOME at a cap height of 4 in, kerned, in`,
      source: 'computed from the advance and the cap height',
      expected: f.welcome,
      found: widthOf(font, 'WELCOME', true, inches(4)) / MM_PER_INCH,
      tolerance: printed(3),
    },
  ];
}

export const fonts: Section = {
  number: 13,
  title: 'Fonts',
  rows: () => [...rowsOf('lato'), ...rowsOf('bebas-neue')],
};
