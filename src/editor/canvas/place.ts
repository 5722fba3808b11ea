import type { Point } from '../../geometry/shape.ts';

let element: HTMLElement | null = null;

/** The canvas element, for drags that begin elsewhere and end on it. */
export function holdCanvas(canvas: HTMLElement | null): void {
  element = canvas;
}

export const canvasElement = (): HTMLElement | null => element;

/** Pixel on the canvas under a pointer; null beside it. */
export function onCanvas(client: { readonly clientX: number; readonly clientY: number }): Point | null {
  const rect = element?.getBoundingClientRect();
  if (!rect) return null;
  const p = { x: client.clientX - rect.left, y: client.clientY - rect.top };
  return p.x >= 0 && p.y >= 0 && p.x <= rect.width && p.y <= rect.height ? p : null;
}
