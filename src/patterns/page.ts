import type { DrawItem, Drawing, GroupItem } from '../drawing/drawing.ts';
import { layer } from '../drawing/items.ts';
import type { Flat, FlatPath, FlatText } from '../drawing/walk.ts';
import { textCorners } from '../drawing/walk.ts';
import { grownBox, surrounds } from '../geometry/box.ts';
import { boxOfPath, pathOfBox } from '../geometry/path.ts';
import { boxesMeet } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box } from '../geometry/shape.ts';
import { DUST } from '../geometry/tolerance.ts';
import { addTo, type Groups } from '../list/grouped.ts';
import { degrees, type Mm } from '../measure/units.ts';
import { type Joint, jointsOf, shownAround, windowAround } from './cells.ts';
import { keyMapOf, type Plate } from './furniture.ts';
import type { Parting } from './grid.ts';
import { type Ink, inkInside, type WholeInk } from './ink.ts';
import { CLEAR, measures } from './measures.ts';
import { type Occupancy, occupancyOf } from './occupancy.ts';
import { drawSeam, marksOnce, seamsOf, takenBy, UNREADABLE, type Weigh } from './registration.ts';
import type { PatternPage } from './result.ts';
import type { PatternWords } from './words.ts';

/** Half of the heaviest line: ink on the very border of a page is printed at its full weight. */
const BORDER: Mm = 0.25;

/** An item of the pattern with the box it takes up, so that a page can leave out what it does not show. */
export interface Boxed {
  readonly item: DrawItem;
  readonly layer: string | null;
  readonly box: Box;
}

function pathOf(flat: FlatPath): DrawItem {
  const plain: DrawItem = { ...flat.item, path: flat.path, width: flat.width };
  return flat.clips.reduceRight<DrawItem>(
    (inside, clip) => ({ kind: 'group', clip, items: [inside] }),
    plain,
  );
}

function textOf({ item, matrix, clips }: FlatText): DrawItem {
  const size = item.size * Math.hypot(matrix.c, matrix.d);
  const angle = degrees(Math.atan2(matrix.b, matrix.a));
  const plain: DrawItem = { ...item, at: { x: matrix.e, y: matrix.f }, size, angle };
  return clips.reduceRight<DrawItem>((inside, clip) => ({ kind: 'group', clip, items: [inside] }), plain);
}

export function boxedItems(flat: Flat): Boxed[] {
  const paths = flat.paths
    .filter((p) => p.path.length > 0)
    .map((p) => ({ item: pathOf(p), layer: p.layer, box: grownBox(boxOfPath(p.path), p.width / 2) }));
  const texts = flat.texts.map((t) => ({
    item: textOf(t),
    layer: t.layer,
    box: boxOfPoints(textCorners(t)),
  }));
  return [...paths, ...texts];
}

/**
 * What shows in the window, one group a layer, in the pattern's coordinates. Names of guide lines are left out
 * where they do not show whole: the line is named again elsewhere, or known by its dashes.
 */
function patternIn(shownBox: Box, boxed: readonly Boxed[]): DrawItem[] {
  const layers: Groups<string | null, DrawItem> = new Map();
  for (const { item, layer: name, box } of boxed) {
    if (!boxesMeet(box, shownBox)) continue;
    if (item.kind === 'text' && name === 'guides' && !surrounds(shownBox, box)) continue;
    addTo(layers, name, item);
  }
  return [...layers].map(([name, items]) => (name === null ? { kind: 'group', items } : layer(name, items)));
}

/** Narrow boxes along the trim lines: nothing may stand across them. */
function trimBoxes(joints: readonly Joint[]): Box[] {
  return joints.map(({ side, at, from, to }) =>
    side === 'left' || side === 'right'
      ? { x: at - 1, y: from, w: 2, h: to - from }
      : { x: from, y: at - 1, w: to - from, h: 2 },
  );
}

export interface PageWords {
  readonly title: string;
  readonly numbered?: { readonly page: number; readonly of: number } | undefined;
  readonly note: string;
  readonly design: string;
  readonly unit: 'in' | 'mm';
  readonly terms: PatternWords;
  /** Place in the pattern, told as a person measures. */
  place(x: Mm, y: Mm): string;
}

