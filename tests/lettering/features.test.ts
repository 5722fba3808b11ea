import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { FEATURE_TAGS } from '../../src/design/features.ts';
import type { Lettering, LetterLine } from '../../src/design/schema.ts';
import { formsOf } from '../../src/lettering/forms.ts';
import { setText } from '../../src/lettering/setting.ts';
import { featuredFont } from './featured.ts';
import { bytesOf, fontOf, SHIPPED } from './fonts.ts';
import { lettering } from './lettering.ts';
import { formIn, shaped, shapingFont } from './shaping.ts';

const file = featuredFont(
  [
    { tag: 'salt', forms: [['a', 'bcd']] },
    {
      tag: 'ss01',
      forms: [
        ['a', 'e'],
        ['n', 'm'],
      ],
      named: 300,
    },
    { tag: 'ss02', forms: [['n', 'h']] },
    { tag: 'smcp', forms: [['n', 'N']] },
    { tag: 'aalt', forms: [['a', 'bcde']] },
    {
      tag: 'frac',
      forms: [
        ['1', '7'],
        ['2', '8'],
      ],
    },
  ],
  [[300, 'Open a and n']],
);
const font = shapingFont(file, 'featured');
const lato = fontOf('lato');

/** What a line looks like: the letters of plain Lato that its letters are drawn as. */
function drawnAs(line: LetterLine, changes: Partial<Lettering> = {}): string {
  const { slots } = setText(
    { ...lettering('', { kerning: false, ...changes }), lines: [line] },
    () => font,
    1,
  );
  const letters = [...'abcdefghmnN01234578/ '];
  return slots
    .map(({ key, font: own }) => {
      const outline = JSON.stringify(own.outline(key));
      return letters.find((letter) => JSON.stringify(lato.outline(letter)) === outline) ?? '?';
    })
    .join('');
}

describe('features of a font', () => {
  it('are those that a second library finds, stylistic sets by the names that the font gives them', () => {
    const theirs = fontkit.create(Buffer.from(file)) as fontkit.Font;
    const tags = font.features().map(({ tag }) => tag);
    expect([...tags].sort()).toEqual([...theirs.availableFeatures].filter((tag) => tag !== 'kern').sort());
    const names = new Map(font.features().map(({ tag, name }) => [tag, name]));
    expect([names.get('ss01'), names.get('ss02'), names.get('salt')]).toEqual(['Open a and n', null, null]);
    for (const { id } of SHIPPED) {
      const known = (fontkit.create(Buffer.from(bytesOf(id))) as fontkit.Font).availableFeatures;
      const offered = fontOf(id)
        .features()
        .filter(({ tag }) => FEATURE_TAGS.some((one) => one === tag));
      for (const { tag } of offered) expect(known, id).toContain(tag);
    }
  });

  it('change the letters that they are for, for all lines or for one', () => {
    expect(drawnAs({ text: 'banana' })).toBe('banana');
    expect(drawnAs({ text: 'banana' }, { features: ['ss01'] })).toBe('bememe');
    expect(drawnAs({ text: 'banana', features: ['ss02'] }, { features: ['ss01'] })).toBe('bahaha');
    expect(drawnAs({ text: 'banana', features: [] }, { features: ['ss01'] })).toBe('banana');
    // As a second shaper has it.
    const run = (fontkit.create(Buffer.from(file)) as fontkit.Font).layout('banana', { ss01: true });
    const glyphs = shaped(font, 'banana', { features: [{ tag: 'ss01', value: 1 }] });
    expect(glyphs.map(({ key }) => formIn(key).glyphs[0]?.glyph)).toEqual(run.glyphs.map(({ id }) => id));
  });

  it('that a font lacks change nothing, not by a hair', () => {
    const plain = setText(
      { ...lettering('AVATAR To. fi'), lines: [{ text: 'AVATAR To. fi' }] },
      () => lato,
      1,
    );
    const able = shapingFont(bytesOf('lato'), 'lato');
    const asked = setText(lettering('AVATAR To. fi', { features: ['onum', 'swsh'] }), () => able, 1);
    expect(asked.slots.map(({ x, advance }) => [x, advance])).toEqual(
      plain.slots.map(({ x, advance }) => [x, advance]),
    );
    expect(asked.slots.map((slot) => slot.font.outline(slot.key))).toEqual(
      plain.slots.map((slot) => slot.font.outline(slot.key)),
    );
  });

  it('for fractions are meant for fractions alone', () => {
    expect(drawnAs({ text: '12 1/2 21' }, { features: ['frac'] })).toBe('12 7/8 21');
  });
});

describe('one letter in another form', () => {
  it('is offered in every form that the font has for it, each once', () => {
    const offered = formsOf(font, 'a');
    expect(offered.map(({ chosen }) => chosen)).toEqual([
      null,
      ...[1, 2, 3, 4].map((value) => ({ tag: 'aalt', value })),
    ]);
    expect(offered.map(({ outline }) => outline)).toEqual([...'abcde'].map(lato.outline));
    expect(formsOf(font, 'n').map(({ outline }) => outline)).toEqual([...'nNmh'].map(lato.outline));
    expect(formsOf(font, 'k')).toHaveLength(1);
    expect(formsOf(lato, 'a')).toHaveLength(1);
  });

  it('changes where it was chosen, and nowhere else', () => {
    const forms = [{ at: 3, tag: 'salt', value: 2 }];
    expect(drawnAs({ text: 'banana', forms })).toBe('bancna');
    expect(drawnAs({ text: 'banana', forms: [...forms, { at: 1, tag: 'aalt', value: 4 }] })).toBe('bencna');
    expect(drawnAs({ text: 'ba', forms })).toBe('ba');
  });
});
