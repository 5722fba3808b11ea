import fc from 'fast-check';
import * as fontkit from 'fontkit';
import { difference, type Geom, union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Lettering, LetterLine } from '../../src/design/schema.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { assemble, tablesOf } from '../../src/lettering/font/tables.ts';
import { type Font, readFont } from '../../src/lettering/font.ts';
import { letter } from '../../src/lettering/letter.ts';
import { setText } from '../../src/lettering/setting.ts';
import { bytesOf, CHARACTERS, fontOf, SHIPPED } from './fonts.ts';
import { lettering } from './lettering.ts';
import { formIn, type ScriptFont, SHAPER, scriptBytes, shaped, shapingFont } from './shaping.ts';

/** Oracle: fontkit, a second shaper, which shares nothing with the first one. Its types tell only part of it. */
interface OtherFont {
  readonly unitsPerEm: number;
  readonly layout: (
    text: string,
    features: Readonly<Record<string, boolean>>,
    script: string,
    language: null,
    direction: 'ltr' | 'rtl',
  ) => {
    readonly advanceWidth: number;
    readonly glyphs: readonly { readonly id: number; readonly path: fontkit.Path }[];
    readonly positions: readonly {
      readonly xAdvance: number;
      readonly xOffset: number;
      readonly yOffset: number;
    }[];
  };
}
const other = (bytes: Uint8Array) => fontkit.create(Buffer.from(bytes)) as unknown as OtherFont;

const SCRIPTS: readonly {
  readonly id: ScriptFont;
  readonly tag: string;
  readonly direction: 'ltr' | 'rtl';
  readonly words: string;
  /** Letters that any text may be made of, for random ones. */
  readonly letters: string;
}[] = [
  {
    ...{ id: 'arabic', tag: 'arab', direction: 'rtl' },
    words: 'مرحبا بكم مكتبة خبز مسرح تذاكر ميناء سوق بيت السلام لا إله إلا لَوْحَةٌ شَمْسٌ بُسْتَان ٱلْكِتَاب مؤسسة قراءة',
    letters: 'ابتثجحخدذرزسشصضطظعغفقكلمنهويءآأؤإئةى',
  },
  {
    ...{ id: 'hebrew', tag: 'hebr', direction: 'rtl' },
    words: 'שלום שָׁלוֹם סִפְרִיָּה מאפייה תיאטרון נמל גַּן בֵּית ירושלים',
    letters: 'אבגדהוזחטיךכלםמןנסעףפץצקרשת',
  },
  {
    ...{ id: 'devanagari', tag: 'deva', direction: 'ltr' },
    words:
      'नमस्ते पुस्तकालय रोटी की दुकान नाट्यशाला टिकट विद्या क्षत्रिय ज्ञान श्री कृष्ण संस्कृति ऊर्जा ड्रम हिन्दी स्त्री राष्ट्र',
    letters: 'कखगघचछजझटठडढणतथदधनपफबभमयरलवशषसह',
  },
  {
    // The oracle leaves tone marks before am where they were typed, so that no word with both is among these.
    ...{ id: 'thai', tag: 'thai', direction: 'ltr' },
    words: 'สวัสดี ห้องสมุด ร้านขนมปัง โรงละคร ท่าเรือ ที่นี่ ผู้ใหญ่ ปั่น กตัญญู',
    letters: 'กขคฆงจฉชซฌญฎฏฐฑฒณดตถทธนบปผฝพฟภมยรลวศษสหฬอฮ',
  },
];

/** Glyphs with their places, however marks at one letter are listed. */
const placesOf = (glyphs: readonly { glyph: number; x: number; y: number }[]) =>
  glyphs.map(({ glyph, x, y }) => `${glyph} at ${Math.round(x)},${Math.round(y)}`).sort();

function ours(id: ScriptFont, text: string) {
  let pen = 0;
  const glyphs = shaped(shapingFont(scriptBytes(id)), text).flatMap(({ kerned }) => {
    const form = formIn(kerned);
    const start = pen;
    pen += form.advance;
    return form.glyphs.map(({ glyph, x, y }) => ({ glyph, x: start + x, y }));
  });
  return { width: pen, places: placesOf(glyphs) };
}

