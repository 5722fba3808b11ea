import type { Point, Region } from '../../geometry/shape.ts';
import type { LaidPart, Leg } from '../../layout/laid.ts';
import type { SignPlan } from '../../plan/types.ts';
import type { Look } from '../state/store.ts';
import { inkOn } from './partLook.ts';
import { traceRegion } from './trace.ts';

export interface PartLook {
  readonly part: LaidPart;
  readonly fill: string;
  /** Molding: shaped in section, so lines run along it. */
  readonly shaped: boolean;
  readonly look: Look;
  readonly scale: number;
  readonly tape: string;
  readonly outline: string;
  readonly sign: SignPlan | undefined;
  readonly colorOf: (finish: string) => string;
  /** Direction and length of the shadow for each millimeter of height. */
  readonly light: Point;
  /** Shadows are drawn by themselves. */
  readonly shadeless: boolean;
}

/** One laid part, drawn from the plan's figures only. */
export function drawPart(ctx: CanvasRenderingContext2D, props: PartLook): void {
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
  if (part.kind !== 'painted' && !props.shadeless) castShadow(ctx, props);
  const outline = outlineOf(part.region);
  ctx.fillStyle = props.fill;
  ctx.fill(outline, 'evenodd');
  if (part.kind !== 'painted') {
    ctx.lineWidth = 1.1 * px;
    ctx.strokeStyle = props.outline;
    ctx.globalAlpha = 0.85;
    ctx.stroke(outline);
    ctx.globalAlpha = 1;
  }
  const line = inkOn(props.fill);
  ctx.strokeStyle = line;
  ctx.lineWidth = px;
  ctx.globalAlpha = 0.4;
  if (props.shaped) {
    for (const leg of legsOf(part)) profileLines(ctx, leg);
  }
  if (part.kind === 'run') cornerLines(ctx, part.region, part.legs[0]?.width ?? 0);
  ctx.globalAlpha = 1;
  if (props.sign) drawLettering(ctx, part, props.sign, props.colorOf);
}

/** Outlines as the canvas keeps them: a drag draws every part again and moves few. */
const outlines = new WeakMap<Region, Path2D>();

function outlineOf(region: Region): Path2D {
  let path = outlines.get(region);
  if (!path) {
    path = new Path2D();
    traceRegion(path, region);
    outlines.set(region, path);
  }
  return path;
}

function castShadow(ctx: CanvasRenderingContext2D, { part, light, look, scale }: PartLook): void {
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
      traceRegion(ctx as never, part.region, light.x * d, light.y * d);
    }
    ctx.fill('nonzero');
  }
  ctx.globalAlpha = 1;
}

const legsOf = (part: LaidPart): readonly Leg[] =>
  part.kind === 'strip' ? [part.leg] : part.kind === 'run' ? part.legs : [];

/** Lines along a molding, as its profile catches the light. */
function profileLines(ctx: CanvasRenderingContext2D, leg: Leg): void {
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

/** The joint at each corner of a closed run: from its outer corner to the nearest inner one. */
function cornerLines(ctx: CanvasRenderingContext2D, region: Region, width: number): void {
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

function drawLettering(
  ctx: CanvasRenderingContext2D,
  part: LaidPart,
  sign: SignPlan,
  colorOf: (finish: string) => string,
): void {
  ctx.save();
  ctx.translate(part.box.x, part.box.y);
  for (const layer of sign.lettered.layers) {
    ctx.beginPath();
    traceRegion(ctx as never, layer.region);
    ctx.fillStyle = colorOf(layer.finish);
    ctx.fill('evenodd');
  }
  ctx.restore();
}
