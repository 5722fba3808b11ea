import { midpoint } from '../../geometry/point.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Guide } from '../document/guide.ts';
import { type EditorState, toScreen, type View } from '../state/store.ts';
import { drawPlates } from './figure.ts';
import { strokeHaloed } from './haloed.ts';
import { CLEAR, type Handle } from './handles.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';
import type { Scene } from './scene.ts';
import { traceRegion } from './trace.ts';

interface InHand
  extends Pick<Scene, 'outlined' | 'boxes' | 'handles' | 'way' | 'around'>,
    Pick<EditorState, 'path' | 'frame'> {
  readonly view: View;
  readonly palette: Palette;
  readonly guides: readonly Guide[];
}

/** What is in hand: selection, handles, guides. Drawn in pixels, over everything. */
export function drawInHand(ctx: Pen, hand: InHand): void {
  const { view, palette } = hand;
  ctx.lineJoin = 'round';
  outline(ctx, hand.outlined, view, palette);
  const around = (box: Box, out: number, line: { readonly width: number; readonly dash?: number[] }) => {
    const a = toScreen(view, { x: box.x, y: box.y + box.h });
    ctx.beginPath();
    ctx.rect(a.x - out, a.y - out, box.w * view.scale + 2 * out, box.h * view.scale + 2 * out);
    strokeHaloed(ctx, palette, { color: palette.over, ...line });
  };
  for (const box of hand.boxes) around(box, 3, { width: 1.5, dash: [5, 4] });
  if (hand.around) around(hand.around, CLEAR, { width: 1 });
  for (const guide of hand.guides) drawGuide(ctx, guide, view, palette);
  if (hand.way.length > 0) {
    ctx.beginPath();
    hand.way.forEach((p, i) => {
      const { x, y } = toScreen(view, p);
      if (i === 0) ctx.moveTo(x, y);
      else ctx.lineTo(x, y);
    });
    strokeHaloed(ctx, palette, { color: palette.over, width: 1.5 });
  }
  if (hand.path.length > 0) drawPath(ctx, hand.path, view, palette);
  for (const handle of hand.handles) drawHandle(ctx, handle, palette);
  if (hand.frame) {
    const a = toScreen(view, hand.frame.from);
    const b = toScreen(view, hand.frame.to);
    ctx.beginPath();
    ctx.rect(a.x, a.y, b.x - a.x, b.y - a.y);
    ctx.fillStyle = palette.over;
    ctx.globalAlpha = 0.12;
    ctx.fill();
    ctx.globalAlpha = 1;
    // Pulled to the left it takes what it touches.
    const dash = b.x < a.x ? [6, 4] : [];
    strokeHaloed(ctx, palette, { color: palette.over, width: 1.5, dash });
  }
}

/** All of them by one line: the halo of none lies over another's line. */
function outline(ctx: Pen, regions: readonly Region[], view: View, palette: Palette): void {
  if (regions.length === 0) return;
  ctx.save();
  ctx.translate(view.x, view.y);
  ctx.scale(view.scale, -view.scale);
  ctx.beginPath();
  for (const region of regions) traceRegion(ctx, region);
  ctx.restore();
  strokeHaloed(ctx, palette, { color: palette.over, width: 2 });
}

/** Half of the diamond by which a side is bowed, in pixels. */
const BOW = 6;

/** The filling of a handle is the halo of its line. */
function drawHandle(ctx: Pen, handle: Handle, palette: Palette): void {
  const { x, y } = handle.px;
  ctx.fillStyle = palette.halo;
  ctx.strokeStyle = palette.over;
  ctx.lineWidth = 2;
  ctx.beginPath();
  if (handle.act.kind === 'turn') {
    ctx.arc(x, y, 6, 0, Math.PI * 2);
    ctx.fill();
    ctx.stroke();
    ctx.beginPath();
    ctx.arc(x, y, 10, -0.9, 0.9);
    strokeHaloed(ctx, palette, { color: palette.over, width: 2 });
    return;
  }
  if (handle.act.kind === 'corner') {
    ctx.arc(x, y, 5.5, 0, Math.PI * 2);
    ctx.fill();
    strokeHaloed(ctx, palette, { color: palette.over, width: 2 });
    if (!handle.act.chosen) return;
    ctx.fillStyle = palette.over;
    ctx.fill();
    return;
  }
  if (handle.act.kind === 'bow') {
    ctx.moveTo(x - BOW, y);
    ctx.lineTo(x, y - BOW);
    ctx.lineTo(x + BOW, y);
    ctx.lineTo(x, y + BOW);
    ctx.closePath();
    ctx.fill();
    strokeHaloed(ctx, palette, { color: palette.over, width: 2 });
    return;
  }
  if (handle.act.kind === 'bend') {
    ctx.moveTo(handle.act.at.x, handle.act.at.y);
    ctx.lineTo(x, y);
    strokeHaloed(ctx, palette, { color: palette.over, width: 1 });
    ctx.beginPath();
    ctx.arc(x, y, 4, 0, Math.PI * 2);
    ctx.fill();
    strokeHaloed(ctx, palette, { color: palette.over, width: 1.5 });
    return;
  }
  if (handle.act.kind === 'middle') {
    ctx.arc(x, y, 6.5, 0, Math.PI * 2);
    ctx.fill();
    ctx.lineWidth = 1;
    ctx.stroke();
    ctx.beginPath();
    ctx.moveTo(x - 3.5, y);
    ctx.lineTo(x + 3.5, y);
    ctx.moveTo(x, y - 3.5);
    ctx.lineTo(x, y + 3.5);
    strokeHaloed(ctx, palette, { color: palette.over, width: 1.5 });
    return;
  }
  ctx.rect(x - 4.5, y - 4.5, 9, 9);
  ctx.fill();
  ctx.stroke();
}

function drawPath(ctx: Pen, path: readonly Point[], view: View, palette: Palette): void {
  const at = path.map((p) => toScreen(view, p));
  ctx.beginPath();
  at.forEach((p, i) => {
    if (i === 0) ctx.moveTo(p.x, p.y);
    else ctx.lineTo(p.x, p.y);
  });
  strokeHaloed(ctx, palette, { color: palette.over, width: 1.5 });
  at.forEach((px, index) => {
    drawHandle(ctx, { px, act: { kind: 'corner', index, chosen: index > 0 }, cursor: '' }, palette);
  });
}

function drawGuide(ctx: Pen, guide: Guide, view: View, palette: Palette): void {
  const line = { color: palette.over, width: 1.25 };
  const point = (along: number, cross: number) =>
    toScreen(view, guide.axis === 'x' ? { x: along, y: cross } : { x: cross, y: along });
  ctx.beginPath();
  if (guide.kind === 'line') {
    const a = point(guide.at, guide.from);
    const b = point(guide.at, guide.to);
    ctx.moveTo(a.x, a.y);
    ctx.lineTo(b.x, b.y);
    strokeHaloed(ctx, palette, { ...line, dash: [7, 4] });
    return;
  }
  const a = point(guide.from, guide.cross);
  const b = point(guide.to, guide.cross);
  ctx.moveTo(a.x, a.y);
  ctx.lineTo(b.x, b.y);
  for (const p of [a, b]) {
    ctx.moveTo(p.x - 4, p.y + 4);
    ctx.lineTo(p.x + 4, p.y - 4);
  }
  strokeHaloed(ctx, palette, line);
  const look = { size: 13, fill: palette.over, ink: palette.halo, halo: palette.halo };
  drawPlates(ctx, [{ text: guide.label, ...look, at: midpoint(a, b), anchor: 'middle' }]);
}
