type Vector = readonly [number, number, number];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const rad = (deg: number): number => (deg * Math.PI) / 180;
const deg = (r: number): number => (r * 180) / Math.PI;

/**
 * The joint as it stands in space. The board runs along x to the corner at the origin; its width rises from
 * the horizontal by `slope`, toward the inside of the corner. The joint plane is upright and halves the
 * corner. Its trace on the board's face, against square across, is the miter; how far the plane leans off the
 * face's normal is the bevel.
 */
export function inSpace(slope: number, corner: number): { miter: number; bevel: number } {
  const across: Vector = [0, Math.cos(rad(slope)), Math.sin(rad(slope))];
  const normal: Vector = [0, -Math.sin(rad(slope)), Math.cos(rad(slope))];
  const halving: Vector = [-Math.cos(rad(corner / 2)), Math.sin(rad(corner / 2)), 0];
  const plane = cross(halving, [0, 0, 1]);
  const trace = cross(plane, normal);
  const along = trace[0];
  const up = dot(trace, across);
  return {
    miter: deg(Math.atan2(Math.abs(along), Math.abs(up))) * Math.sign(-along * up),
    bevel: deg(Math.asin(-dot(plane, normal))),
  };
}
