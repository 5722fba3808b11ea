import type { Face, Level } from '../../bed/face.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';
import { traceRegion } from './trace.ts';

/** The bare face: each level a tone deeper, with the step down to it shaded as light from the upper left leaves it. */
export function drawFaceLevels(ctx: Pen, face: Face, palette: Palette, scale: number): void {
  for (const level of face.levels) drawLevel(ctx, level, palette, scale);
  drawCorners(ctx, face, palette, scale);
}

function drawLevel(ctx: Pen, level: Level, palette: Palette, scale: number): void {
  const px = 1 / scale;
  ctx.beginPath();
  traceRegion(ctx, level.region);
  ctx.fillStyle = palette[level.id];
  ctx.fill('evenodd');
  ctx.save();
  ctx.clip('evenodd');
  grain(ctx, level, palette, px);
  if (level.z < 0) stepShade(ctx, level, palette, Math.min(14, 4 + Math.abs(level.z) * 0.12) * px);
  ctx.restore();
  ctx.beginPath();
  traceRegion(ctx, level.region);
  ctx.lineWidth = 1.25 * px;
  ctx.strokeStyle = palette.outline;
  ctx.globalAlpha = 0.75;
  ctx.stroke();
  ctx.globalAlpha = 1;
}

/** Long thin strokes along the sheet; placed by a fixed pattern, so that the drawing never flickers. */
function grain(ctx: Pen, level: Level, palette: Palette, px: number): void {
  const { x, y, w, h } = level.box;
  ctx.strokeStyle = palette.grain;
  ctx.globalAlpha = 0.14;
  ctx.lineWidth = px;
  ctx.beginPath();
  const step = 46;
  for (let i = 0; i * step < w; i++) {
    const at = x + i * step + ((i * 29) % 31);
    const from = y + (((i * 137) % 89) / 100) * h * 0.5;
    ctx.moveTo(at, from);
    ctx.bezierCurveTo(at + 9, from + h * 0.2, at - 7, from + h * 0.35, at + 3, from + h * 0.55);
  }
  ctx.stroke();
  ctx.globalAlpha = 1;
}

function stepShade(ctx: Pen, level: Level, palette: Palette, depth: number): void {
  const { x, y, w, h } = level.box;
  ctx.fillStyle = palette.cast;
  for (let i = 1; i <= 3; i++) {
    ctx.globalAlpha = 0.1;
    const d = (depth * i) / 3;
    ctx.fillRect(x, y + h - d, w, d);
    ctx.fillRect(x, y, d * 0.7, h - d);
  }
  ctx.globalAlpha = 1;
}

/** Where the rim's boards meet, as the corner laps have them. */
function drawCorners(ctx: Pen, face: Face, palette: Palette, scale: number): void {
  const rim = face.levels.find((l) => l.id === 'rim');
  if (!rim?.inner) return;
  const { box, inner } = rim;
  const rail = face.boards.find((b) => b.name === 'side rail');
  const upright = face.height >= face.width;
  const sidesRun = rail !== undefined && Math.abs(rail.length - Math.max(face.width, face.height)) < 1;
  const vertical = upright === sidesRun;
  ctx.strokeStyle = palette.outline;
  ctx.globalAlpha = 0.6;
  ctx.lineWidth = 1 / scale;
  ctx.beginPath();
  if (vertical) {
    for (const x of [inner.x, inner.x + inner.w]) {
      ctx.moveTo(x, box.y);
      ctx.lineTo(x, inner.y);
      ctx.moveTo(x, inner.y + inner.h);
      ctx.lineTo(x, box.y + box.h);
    }
  } else {
    for (const y of [inner.y, inner.y + inner.h]) {
      ctx.moveTo(box.x, y);
      ctx.lineTo(inner.x, y);
      ctx.moveTo(inner.x + inner.w, y);
      ctx.lineTo(box.x + box.w, y);
    }
  }
  ctx.stroke();
  ctx.globalAlpha = 1;
}
