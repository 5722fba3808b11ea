import type { Point } from '../../geometry/shape.ts';

let element: HTMLElement | null = null;

/** The canvas element, for drags that begin elsewhere and end on it. */
export function holdCanvas(canvas: HTMLElement | null): void {
  element = canvas;
}

export const canvasElement = (): HTMLElement | null => element;

/** Where a pointer is, in pixels from the upper left of the canvas; it may be beside it. */
export function onCanvas(client: { readonly clientX: number; readonly clientY: number }): Point {
  const rect = element?.getBoundingClientRect();
  return { x: client.clientX - (rect?.left ?? 0), y: client.clientY - (rect?.top ?? 0) };
}

export function isOnCanvas(px: Point): boolean {
  const rect = element?.getBoundingClientRect();
  return rect !== undefined && px.x >= 0 && px.y >= 0 && px.x <= rect.width && px.y <= rect.height;
}
