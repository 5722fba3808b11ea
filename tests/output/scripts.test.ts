import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { create, type Font as KitFont } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { readScripts } from '../../src/command/supplies.ts';
import { asTyped, spelled } from '../../src/drawing/spelled.ts';
import { unwrittenWords } from '../../src/output/files.ts';
import { packetOf } from '../../src/output/packet/packet.ts';
import { joined, unjoined } from '../../src/output/script/arabic.ts';
import { fromLeft } from '../../src/output/script/order.ts';
import { otherCharacters, scriptsOf } from '../../src/output/script/scripts.ts';
import { planned, starter } from '../plan/starters.ts';
import { printerTools, textOf } from './raster.ts';
import { LETTERS } from './setWith.ts';

const require = createRequire(import.meta.url);
const fileOf = (owner: string, cut: string) =>
  readFileSync(require.resolve(`@fontsource/${owner}/files/${owner}-${cut}-400-normal.woff`));

/** Words of door, sign, hatch, shelf and counter, with marks and pairs left out: those a shaping library moves. */
const ARABIC = [
  'لوحة',
  'باب',
  'نافذة',
  'خشب',
  'سرير',
  'رف',
  'درج',
  'زخرفة',
  'كشك',
  'ميناء',
  'مطبخ',
  'یک',
  'پنجره',
];

/** One name in each script that the fonts hold. */
const NAMES = [
  'Кассовое окошко',
  'Ελληνικό πλαίσιο',
  '售票处左门面板',
  'ひらがな カタカナ',
  '매표소 창구',
  '🚢 Hafen ⚓ Tür',
  'שלט כניסה',
  'لوحة المدخل',
  'Łódź Őrség',
  'ბილეთები',
  'Տոմսեր',
  'ตั๋ว',
  'द्वार',
];

describe('names in scripts that the typeface of the sheets lacks', () => {
  const design = starter('harbor-ticket-kiosk');
  const named = { ...design, parts: design.parts.map((p, i) => ({ ...p, name: NAMES[i] ?? p.name })) };
  const scripts = scriptsOf(readScripts(named));
  const plan = planned(named);

  it('find a glyph for every character, each from its font', () => {
    for (const name of NAMES) {
      for (const char of fromLeft(joined(name.normalize('NFC')))) {
        if (!asTyped(char)) expect(scripts(char), `${name}: ${char}`).not.toBeNull();
      }
    }
  });

  it('load no font for a design that needs none', () => {
    expect(readScripts(design)).toEqual([]);
  });

  it.skipIf(!printerTools)(
    'stand in the packet as they were typed, found again by a PDF reader',
    async () => {
      const bytes = await packetOf(plan, { ...LETTERS, scripts });
      // The reader sets marks around stretches that run to the left; they are no part of the name.
      const text = textOf(bytes)
        .replace(/[\u202a-\u202e]/g, '')
        .replace(/\s+/g, ' ');
      for (const name of NAMES) expect(text).toContain(name);
      expect(text).not.toContain('??');
    },
  );

  it('are told where no font has a letter, with the letter and its code', () => {
    // Balinese (Unicode Standard, block U+1B00 to U+1B7F): none of the fonts here holds it.
    const rare = { ...named, parts: named.parts.map((p, i) => (i === 0 ? { ...p, name: 'Pintu ᬓᬔ' } : p)) };
    const told = unwrittenWords({ ...plan, design: rare }, scriptsOf(readScripts(rare)));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('ᬓ (U+1B13) ᬔ (U+1B14) of “Pintu ᬓᬔ”');
    expect(unwrittenWords(plan, scripts)).toEqual([]);
    // Without the fonts (no network at the first use) every name is told that needs them.
    expect(unwrittenWords(plan, () => null)).toHaveLength(NAMES.length);
  });

  it('print no sign for a character that only tells how others are drawn', () => {
    // Unicode Standard, 23.4 variation selectors and 23.2 joiners: no ink of their own.
    expect(spelled('a\ufe0fb\u200dc\u2066d')).toEqual(spelled('abcd'));
    expect(otherCharacters('⚓\ufe0f')).toEqual(['⚓']);
  });

  it('are asked for only where it lacks the character', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        for (const char of otherCharacters(text)) expect(asTyped(char)).toBe(false);
      }),
    );
  });
});

describe('Arabic letters', () => {
  const bytes = fileOf('noto-sans-arabic', 'arabic');
  const kit = create(bytes) as KitFont;
  const scripts = scriptsOf([new Uint8Array(bytes)]);

  it.each(ARABIC)('of %s join as the shaping of a second font library joins them', (word) => {
    // Dots are glyphs of their own there, without an advance: words are as wide all the same, kerning aside.
    const shaped = kit.layout(word).glyphs;
    const theirs = shaped.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) / kit.unitsPerEm;
    const ours = [...joined(word)].reduce((sum, char) => sum + scripts(char)!.advance, 0);
    expect(ours).toBeCloseTo(theirs, 6);
    expect([...joined(word)].every((char) => char > '\ufb4f')).toBe(true);
  });

  it('take the pair of lam and alef as one shape, and give it back for search', () => {
    expect(joined('لا')).toBe('\ufefb');
    expect(joined('سلام')).toBe('\ufeb3\ufefc\ufee1');
    expect(unjoined(fromLeft(joined('سلام')))).toBe([...'سلام'].reverse().join(''));
  });
});

describe('lines that run to the left', () => {
  // Unicode Standard Annex 9, section 3.4, reordering: numbers keep their order, brackets are mirrored.
  it.each([
    ['שלט 12 (א)', '(א) 12 טלש'],
    ['Door שלט', 'Door טלש'],
    ['plain', 'plain'],
  ])('%s stands as %s', (read, stands) => {
    expect(fromLeft(read)).toBe(stands);
  });

  it('lose and add no character', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...'aZ1 (א)بת-🚢售'), { maxLength: 20 }), (chars) => {
        const sorted = (text: string) => [...text.replace(/[()]/g, '|')].sort();
        expect(sorted(fromLeft(chars.join('')))).toEqual(sorted(chars.join('')));
      }),
    );
  });
});