function theirs(font: OtherFont, text: string, tag: string, direction: 'ltr' | 'rtl') {
  const { glyphs, positions } = font.layout(text, {}, tag, null, direction);
  let pen = 0;
  const placed = glyphs.map(({ id }, i) => {
    const { xAdvance, xOffset, yOffset } = positions[i] ?? { xAdvance: 0, xOffset: 0, yOffset: 0 };
    const at = { glyph: id, x: pen + xOffset, y: yOffset };
    pen += xAdvance;
    return at;
  });
  return { width: Math.round(pen), places: placesOf(placed) };
}

describe.each(SCRIPTS)('letters of $id', ({ id, tag, direction, words, letters }) => {
  const font = other(scriptBytes(id));
  it('stand as a second shaper sets them, glyph by glyph', () => {
    for (const word of words.split(' ')) {
      expect(ours(id, word), word).toEqual(theirs(font, word, tag, direction));
    }
  });

  it('in any order too', () => {
    const any = fc.array(fc.constantFrom(...letters), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(any, (text) => {
        expect(ours(id, text.join(''))).toEqual(theirs(font, text.join(''), tag, direction));
      }),
      { numRuns: 60 },
    );
  });

  it('cover what the glyphs of that shaper cover (twin: polyclip-ts)', () => {
    const mine = shapingFont(scriptBytes(id));
    const word = words.split(' ')[1] ?? '';
    const sign = { id: 'board', w: 2000, h: 600 };
    const { lettered, checks } = letter({ lettering: lettering(word), font: mine, sign });
    expect(checks).toEqual([]);
    const run = font.layout(word, {}, tag, null, direction);
    const scale = 100 / mine.capHeight;
    let pen = 0;
    const glyphs = run.glyphs.map(({ path }, i) => {
      const { xAdvance = 0, xOffset = 0, yOffset = 0 } = run.positions[i] ?? {};
      const at = { x: pen + xOffset, y: yOffset };
      pen += xAdvance;
      const rings = ringsOf(path).map((ring) =>
        ring.map(([x, y]): Pair => [(at.x + x) * scale, (at.y + y) * scale]),
      );
      return covered(rings);
    });
    const area = areaOf(union([], ...glyphs));
    expect(Math.abs(lettered.ink_mm2 / area - 1)).toBeLessThan(1e-3);
  });
});

type Pair = [number, number];

/** What contours cover: TrueType's outer ones run clockwise and may overlap, those of holes run the other way. */
function covered(rings: readonly Pair[][]): Geom {
  const isHole = (ring: Pair[]) => areaOf([[ring]]) > 0;
  const outers = rings.filter((ring) => !isHole(ring)).map((ring) => [ring]);
  return difference(union([], ...outers), ...rings.filter(isHole).map((ring) => [ring]));
}

/** Contours of a glyph, curves in 24 straight pieces each. */
function ringsOf({ commands }: fontkit.Path): Pair[][] {
  const rings: Pair[][] = [];
  let at: Pair = [0, 0];
  for (const { command, args } of commands) {
    const points = Array.from(
      { length: args.length / 2 },
      (_, i): Pair => [args[2 * i] ?? 0, args[2 * i + 1] ?? 0],
    );
    const last = points.at(-1);
    if (command === 'moveTo' && last) rings.push([last]);
    else if (last) {
      const line = [at, ...points];
      for (let i = 1; i <= 24; i += 1) rings.at(-1)?.push(onCurve(line, i / 24));
    }
    at = last ?? at;
  }
  return rings;
}

/** De Casteljau's construction. */
function onCurve(points: readonly Pair[], t: number): Pair {
  const [first = [0, 0]] = points;
  if (points.length === 1) return first;
  return onCurve(
    points.slice(1).map(([x, y], i): Pair => {
      const [px, py] = points[i] ?? first;
      return [px + t * (x - px), py + t * (y - py)];
    }),
    t,
  );
}

const areaOf = (multi: ReturnType<typeof union>): number =>
  multi.flat().reduce((sum, ring) => {
    const twice = ring.reduce((t, [x, y], k) => {
      const [nx, ny] = ring[(k + 1) % ring.length] ?? [x, y];
      return t + x * ny - nx * y;
    }, 0);
    return sum + twice / 2;
  }, 0);

