import { isLettersAlone, isPaint } from '../../design/made.ts';
import type { Design, Finish } from '../../design/schema.ts';
import { type Appearance, inkOn } from '../../finish/lit/appearance.ts';
import { arrisesOf, EASED } from '../../finish/lit/arris.ts';
import { grainOf } from '../../finish/lit/grain.ts';
import { litColor } from '../../finish/lit/lambert.ts';
import { bandsOf } from '../../finish/lit/molding.ts';
import { pathOfRings } from '../../geometry/path.ts';
import type { Point, Region } from '../../geometry/shape.ts';
import type { MoldedLength } from '../../joinery/piece.ts';
import { groovesOf, type LaidPart, type Leg, legsOf, reliefOf, type SawnArcs } from '../../layout/laid.ts';
import type { PlacedPhoto } from '../../lettering/photo/placed.ts';
import { pick } from '../../list/at.ts';
import { keptBy } from '../../list/keptBy.ts';
import type { ShapedStock } from '../../materials/types.ts';
import { radians } from '../../measure/units.ts';
import type { LetterColor } from '../planning/letterPictures.ts';
import type { Look } from '../state/store.ts';
import type { Pen } from './pen.ts';
import type { DrawnPart } from './sawn.ts';
import { tracedPath, traceRegion } from './trace.ts';

/** A color of lettering as it looks on its sign. */
export interface Lettered {
  readonly fill: string;
  readonly sheen: Finish['sheen'] | null;
}

export interface PartLook {
  readonly part: DrawnPart;
  readonly appearance: Appearance;
  readonly look: Look;
  readonly scale: number;
  readonly tape: string;
  readonly outline: string;
  /** The lettering on it. */
  readonly sign:
    | {
        readonly lettered: { readonly layers: readonly LetterColor[] };
        readonly photos?: readonly PlacedPhoto[] | undefined;
        readonly printed?: boolean | undefined;
      }
    | undefined;
  /** The photo of an id, where it is decoded. */
  readonly imageOf: (photo: string) => CanvasImageSource | undefined;
  readonly letterOf: (sign: string, finish: string) => Lettered;
  readonly gleamOf: (sheen: Finish['sheen'] | null) => CanvasGradient | null;
  /** Direction and length of the shadow for each millimeter of height. */
  readonly light: Point;
  readonly lamp: Design['light'];
  /** Shadows are drawn by themselves. */
  readonly shadeless: boolean;
}

/** One laid part, drawn from the plan's figures only. */
export function drawPart(ctx: Pen, props: PartLook): void {
  const { part, look, scale } = props;
  const px = 1 / scale;
  if (look === 'tape') {
    const outline = outlineOf(part.region);
    ctx.lineJoin = 'miter';
    ctx.strokeStyle = props.outline;
    ctx.lineWidth = Math.max(6 * px, 19) + 1.5 * px;
    ctx.stroke(outline);
    ctx.strokeStyle = props.tape;
    ctx.lineWidth = Math.max(6 * px, 19);
    ctx.stroke(outline);
    return;
  }
  if (!isPaint(part) && !props.shadeless) castShadow(ctx, props);
  // A print has its paper, bare as it may be.
  if (isLettersAlone(part) && !props.sign?.printed) {
    if (props.sign) drawLettering(ctx, props, props.sign);
    return;
  }
  const outline = outlineOf(part.region);
  const { fill, sheen, grained, molding } = props.appearance;
  const line = inkOn(fill);
  ctx.fillStyle = fill;
  ctx.fill(outline, 'evenodd');
  if (molding && part.lengths) for (const length of part.lengths) drawBands(ctx, length, molding, props);
  if (grained) drawGrain(ctx, part, outline, line, px);
  if (look === 'shadow' && !molding && !isPaint(part)) drawArrises(ctx, part.region, props);
  shine(ctx, outline, props.gleamOf(sheen));
  if (!isPaint(part)) {
    ctx.lineWidth = (look === 'shadow' ? 0.7 : 1.1) * px;
    ctx.strokeStyle = props.outline;
    ctx.globalAlpha = 0.85;
    ctx.stroke(outline);
    ctx.globalAlpha = 1;
  }
  ctx.strokeStyle = line;
  ctx.lineWidth = px;
  ctx.globalAlpha = 0.4;
  if (molding && !part.lengths) for (const leg of legsOf(part)) profileLines(ctx, leg);
  const grooves = groovesOf(reliefOf(part));
  if (grooves.length > 0) {
    ctx.fillStyle = line;
    ctx.fill(outlineOf(grooves), 'evenodd');
  }
  if (part.pieces) ctx.stroke(outlineOf(part.pieces));
  else if (part.kind === 'run' && part.sawn) arcLines(ctx, part.sawn, part.legs);
  else if (part.kind === 'run') cornerLines(ctx, part.region, part.legs[0]?.width ?? 0);
  ctx.globalAlpha = 1;
  if (props.sign) drawLettering(ctx, props, props.sign);
}

