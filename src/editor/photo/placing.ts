import type { Face } from '../../bed/face.ts';
import type { Box, Point, Quad } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import type { Placing } from '../state/photo.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A new photo covers the height of the face, in the middle; the marks and corners wait within it. */
export function newPlacing(size: Size, face: Pick<Face, 'width' | 'height'>): Placing {
  const scale = face.height / size.height;
  const part = (x: number, y: number) => ({ x: size.width * x, y: size.height * y });
  return {
    at: { x: (face.width - size.width * scale) / 2, y: 0 },
    scale,
    marks: [part(0.25, 0.5), part(0.75, 0.5)],
    quad: [part(0.15, 0.85), part(0.85, 0.85), part(0.85, 0.15), part(0.15, 0.15)],
    straight: false,
  };
}

export const onFace = ({ at, scale }: Placing, size: Size, p: Point): Point => ({
  x: at.x + p.x * scale,
  y: at.y + (size.height - p.y) * scale,
});

/** What the whole picture takes up on the face. */
export const frameOf = ({ at, scale }: Placing, size: Size): Box => ({
  ...at,
  w: size.width * scale,
  h: size.height * scale,
});

export const onPicture = ({ at, scale }: Placing, size: Size, p: Point): Point => ({
  x: (p.x - at.x) / scale,
  y: size.height - (p.y - at.y) / scale,
});

/** Sized so that the two marks are a length apart; the first one stays where it is on the face. */
export function scaledTo(placing: Placing, size: Size, length: Mm): Placing {
  const [a, b] = placing.marks;
  const apart = Math.hypot(b.x - a.x, b.y - a.y);
  if (apart < 1 || length <= 0) return placing;
  const fixed = onFace(placing, size, a);
  const scale = length / apart;
  return { ...placing, scale, at: { x: fixed.x - a.x * scale, y: fixed.y - (size.height - a.y) * scale } };
}

/** Corners of a face in the pixels of a picture of it that is `width` wide, in the order of a quad. */
export const faceQuad = (width: number, height: number): Quad => [
  { x: 0, y: height },
  { x: width, y: height },
  { x: width, y: 0 },
  { x: 0, y: 0 },
];
