import { boxAroundBoth } from '../geometry/box.ts';
import type { Box, Point } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';

/**
 * Where wood and fasteners were looked for while one part was worked on. What lies elsewhere had no say: while
 * nothing changes here, the same questions would be asked again and answered alike.
 */
export class Asked {
  #box: Box | null = null;
  /** The farthest that anything was to keep from others. */
  #apart: Mm = 0;

  begin(): void {
    this.#box = null;
    this.#apart = 0;
  }

  at({ x, y }: Point, apart: Mm): void {
    this.within({ x, y, w: 0, h: 0 });
    this.#apart = Math.max(this.#apart, apart);
  }

  within(box: Box): void {
    this.#box = this.#box ? boxAroundBoth(this.#box, box) : box;
  }

  /** All of it; null where nothing was asked. */
  around(): Around | null {
    return this.#box && { box: this.#box, apart: this.#apart };
  }
}

export interface Around {
  readonly box: Box;
  readonly apart: Mm;
}
