import type { KeepClear } from '../../bed/bed.ts';
import type { Appearance } from '../../finish/lit/appearance.ts';
import { SHADE, type ShadowArea } from '../../finish/shadow.ts';
import { boxArea, boxAroundBoth } from '../../geometry/box.ts';
import { boxesMeet, boxOf } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { pick } from '../../list/at.ts';
import { keptBy } from '../../list/keptBy.ts';
import { drawKeepClears } from './drawKeepClears.ts';
import { drawPart, type PartLook } from './drawPart.ts';
import type { Palette } from './palette.ts';
import { drawCut, type Pen, type Picture } from './pen.ts';
import type { DrawnPart } from './sawn.ts';
import { traceRegion } from './trace.ts';

/** What parts look like besides their own shape and place; another object means that all is drawn anew. */
export type PartsLook = Pick<PartLook, 'look' | 'scale' | 'light' | 'lamp' | 'letterOf' | 'imageOf'> & {
  readonly width: number;
  readonly height: number;
  readonly view: { readonly x: number; readonly y: number };
  readonly palette: Palette;
  readonly appearance: (part: LaidPart) => Appearance;
  /** Gleams as a pen paints them. */
  readonly gleamsOn: (ctx: Pen) => PartLook['gleamOf'];
  readonly signOf: (id: string) => PartLook['sign'];
  /** Exact shadows, where they are known; else each part casts its own. */
  readonly shadows: readonly ShadowArea[] | null;
};

/** The pieces of one part that the hand carries, as one picture: of a fill all move at once, and alike. */
export interface Carried {
  readonly picture: Picture;
  /** Where the picture lies, in pixels of the page. */
  readonly box: Box;
  /** Which of the laid parts it shows. */
  readonly first: number;
  readonly count: number;
}

/** Something that lies over the parts and stays where it is while they move. */
export interface Above {
  /** All that it covers, in pixels of the page. */
  readonly box: Box;
  readonly draw: (ctx: Pen, ratio: number) => void;
}

/** What stands on the canvas. */
export interface Painted {
  readonly look: PartsLook;
  readonly parts: readonly DrawnPart[];
  readonly keepClears: readonly KeepClear[];
  /** Pictures that stand for some of the parts. */
  readonly carried: readonly Carried[];
  /** What lies beneath. */
  readonly ground: Picture;
  readonly above: readonly Above[];
}

/** More areas than this, or more parts than this share, are quicker drawn as a whole. */
const MOST_AREAS = 24;
const MOST_SHARE = 0.5;
/** Two areas become one when the room around both is at most so many times theirs: a row does, a row and a column do not. */
const MOST_WASTE = 1.5;

/**
 * Brings the canvas from what stands on it to what is to stand there. Only where parts moved is it cleared and
 * drawn anew, along whole pixels, so that it comes out as if all had been drawn.
 */
export function paintParts(ctx: Pen, now: Painted, before: Painted | null): void {
  const areas = before ? changedAreas(before, now) : null;
  if (areas === null) {
    const { width, height } = now.look;
    drawWithin(ctx, now, { x: 0, y: 0, w: width, h: height }, () => true);
    return;
  }
  const placeOf = screenOf(now.look);
  for (const area of areas) {
    ctx.save();
    ctx.beginPath();
    ctx.rect(area.x, area.y, area.w, area.h);
    ctx.clip();
    drawWithin(ctx, now, area, (i) => boxesMeet(placeOf(pick(now.parts, i)), area));
    ctx.restore();
  }
}

/** @param shows whether the part of a number is among what is drawn */
function drawWithin(ctx: Pen, now: Painted, area: Box, shows: (part: number) => boolean): void {
  clear(ctx, now.ground, area);
  drawAll(ctx, now, shows);
  for (const { box, draw } of now.above) if (boxesMeet(box, area)) draw(ctx, now.ground.ratio);
}

/** What lies beneath, put back over an area. */
function clear(ctx: Pen, ground: Picture, area: Box): void {
  ctx.clearRect(area.x, area.y, area.w, area.h);
  drawCut(ctx, ground, area);
}