describe.each(SHIPPED)('$id', ({ id }) => {
  const plain = fontOf(id);
  const able = shapingFont(bytesOf(id), id);
  const font = other(bytesOf(id));

  it('advances the same letter by letter, set together, and by a second shaper', () => {
    const any = fc.array(fc.constantFrom(' ', ...CHARACTERS.filter(plain.has)), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(any, (text) => {
        const alone = text.reduce(
          (sum, c, i) => sum + plain.advance(c) + (i > 0 ? plain.kern(text[i - 1] ?? '', c) : 0),
          0,
        );
        const together = shaped(able, text.join('')).reduce(
          (sum, { key, kern }) => sum + formIn(key).advance + kern,
          0,
        );
        expect(together).toBe(alone);
        const off = { liga: false, clig: false, calt: false };
        expect(font.layout(text.join(''), off, 'latn', null, 'ltr').advanceWidth).toBe(alone);
      }),
      { numRuns: 40 },
    );
  });

  it('makes the ligatures that a second shaper makes, where they are chosen', () => {
    for (const word of ['OFFICE', 'office fish', 'waffle', 'fjord', 'coffee to go']) {
      const chosen = ['liga', 'calt'].map((tag) => ({ tag, value: 1 }));
      const glyphs = shaped(able, word, { features: chosen }).flatMap(({ key }) => formIn(key).glyphs);
      const run = font.layout(word, { liga: true, calt: true, clig: false }, 'latn', null, 'ltr');
      expect(glyphs.map(({ glyph }) => glyph)).toEqual(run.glyphs.map(({ id: glyph }) => glyph));
      expect(shaped(able, word)).toHaveLength(word.length);
    }
  });
});

const wide = { id: 'board', w: 3000, h: 600 };
const arabic = shapingFont(scriptBytes('arabic'), 'arabic');
const hebrew = shapingFont(scriptBytes('hebrew'), 'hebrew');
/** The font of the one script has no figures, so those of another stand in. */
const lato = fontOf('lato');
const ofEither =
  <R>(by: (font: Font) => (key: string) => R) =>
  (key: string) =>
    by(/^[\d.]$/.test(key) ? lato : hebrew)(key);
const hebrewWithFigures: Font = {
  ...hebrew,
  has: ofEither(({ has }) => has),
  advance: ofEither(({ advance }) => advance),
  outline: ofEither(({ outline }) => outline),
};
const set = (line: LetterLine, changes: Partial<Lettering> = {}, font = arabic) =>
  setText({ ...lettering('', changes), lines: [line] }, () => font, 1);

