import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import type { Path, Point } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import { bytesOf, CHARACTERS, fontOf, SHIPPED } from '../lettering/fonts.ts';
import { lettering } from '../lettering/lettering.ts';

/**
 * Oracle: fontkit, a second font library, on the same files. It lays text out as a browser would; ligatures
 * and alternates are switched off, since letters on a sign are laid out one code point at a time.
 */
const PLAIN = { liga: false, clig: false, rlig: false, calt: false, ccmp: false, locl: false, dlig: false };

function oracleOf(id: string): fontkit.Font {
  const font = fontkit.create(Buffer.from(bytesOf(id)));
  if (!('layout' in font)) throw new Error('a single font expected');
  return font;
}

/** Twice the signed area under a cubic, by Green's theorem in closed form. */
function underCubic(a: Point, b: Point, c: Point, d: Point): number {
  const w = (p: Point, q: Point) => p.x * q.y - q.x * p.y;
  return (6 * w(a, b) + 3 * w(a, c) + w(a, d) + 3 * w(b, c) + 3 * w(b, d) + 6 * w(c, d)) / 10;
}

/** Twice the signed area under a quadratic. */
function underQuadratic(a: Point, b: Point, c: Point): number {
  const w = (p: Point, q: Point) => p.x * q.y - q.x * p.y;
  return (2 * w(a, b) + 2 * w(b, c) + w(a, c)) / 3;
}

function areaOfOurs(path: Path): number {
  let sum = 0;
  let start: Point = { x: 0, y: 0 };
  let at = start;
  for (const command of path) {
    if (command.op === 'M') start = command;
    else if (command.op === 'Z') sum += at.x * start.y - start.x * at.y;
    else if (command.op === 'L') sum += at.x * command.y - command.x * at.y;
    else sum += underCubic(at, { x: command.x1, y: command.y1 }, { x: command.x2, y: command.y2 }, command);
    at = command.op === 'Z' ? start : command;
  }
  return sum / 2;
}

function areaOfTheirs(commands: readonly { command: string; args: readonly number[] }[]): number {
  let sum = 0;
  let start: Point = { x: 0, y: 0 };
  let at = start;
  for (const { command, args } of commands) {
    const points = Array.from({ length: args.length / 2 }, (_, i) => ({
      x: args[2 * i] ?? 0,
      y: args[2 * i + 1] ?? 0,
    }));
    const [p, q, r] = points;
    if (command === 'closePath') {
      sum += at.x * start.y - start.x * at.y;
      at = start;
    } else if (command === 'moveTo' && p) {
      start = p;
      at = p;
    } else if (command === 'lineTo' && p) {
      sum += at.x * p.y - p.x * at.y;
      at = p;
    } else if (command === 'quadraticCurveTo' && p && q) {
      // Where a contour begins off the curve, fontkit puts its start halfway between two handles and then
      // takes that start for a handle once more: a stretch to be left out, the next one has the right handle.
      if (at === start && p.x === start.x && p.y === start.y) continue;
      sum += underQuadratic(at, p, q);
      at = q;
    } else if (command === 'bezierCurveTo' && p && q && r) {
      sum += underCubic(at, p, q, r);
      at = r;
    }
  }
  return sum / 2;
}

describe.each(SHIPPED.map(({ id }) => id))('%s against a second font library', (id) => {
  const font = fontOf(id);
  const oracle = oracleOf(id);
  const present = CHARACTERS.filter((character) => font.has(character));

  it('has the same characters, advances and outline areas', () => {
    const wrong: string[] = [];
    for (const character of CHARACTERS) {
      const code = character.codePointAt(0) ?? 0;
      if (font.has(character) !== oracle.hasGlyphForCodePoint(code)) wrong.push(`${character} present`);
      if (!font.has(character)) continue;
      const glyph = oracle.glyphForCodePoint(code);
      if (glyph.advanceWidth !== font.advance(character)) wrong.push(`${character} advance`);
      const ours = areaOfOurs(font.outline(character));
      const theirs = areaOfTheirs(glyph.path.commands as { command: string; args: number[] }[]);
      if (Math.abs(ours - theirs) > 1e-9 * Math.abs(theirs))
        wrong.push(`${character} area ${ours} ${theirs}`);
    }
    expect(wrong).toEqual([]);
    expect(present.length).toBeGreaterThan(80);
  });

  it('has the same kerned width for every pair', () => {
    const wrong: string[] = [];
    let kerned = 0;
    const plain = present.filter((character) => character < '\u007f');
    for (const left of plain) {
      for (const right of plain) {
        const laid = oracle.layout(left + right, PLAIN);
        const kern = font.kern(left, right);
        if (kern !== 0) kerned += 1;
        if (font.advance(left) + kern + font.advance(right) !== laid.advanceWidth) wrong.push(left + right);
      }
    }
    expect(wrong).toEqual([]);
    // A reader that finds no kerning would agree with an oracle that finds none: these fonts have some.
    if (!['rye', 'limelight', 'graduate', 'allerta-stencil'].includes(id)) expect(kerned).toBeGreaterThan(0);
  });

  it('has the same kerned width for whole words, as letters are placed', () => {
    const words = ['HARBOR TICKET', 'AVATAR', 'To Westward', 'Kiosk, 1907'];
    for (const word of words) {
      const { lettered } = letter({
        lettering: lettering(word, { capHeight: font.capHeight }),
        font,
        sign: { id: 's', w: 9000, h: 9000 },
      });
      expect(lettered.width).toBeCloseTo(oracle.layout(word, PLAIN).advanceWidth, 6);
    }
  });
});