/** Whether lines beside what pages are made for stand where there is no page. */
function isBare({ cells }: Parting, { box, ink }: { readonly box: Box; readonly ink: Ink }): boolean {
  if (ink.besides.length === 0) return false;
  const covered = cells.reduce((sum, cell) => sum + cell.box.w * cell.box.h, 0);
  return covered < box.w * box.h * (1 - DUST);
}

/** Squares that the pattern is weighed by at most along its longer side. */
const MOST_SQUARES = 1000;

/** What stands in the way of marks and names: lines by their weight, and texts above all. Pages that join none ask nothing. */
function weighing(whole: Box, ink: Ink): Weigh {
  let lines: Occupancy | null = null;
  return (box) => {
    lines ??= occupancyOf(whole, ink, [], Math.max(2, Math.max(whole.w, whole.h) / MOST_SQUARES));
    return lines.count(box) + (ink.texts.some((t) => boxesMeet(t, box)) ? UNREADABLE : 0);
  };
}

/** The pages of a parting, each drawn with what belongs to it. */
export function pagesOf(
  parting: Parting,
  pattern: { readonly box: Box; readonly ink: WholeInk; readonly boxed: readonly Boxed[] },
  words: PageWords,
): PatternPage[] {
  const { sheet, cells } = parting;
  const weigh = weighing(pattern.box, pattern.ink);
  const marks = marksOnce(weigh);
  const bare = isBare(parting, pattern);
  const keyMap = keyMapOf(pattern.box, cells, words.unit);
  return cells.map((cell, i) => {
    const shown = shownAround(cell, parting.box, sheet);
    const shownBox = windowAround(shown, sheet);
    const joints = jointsOf(cell, cells);
    const number = words.numbered ?? { page: i + 1, of: cells.length };
    const plate: Plate = {
      cell,
      keyMap,
      title: words.title,
      note: words.note,
      design: words.design,
      place: words.place(cell.box.x, cell.box.y),
      bare,
      ...number,
      unit: words.unit,
      terms: words.terms,
    };
    const seams = seamsOf(joints, (other) => words.terms.joins(`${cells.indexOf(other) + 1}`), weigh, marks);
    const joined = [...seams.flatMap(takenBy), ...trimBoxes(joints)];
    const inside = inkInside(pattern.ink, shown);
    const taken = occupancyOf(shownBox, inside, joined, 2);
    const own = [roomInside(shownBox, cell.box, joints), grownBox(shownBox, -CLEAR)];
    const beyond = roomsBeyond(shownBox, shown);
    const content: GroupItem = {
      kind: 'group',
      scale: sheet.scale,
      move: { x: sheet.margin.left, y: sheet.margin.bottom },
      items: [
        {
          kind: 'group',
          move: { x: -shownBox.x, y: -shownBox.y },
          clip: pathOfBox(grownBox(shownBox, BORDER)),
          items: [
            {
              kind: 'group',
              clip: pathOfBox(grownBox(shown, BORDER)),
              items: patternIn(grownBox(shown, BORDER), pattern.boxed),
            },
            layer('page', [...seams.flatMap(drawSeam), ...measures(plate, own, beyond, taken)]),
          ],
        },
      ],
    };
    const drawing: Drawing = {
      width: sheet.width,
      height: sheet.height,
      title: `${words.title}: ${words.terms.pageOf(number.page, number.of)}`,
      items: [content],
    };
    return {
      name: `${number.page}`,
      row: cell.row,
      column: cell.column,
      cell: cell.box,
      window: shownBox,
      drawing,
    };
  });
}

/** The cell where the page is joined, else up to the page's border. */
function roomInside(shownBox: Box, cell: Box, joints: readonly Joint[]): Box {
  const joined = (side: Joint['side']) => joints.some((joint) => joint.side === side);
  const left = joined('left') ? cell.x : shownBox.x;
  const right = joined('right') ? cell.x + cell.w : shownBox.x + shownBox.w;
  const bottom = joined('bottom') ? cell.y : shownBox.y;
  const top = joined('top') ? cell.y + cell.h : shownBox.y + shownBox.h;
  return grownBox({ x: left, y: bottom, w: right - left, h: top - bottom }, -CLEAR);
}

/** Paper that shows nothing of the pattern: beside it and below it, up to the page's border. */
function roomsBeyond(page: Box, shown: Box): Box[] {
  const right = { ...page, x: shown.x + shown.w, w: page.x + page.w - shown.x - shown.w };
  const below = { ...page, h: shown.y - page.y };
  return [below, right].map((room) => grownBox(room, -CLEAR));
}