const grainPath = keptBy((part: LaidPart): Path2D => tracedPath(grainOf(part)));

/** Strokes along the wood, where it shows. */
function drawGrain(ctx: Pen, part: LaidPart, outline: Path2D, line: string, px: number): void {
  ctx.save();
  ctx.clip(outline, 'evenodd');
  ctx.strokeStyle = line;
  ctx.lineWidth = px;
  ctx.globalAlpha = 0.16;
  ctx.stroke(grainPath(part));
  ctx.restore();
}

function shine(ctx: Pen, outline: Path2D, gleam: CanvasGradient | null): void {
  if (!gleam) return;
  ctx.fillStyle = gleam;
  ctx.fill(outline, 'evenodd');
}

/** Outlines as the canvas keeps them: a drag draws every part again and moves few. */
const outlineOf = keptBy((region: Region): Path2D => {
  const path = new Path2D();
  traceRegion(path, region);
  return path;
});

function castShadow(ctx: Pen, { part, light, look, scale }: PartLook): void {
  const height = part.z1 - part.z0;
  if (height <= 0) return;
  const steps = look === 'shadow' ? 6 : 1;
  const least = 1.2 / scale;
  const reach = look === 'shadow' ? 1 : 0.35;
  ctx.fillStyle = '#120c03';
  ctx.globalAlpha = look === 'shadow' ? 0.42 : 0.28;
  if (steps === 1) {
    const d = Math.max(height * reach, least);
    ctx.translate(light.x * d, light.y * d);
    ctx.fill(outlineOf(part.region), 'nonzero');
    ctx.translate(-light.x * d, -light.y * d);
  } else {
    ctx.beginPath();
    for (let i = 1; i <= steps; i++) {
      const d = Math.max((height * reach * i) / steps, least);
      traceRegion(ctx, part.region, light.x * d, light.y * d);
    }
    ctx.fill('nonzero');
  }
  ctx.globalAlpha = 1;
}

const bandsKept = keptBy((length: MoldedLength) =>
  keptBy((stock: ShapedStock) =>
    bandsOf(length, stock).map(({ ring, normal }) => ({ normal, path: tracedPath(pathOfRings([ring])) })),
  ),
);

/** A length of molding, each flat of it as the light meets it. */
function drawBands(ctx: Pen, length: MoldedLength, stock: ShapedStock, { appearance, lamp }: PartLook): void {
  ctx.save();
  ctx.clip(outlineOf(length.region), 'evenodd');
  for (const { path, normal } of bandsKept(length)(stock)) {
    ctx.fillStyle = litColor(appearance.fill, normal, lamp);
    ctx.fill(path);
  }
  ctx.restore();
}

const arrisesKept = keptBy((region: Region) =>
  arrisesOf(region).map(({ normal, path }) => ({ normal, path: tracedPath(path) })),
);

/** The eased edges of a part. */
function drawArrises(ctx: Pen, region: Region, { appearance, lamp }: PartLook): void {
  ctx.save();
  ctx.clip(outlineOf(region), 'evenodd');
  ctx.lineWidth = 2 * EASED;
  for (const { path, normal } of arrisesKept(region)) {
    ctx.strokeStyle = litColor(appearance.fill, normal, lamp);
    ctx.stroke(path);
  }
  ctx.restore();
}

