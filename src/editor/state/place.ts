import type { Point } from '../../geometry/shape.ts';
import type { Shown } from './fit.ts';

/** Where a pointer is, in pixels from the upper left of the canvas; it may be beside it. */
export function onCanvas(
  canvas: HTMLElement | null,
  client: { readonly clientX: number; readonly clientY: number },
): Point {
  const rect = canvas?.getBoundingClientRect();
  return { x: client.clientX - (rect?.left ?? 0), y: client.clientY - (rect?.top ?? 0) };
}

/** The size of a canvas, and what lies over it and stays there, such as the tools; in its pixels. */
export function shownOn(canvas: HTMLElement): Shown {
  const at = canvas.getBoundingClientRect();
  const trays = canvas.parentElement?.querySelectorAll('.tray') ?? [];
  const covers = [...trays].flatMap((tray) => {
    const { x, y, width, height } = tray.getBoundingClientRect();
    return width > 0 ? [{ x: x - at.x, y: y - at.y, w: width, h: height }] : [];
  });
  return { width: canvas.clientWidth, height: canvas.clientHeight, covers };
}

export function isOnCanvas(canvas: HTMLElement | null, px: Point): boolean {
  const rect = canvas?.getBoundingClientRect();
  return rect !== undefined && px.x >= 0 && px.y >= 0 && px.x <= rect.width && px.y <= rect.height;
}