function drawAll(
  ctx: Pen,
  { look, parts, keepClears, carried }: Painted,
  shows: (part: number) => boolean,
): void {
  const { view, scale, palette, shadows } = look;
  ctx.save();
  ctx.translate(view.x, view.y);
  ctx.scale(scale, -scale);
  const paint = partPainter(ctx, look);
  let next = 0;
  for (let i = 0; i < parts.length; i++) {
    const picture = carried[next];
    if (picture?.first === i) {
      drawCarried(ctx, picture, look);
      i += picture.count - 1;
      next++;
      continue;
    }
    if (shows(i)) paint(pick(parts, i));
  }
  if (shadows) drawShadows(ctx, shadows);
  drawKeepClears(ctx, keepClears, palette, scale);
  ctx.restore();
}

/** Draws parts on the face as they look. */
export function partPainter(ctx: Pen, look: PartsLook): (part: DrawnPart) => void {
  const gleams = look.gleamsOn(ctx);
  return (part) =>
    drawPart(ctx, {
      part,
      appearance: look.appearance(part),
      look: look.look,
      scale: look.scale,
      tape: look.palette.tape,
      outline: look.palette.outline,
      sign: look.signOf(part.id),
      letterOf: look.letterOf,
      imageOf: look.imageOf,
      gleamOf: gleams,
      light: look.light,
      lamp: look.lamp,
      shadeless: look.shadows !== null,
    });
}

/** Puts a picture where it belongs on the screen, on a pen that draws the face. */
function drawCarried(ctx: Pen, { picture, box }: Carried, { view, scale }: PartsLook): void {
  const { canvas } = picture;
  ctx.save();
  ctx.scale(1 / scale, -1 / scale);
  ctx.translate(-view.x, -view.y);
  ctx.drawImage(canvas, 0, 0, canvas.width, canvas.height, box.x, box.y, box.w, box.h);
  ctx.restore();
}

/** Areas in pixels that have to be drawn anew; null: everything. */
function changedAreas(before: Painted, now: Painted): Box[] | null {
  if (before.look !== now.look || before.ground !== now.ground || before.keepClears !== now.keepClears)
    return null;
  if (before.above !== now.above) return null;
  if (now.look.look === 'tape') return null;
  const [was, is] = [layersOf(before), layersOf(now)];
  const changed = changedLayers(was, is, MOST_SHARE * now.parts.length);
  if (!changed) return null;
  const areas: Box[] = [];
  const onScreen = screenOf(now.look);
  const boxOf = (layer: Layer, { carried, ground }: Painted): Box => {
    const picture = carried.find((one) => one.picture === layer);
    return picture ? picture.box : onPixels(onScreen(layer as DrawnPart), ground.ratio);
  };
  for (const layer of changed.gone) join(areas, boxOf(layer, before));
  for (const layer of changed.come) join(areas, boxOf(layer, now));
  for (const { picture, box } of now.carried) {
    const held = before.carried.find((one) => one.picture === picture)?.box;
    if (!held || (held.x === box.x && held.y === box.y)) continue;
    join(areas, held);
    join(areas, box);
  }
  return areas.length > MOST_AREAS ? null : areas;
}

/** What is drawn over what is before it: a part, or the picture that stands for some. */
type Layer = DrawnPart | Picture;

const layersOf = keptBy(({ parts, carried }: Painted): readonly Layer[] => {
  if (carried.length === 0) return parts;
  const layers: Layer[] = [];
  let next = 0;
  for (const { picture, first, count } of carried) {
    layers.push(...parts.slice(next, first), picture);
    next = first + count;
  }
  return [...layers, ...parts.slice(next)];
});

/**
 * What is gone from a list and what has come to it; what stands elsewhere among the others is both, so that the rest
 * lies over each other as it did. Null where that is more than `most`.
 */
