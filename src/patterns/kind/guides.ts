import type { DrawItem, TextItem } from '../../drawing/drawing.ts';
import { layer, line, text } from '../../drawing/items.ts';
import { DASH, INK, PATTERN_TEXT } from '../../drawing/style.ts';
import { textWidth } from '../../drawing/text.ts';
import { boxAround } from '../../geometry/box.ts';
import { chordsInside } from '../../geometry/chord.ts';
import { boxesMeet, boxOf } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Lettered, PlacedGlyph } from '../../lettering/result.ts';
import type { Mm } from '../../measure/units.ts';
import type { PatternWords } from '../words.ts';
import { CENTER, centerLines, GUIDE, outlines } from './outlines.ts';

/** Left free between a guide line and the outlines to follow. */
const CLEAR: Mm = 2;
/** Shorter ends of lines guide nothing. */
const LEAST: Mm = 1;
/** From a line to its name. */
const NAME_OFF: Mm = 0.8;

const BASELINE = { ...GUIDE, dash: DASH.hidden };
/** Told from all that is to be followed, and from the edge of the board. */
const SEAM = { ...GUIDE, dash: DASH.trim };
const NAME = { size: PATTERN_TEXT.note, color: INK.soft };

export interface Guided {
  readonly board: Region;
  readonly lettered: Lettered;
  /** Baselines are arcs: no straight line stands for them. */
  readonly bent: boolean;
  /** Edges and joints of what is beneath. */
  readonly seams: readonly (readonly [Point, Point])[];
  /** The board's edge is drawn elsewhere, to be sawn by. */
  readonly sawn?: boolean | undefined;
}

/** A stretch of a guide line with its end at the lettering first; its name stands there. */
interface Stretch {
  readonly axis: 'x' | 'y';
  /** Where the line lies across its axis. */
  readonly at: Mm;
  readonly near: Mm;
  readonly far: Mm;
}

/**
 * What a pattern is laid on its board by: the board's edge, its center lines, and the baselines of straight
 * lines of text. Center lines and baselines end before the lettering, so that none is taken for an outline; each
 * stretch bears its name where there is room, since the next one may be on another page.
 */
export function guides({ board, lettered, bent, sawn, seams }: Guided, words: PatternWords): DrawItem {
  const edge = [...(sawn ? [] : outlines(board, GUIDE)), ...seams.map(([a, b]) => line(a, b, SEAM))];
  const whole = boxOf(board);
  const letters = lettered.layers.flatMap(({ region }) => region.map(({ outer }) => boxOfPoints(outer)));
  const ink = boxAround(letters);
  if (!whole || !ink) return layer('guides', [...edge, ...(whole ? centerLines(whole) : [])]);
  const taken: Box[] = [];
  const drawn = (stretches: readonly Stretch[], look: typeof GUIDE, name: string): DrawItem[] => [
    ...stretches.map((one) => line(pointOn(one, one.near), pointOn(one, one.far), look)),
    ...stretches.flatMap((one) => nameOf(one, name, taken)),
  ];
  const middle = { x: whole.x + whole.w / 2, y: whole.y + whole.h / 2 };
  const { center, baseline } = words.guide;
  return layer('guides', [
    ...edge,
    ...drawn(stretchesBeside('y', middle.x, [whole.y, whole.y + whole.h], ink), CENTER, center),
    ...drawn(stretchesBeside('x', middle.y, [whole.x, whole.x + whole.w], ink), CENTER, center),
    ...(bent ? [] : linesOf(lettered.glyphs)).flatMap(({ at, box }) => {
      const chords = chordsInside({ x: whole.x, y: at }, { x: whole.x + whole.w, y: at }, board);
      const [first, last] = [chords[0], chords.at(-1)];
      if (!first || !last) return [];
      const strip = { x: whole.x, y: at - CLEAR, w: whole.w, h: 2 * CLEAR + PATTERN_TEXT.note };
      const beside = boxAround([box, ...letters.filter((one) => boxesMeet(one, strip))]) ?? box;
      return drawn(
        stretchesBeside('x', at, [whole.x + first[0], whole.x + last[1]], beside),
        BASELINE,
        baseline,
      );
    }),
  ]);
}

/** The baseline of every line of text, that of its largest letters, and the box of its letters. */
function linesOf(glyphs: readonly PlacedGlyph[]): { at: Mm; box: Box }[] {
  return [...new Set(glyphs.map((glyph) => glyph.line))].flatMap((number) => {
    const own = glyphs.filter((glyph) => glyph.line === number);
    const box = boxAround(own.flatMap(({ region }) => boxOf(region) ?? []));
    const [largest] = [...own].sort((a, b) => b.capHeight - a.capHeight);
    return box && largest ? [{ at: largest.baseline, box }] : [];
  });
}

/** What is left of a line from one end of the board to the other before and after the lettering. */
function stretchesBeside(axis: 'x' | 'y', at: Mm, [from, to]: readonly [Mm, Mm], ink: Box): Stretch[] {
  const [low, high] = axis === 'x' ? [ink.x, ink.x + ink.w] : [ink.y, ink.y + ink.h];
  return [
    { axis, at, near: low - CLEAR, far: from },
    { axis, at, near: high + CLEAR, far: to },
  ].filter(({ near, far }, i) => (i === 0 ? near - far : far - near) >= LEAST);
}

const pointOn = ({ axis, at }: Stretch, along: Mm) =>
  axis === 'x' ? { x: along, y: at } : { x: at, y: along };

/** The name of a stretch, beside the lettering; none where it has no room or where another name is in its way. */
function nameOf({ axis, at, near, far }: Stretch, name: string, taken: Box[]): TextItem[] {
  const long = textWidth(name, NAME);
  if (Math.abs(far - near) < long) return [];
  const start = far > near ? near : near - long;
  const high = NAME_OFF + NAME.size;
  const level = axis === 'x';
  const box = level ? { x: start, y: at, w: long, h: high } : { x: at - high, y: start, w: high, h: long };
  if (taken.some((other) => boxesMeet(other, box))) return [];
  taken.push(box);
  const foot = level ? { x: start, y: at + NAME_OFF } : { x: at - NAME_OFF, y: start };
  return [text(foot, name, { ...NAME, angle: level ? 0 : 90 })];
}