describe('a line that is set together', () => {
  it('has its letters in the order of reading, standing from the right', () => {
    const { slots } = set({ text: 'שלום' }, {}, hebrew);
    expect(slots.map(({ character }) => character)).toEqual([...'שלום']);
    const places = slots.map(({ x }) => x);
    expect(places).toEqual([...places].sort((a, b) => b - a));
  });

  it('keeps marks with their letter, whatever the size, the spacing and the kerning are', () => {
    const text = 'שָׁלוֹם לְכֻלָּם';
    const letters = [...text.matchAll(/\P{M}\p{M}*/gu)].map(([own]) => own);
    const alone = set({ text }, {}, hebrew);
    const sizes = fc.record({
      from: fc.integer({ min: 0, max: 14 }),
      count: fc.integer({ min: 1, max: 6 }),
      size: fc.constantFrom(0.5, 0.8, 1.4),
      stand: fc.constantFrom('baseline' as const, 'top' as const, 'middle' as const),
    });
    fc.assert(
      fc.property(
        fc.array(sizes, { maxLength: 3 }),
        fc.constantFrom(0, 0.3, -0.1),
        fc.boolean(),
        fc.constantFrom(undefined, true as const),
        (own, tracking, kerning, optical) => {
          const { slots } = set({ text, sizes: own }, { tracking, kerning, optical }, hebrew);
          expect(slots.map(({ character }) => character.normalize('NFD'))).toEqual(
            letters.map((one) => one.normalize('NFD')),
          );
          slots.forEach((slot, i) => {
            const [box, before] = [slot, alone.slots[i] ?? slot].map(({ font, key }) =>
              boxOfPath(font.outline(key)),
            );
            // The same letter with the same marks at the same places; kerning from the right moves both alike.
            expect([box?.w, box?.h, box?.y]).toEqual([before?.w, before?.h, before?.y]);
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is spaced between letters that stand apart, not between those that are written joined', () => {
    const widthOf = (text: string, tracking: number, font = arabic) =>
      set({ text }, { tracking, kerning: false }, font).lines[0]?.width ?? 0;
    // One space, with two gaps beside it: 20 mm each.
    expect(widthOf('مرحبا بكم', 0.2) - widthOf('مرحبا بكم', 0)).toBeCloseTo(40, 9);
    expect(widthOf('שלום', 0.2, hebrew) - widthOf('שלום', 0, hebrew)).toBeCloseTo(60, 9);
  });

  it('makes no ligature where space is added between letters, but for what its script asks', () => {
    const able = shapingFont(bytesOf('lato'), 'lato');
    const at = (tracking: number, text: string, font = able) =>
      set({ text }, { tracking, features: ['liga'] }, font).slots.map(({ character }) => character);
    expect(at(0, 'fish')).toEqual(['fi', 's', 'h']);
    expect(at(0.1, 'fish')).toEqual([...'fish']);
    // Lam and alef are always one in Arabic (Unicode Standard, 9.2).
    expect(at(0.1, 'لا', arabic).join('')).toBe('لا');
    const [lam, alef] = [...'لا'].map((c) => shaped(arabic, c).map(({ key }) => key));
    expect(set({ text: 'لا' }, { tracking: 0.1 }).slots.map(({ key }) => key)).not.toEqual(
      [lam, alef].flat(),
    );
  });

  it('joins letters of unlike sizes, too', () => {
    const text = 'بيت';
    const whole = set({ text }, { kerning: false }).slots.map(({ key }) => key);
    const sizes = [{ from: 1, count: 1, size: 1.5, stand: 'baseline' as const }];
    expect(set({ text, sizes }, { kerning: false }).slots.map(({ key }) => key)).toEqual(whole);
  });

  it('mixes directions as they are read', () => {
    const text = 'فتح 9:30';
    const { slots } = set({ text });
    const fromLeft = [...slots].sort((a, b) => a.x - b.x).map(({ character }) => character);
    expect(fromLeft.join('')).toBe('9:30 حتف');
  });

  it('has the marks of a list at its right, in one column, with the words ending at one line', () => {
    const lines = ['שלום', 'ים', 'בית ספר'].map((text) => ({ text, mark: 'number' as const }));
    const { slots } = setText({ ...lettering(''), lines }, () => hebrewWithFigures, 1);
    const rows = lines.map((_, line) => {
      const own = slots.filter((slot) => slot.line === line && slot.character.trim() !== '');
      const boxOf = ({ x, key, font, scale }: (typeof own)[number]) => {
        const box = boxOfPath(font.outline(key));
        return { left: x + box.x * scale, right: x + (box.x + box.w) * scale };
      };
      const isMark = ({ character }: { character: string }) => /[\d.]/.test(character);
      const [marks, words] = [own.filter(isMark), own.filter((slot) => !isMark(slot))].map((all) =>
        all.map(boxOf),
      );
      return {
        told: [...own]
          .filter(isMark)
          .sort((a, b) => a.x - b.x)
          .map(({ character }) => character)
          .join(''),
        mark: Math.min(...(marks ?? []).map(({ left }) => left)),
        end: Math.max(...(words ?? []).map(({ right }) => right)),
      };
    });
    expect(rows.map(({ told }) => told)).toEqual(['.1', '.2', '.3']);
    for (const { mark, end } of rows) {
      expect(end).toBeCloseTo(rows[0]?.end ?? 0, 9);
      // 0.4 of the capitals of 100 mm lie between.
      expect(mark - end).toBeCloseTo(40, 9);
    }
  });

  it.each([
    ['arabic', 'مكتبة السلام', 120],
    ['devanagari', 'नमस्ते पुस्तकालय', 150],
    ['arabic', 'مرحبا بكم', 40],
  ] as const)(
    'bends letters of %s that are written joined with their line, so that they stay joined',
    (id, text, arcRise) => {
      const font = shapingFont(scriptBytes(id), id);
      const made = (changes: Partial<Lettering>) =>
        letter({ lettering: lettering(text, { kerning: false, ...changes }), font, sign: wide }).lettered;
      const [straight, bent] = [made({}), made({ arcRise })];
      const pieces = ({ layers }: typeof bent) => layers.flatMap(({ whole }) => whole).length;
      expect(pieces(bent)).toBe(pieces(straight));
      // Twin: a strip at the height y over a baseline bent to the radius R is (R + y) / R as long. R by the rise over the
      // chord of the ink's length: (L / a) (1 - cos(a / 2)) = rise.
      const length = straight.box.w;
      let [low, high] = [1e-6, 4.6];
      for (let i = 0; i < 60; i += 1) {
        const a = (low + high) / 2;
        if ((length / a) * (1 - Math.cos(a / 2)) < arcRise) low = a;
        else high = a;
      }
      const radius = length / low;
      const baseline = straight.glyphs[0]?.baseline ?? 0;
      const rings = straight.layers.flatMap(({ whole }) =>
        whole.flatMap(({ outer, holes }) => [outer, ...holes]),
      );
      let grown = 0;
      for (const ring of rings) {
        const own = ring.map(({ x, y }) => ({ x, y: y - baseline }));
        own.forEach((p, i) => {
          const q = own[(i + 1) % own.length] ?? p;
          const area = (p.x * q.y - q.x * p.y) / 2;
          // Area, and the first moment about the baseline over the radius.
          grown += area * (1 + (p.y + q.y) / 3 / radius);
        });
      }
      expect(bent.ink_mm2 / grown).toBeCloseTo(1, 3);
    },
  );

  it('keeps pictures among its letters', () => {
    const sign = letter({ lettering: lettering('שלום ★ ים'), font: hebrew, sign: wide });
    expect(sign.checks).toEqual([]);
    expect(sign.lettered.glyphs.map(({ character }) => character).join('')).toBe('שלום★ים');
  });

  it('is as long as its letters in a row, however often it is set', () => {
    const fitted = lettering('नमस्ते', { fit: 'width' });
    const font = shapingFont(scriptBytes('devanagari'), 'devanagari');
    const { lettered } = letter({ lettering: fitted, font, sign: wide });
    expect(lettered.box.w).toBeCloseTo(wide.w - 2 * fitted.margin, 6);
  });
});

describe('what cannot be set right', () => {
  const codesOf = (text: string, font = arabic) =>
    letter({ lettering: lettering(text), font, sign: wide }).checks.map(({ code, severity, figures }) => [
      `${severity} ${code}`,
      figures.characters,
      figures.why,
    ]);
  it('is refused with what lacks', () => {
    expect(codesOf('مرحبا')).toEqual([]);
    // A vowel sign that stands on no letter.
    const devanagari = shapingFont(scriptBytes('devanagari'), 'devanagari');
    expect(codesOf('\u093f', devanagari)).toEqual([['error lettering.script', '\u093f', 'rules']]);
    expect(codesOf('नमस्ते', devanagari)).toEqual([]);
    // No letters of the script, and no marks for letters that it has.
    const able = shapingFont(bytesOf('lato'), 'lato');
    expect(codesOf('ים', able)).toEqual([['error lettering.missing-glyph', 'י ם', undefined]]);
    // Not loaded.
    expect(codesOf('مرحبا', fontOf('lato'))).toEqual([
      ['error lettering.missing-glyph', 'م ر ح ب ا', undefined],
      ['error lettering.script', 'م ر ح ب ا', 'unloaded'],
    ]);
  });
});

describe('damaged rules of a font', () => {
  it('come to an end, whatever stands in them', () => {
    for (const { id, words } of SCRIPTS) {
      const { cff, tables } = tablesOf(scriptBytes(id));
      const hit = fc.record({
        table: fc.constantFrom('GSUB', 'GPOS', 'GDEF'),
        at: fc.oneof(fc.nat({ max: 200 }), fc.nat({ max: 80_000 })),
        byte: fc.nat({ max: 255 }),
      });
      fc.assert(
        fc.property(fc.array(hit, { minLength: 1, maxLength: 12 }), (hits) => {
          const copies = new Map([...tables].map(([tag, { data }]) => [tag, data.slice()]));
          for (const { table, at, byte } of hits) {
            const data = copies.get(table);
            if (data) data[at % data.length] = byte;
          }
          const inOrder = [...copies].sort(([a], [b]) => (a < b ? -1 : 1));
          const read = readFont(assemble(inOrder, cff), 'x', SHAPER);
          if (!read.ok) return;
          const clusters = shaped(read.font, words);
          const told = clusters.flatMap(({ from, count }) =>
            Array.from({ length: count }, (_, i) => from + i),
          );
          // Nothing of the text is lost.
          expect(told.sort((a, b) => a - b)).toEqual([...words].map((_, i) => i));
        }),
        { numRuns: 60 },
      );
    }
  });
});