function changedLayers(
  was: readonly Layer[],
  is: readonly Layer[],
  most: number,
): { readonly gone: readonly Layer[]; readonly come: readonly Layer[] } | null {
  const gone: Layer[] = [];
  const come: Layer[] = [];
  const moved = new Set<Layer>();
  const isLeft = lasting(was, is, moved);
  for (let i = 0, k = 0; i < was.length || k < is.length; ) {
    const [a, b] = [was[i], is[k]];
    if (a === b) {
      i++;
      k++;
    } else if (a && b && !isSame(a, b) && isLeft(a) && isLeft(b)) moved.add(was[i + 1] === b ? a : b);
    else {
      const both = a && b && isSame(a, b);
      if (a && (both || !b || !isLeft(a))) {
        gone.push(a);
        i++;
      }
      if (b && (both || !a || !isLeft(b))) {
        come.push(b);
        k++;
      }
    }
    if (gone.length > most || come.length > most) return null;
  }
  return { gone, come };
}

/** One part, as it was and as it is: it can stand nowhere else. */
const isSame = (a: Layer, b: Layer): boolean => 'id' in a && 'id' in b && a.id === b.id;

/** Whether something stands in both lists and has not moved in them; looked up only where it is asked. */
function lasting(
  was: readonly Layer[],
  is: readonly Layer[],
  moved: ReadonlySet<Layer>,
): (one: Layer) => boolean {
  let both: ReadonlySet<Layer> | null = null;
  return (one) => {
    if (both === null) {
      const before = new Set(was);
      both = new Set(is.filter((layer) => before.has(layer)));
    }
    return both.has(one) && !moved.has(one);
  };
}

/** Adds an area, as one with those near it. Areas may overlap: each is drawn whole, so that nothing is lost. */
function join(areas: Box[], added: Box): void {
  let area = added;
  for (let i = 0; i < areas.length; ) {
    const other = areas[i];
    const both = other && boxAroundBoth(area, other);
    if (both && boxArea(both) <= MOST_WASTE * (boxArea(area) + boxArea(other))) {
      area = both;
      areas.splice(i, 1);
      i = 0;
    } else i++;
  }
  areas.push(area);
}

/** Whole pixels of the screen around a box. */
export function onPixels(box: Box, ratio: number): Box {
  const x = Math.floor(box.x * ratio) / ratio;
  const y = Math.floor(box.y * ratio) / ratio;
  const right = Math.ceil((box.x + box.w) * ratio) / ratio;
  const bottom = Math.ceil((box.y + box.h) * ratio) / ratio;
  return { x, y, w: right - x, h: bottom - y };
}

/** Half of the widest outline and what smoothing adds, in pixels. */
const EDGE = 3;

/** Where parts show on the canvas, looked up while they look the same: each frame asks it of all of them. */
export const screenOf = keptBy((look: PartsLook) => keptBy((part: LaidPart) => boxOnScreen(part, look)));

/** Where a part shows on the canvas, its shadow and what is lettered on it too. */
function boxOnScreen(part: LaidPart, look: PartsLook): Box {
  const body = boundsOf(part.region) ?? part.box;
  const sign = look.signOf(part.id);
  let box = body;
  for (const layer of sign?.lettered.layers ?? []) {
    const ink = boundsOf(layer.region);
    if (ink) box = boxAroundBoth(box, { ...ink, x: ink.x + part.box.x, y: ink.y + part.box.y });
  }
  const { scale, view, light } = look;
  const high = Math.max(part.z1 - part.z0, 1.2 / scale);
  const [dx, dy] = [light.x * high, light.y * high];
  const cast = boxAroundBoth(box, { ...box, x: box.x + dx, y: box.y + dy });
  return {
    x: view.x + cast.x * scale - EDGE,
    y: view.y - (cast.y + cast.h) * scale - EDGE,
    w: cast.w * scale + 2 * EDGE,
    h: cast.h * scale + 2 * EDGE,
  };
}

/** Bounds of regions, which a drag asks for again and again. */
const boundsOf = keptBy((region: Region) => boxOf(region));

/** Shadows on what is seen; they lie beside each other, so one tint over all of them is right. */
function drawShadows(ctx: Pen, areas: readonly ShadowArea[]): void {
  ctx.beginPath();
  for (const area of areas) traceRegion(ctx, area.region);
  ctx.fillStyle = SHADE.color;
  ctx.globalAlpha = SHADE.opacity;
  ctx.fill('evenodd');
  ctx.globalAlpha = 1;
}