/** Lines along a molding that is carried, before it is known how its ends are cut. */
function profileLines(ctx: Pen, leg: Leg): void {
  const length = Math.hypot(leg.end.x - leg.start.x, leg.end.y - leg.start.y) || 1;
  const nx = -(leg.end.y - leg.start.y) / length;
  const ny = (leg.end.x - leg.start.x) / length;
  ctx.beginPath();
  for (const share of [-0.26, 0.2, 0.34]) {
    const d = leg.width * share;
    ctx.moveTo(leg.start.x + nx * d, leg.start.y + ny * d);
    ctx.lineTo(leg.end.x + nx * d, leg.end.y + ny * d);
  }
  ctx.stroke();
}

/** The joints of arcs sawn apart, and those where two straight lengths meet. */
function arcLines(ctx: Pen, { arcs }: SawnArcs, legs: readonly Leg[]): void {
  ctx.beginPath();
  for (const [first, ...more] of arcs.flatMap(({ pieces }) => pieces)) {
    if (!first) continue;
    ctx.moveTo(first.x, first.y);
    for (const p of more) ctx.lineTo(p.x, p.y);
    ctx.closePath();
  }
  legs.slice(1).forEach(({ start, stops, angle, width }, i) => {
    if (stops?.start) return;
    // A miter lies along the middle of both ways, the wider out the sharper it is.
    const off = angle - pick(legs, i).angle;
    const turn = radians(off - 360 * Math.round(off / 360)) / 2;
    const half = width / 2 / Math.cos(turn);
    const across = radians(angle + 90) - turn;
    const [x, y] = [Math.cos(across) * half, Math.sin(across) * half];
    ctx.moveTo(start.x - x, start.y - y);
    ctx.lineTo(start.x + x, start.y + y);
  });
  ctx.stroke();
}

/** The joint at each corner of a closed run: from its outer corner to the nearest inner one. */
function cornerLines(ctx: Pen, region: Region, width: number): void {
  ctx.beginPath();
  for (const polygon of region) {
    for (const inner of polygon.holes.flat()) {
      const outer = nearest(polygon.outer, inner);
      if (!outer || Math.hypot(outer.x - inner.x, outer.y - inner.y) > width * 3) continue;
      ctx.moveTo(inner.x, inner.y);
      ctx.lineTo(outer.x, outer.y);
    }
  }
  ctx.stroke();
}

function nearest(ring: readonly Point[], p: Point): Point | undefined {
  let best: Point | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const q of ring) {
    const d = Math.hypot(q.x - p.x, q.y - p.y);
    if (d < least) {
      least = d;
      best = q;
    }
  }
  return best;
}

/** Photos on the paper of a print, as far as it goes. */
function drawPhotos(ctx: Pen, { part, imageOf }: PartLook, photos: readonly PlacedPhoto[]): void {
  const { x, y } = part.box;
  for (const { photo, frame, shown } of photos) {
    const image = imageOf(photo.id);
    if (!image) continue;
    ctx.save();
    ctx.clip(outlineOf(part.region), 'evenodd');
    ctx.beginPath();
    ctx.rect(x + shown.x, y + shown.y, shown.w, shown.h);
    ctx.clip();
    // The face counts up, pictures count down.
    ctx.translate(x + frame.x, y + frame.y + frame.h);
    ctx.scale(1, -1);
    ctx.imageSmoothingQuality = 'high';
    ctx.drawImage(image, 0, 0, frame.w, frame.h);
    ctx.restore();
  }
}

function drawLettering(ctx: Pen, props: PartLook, sign: NonNullable<PartLook['sign']>): void {
  const { part, letterOf, gleamOf } = props;
  const { x, y } = part.box;
  if (sign.photos) drawPhotos(ctx, props, sign.photos);
  for (const layer of sign.lettered.layers) {
    const { fill, sheen } = letterOf(part.id, layer.finish);
    ctx.beginPath();
    // Placed point by point: a gleam lies over the whole face, and would move with a moved canvas.
    traceRegion(ctx, layer.region, x, y);
    ctx.fillStyle = fill;
    ctx.fill('evenodd');
    const gleam = gleamOf(sheen);
    if (!gleam) continue;
    ctx.fillStyle = gleam;
    ctx.fill('evenodd');
  }
}
