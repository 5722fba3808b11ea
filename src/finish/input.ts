import type { Face } from '../bed/face.ts';
import type { Design } from '../design/schema.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import type { Solid } from '../joinery/piece.ts';
import type { PaintedLayer } from '../lettering/painted.ts';
import type { LetterLayer } from '../lettering/result.ts';
import type { Container, Material, Stock } from '../materials/types.ts';
import type { Looks } from './look.ts';

/** The painted lettering of one sign. */
export interface LetterPaint {
  /** Laid part. */
  readonly sign: string;
  /** Where the lettering's origin, the lower left of the sign's box, lies on the face. */
  readonly at: Point;
  readonly layers: readonly PaintedLayer[];
}

/** All that the finish plan is made from; nothing in it is changed. */
export interface FinishInput {
  readonly face: Pick<Face, 'levels'>;
  readonly solids: readonly Solid[];
  readonly lettering: readonly LetterPaint[];
  /** Letters that are sawn out and glued onto their signs. */
  readonly sawn: readonly Solid[];
  /** Parts that are glued to what they lie on. */
  readonly glued: ReadonlySet<string>;
  /** The parts that each part is glued to by a joint. */
  readonly joined: ReadonlyMap<string, ReadonlySet<string>>;
  readonly finishes: Design['finishes'];
  readonly looks: Looks;
  readonly paint: Design['paint'];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly materials: ReadonlyMap<string, Material>;
  readonly containers: readonly Container[];
}

/** Something with a front that can be seen: a level of the bed, a part, a painted shape, a color of lettering, a sawn letter. */
export interface Surface {
  /** Laid part, or the id of a level. */
  readonly part: string;
  readonly kind: 'level' | 'solid' | 'painted' | 'letter' | 'sawn';
  readonly finish: string | null;
  readonly stock: string | null;
  /** What it lies on: a level or laid part. */
  readonly on: string | null;
  /** The color of lettering; null for anything else. */
  readonly role: LetterLayer['role'] | null;
  readonly region: Region;
  /** What is painted: of lettering more than stays in sight, of anything else its outline. */
  readonly painted: Region;
  /** Painted beside what is seen from the front, in square millimeters: walls of grooves. */
  readonly beyond?: number;
  /** Underside; minus infinity for the bed's own wood. */
  readonly bottom: number;
  readonly z: number;
}

/** A surface with the rectangle around it, which decides most questions. */
export interface Boxed {
  readonly surface: Surface;
  readonly box: Box | null;
}
