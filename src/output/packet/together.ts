import type { DrawItem } from '../../drawing/drawing.ts';
import type { Box } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Joined } from '../../plan/types.ts';
import type { Leaf, Packet } from './leaf.ts';
import { roomOn } from './sheet.ts';

/** What a drawing has over it and below it: notes and a legend. */
export interface Stand {
  readonly top: Mm;
  readonly bottom: Mm;
}

/** A drawing to scale in a room of a page; drawn when its page is. */
export interface Figure {
  readonly scale: number;
  readonly stand: Stand;
  readonly draw: () => DrawItem[];
}

/**
 * A drawing as it comes out in some room.
 *
 * @param least what others beside it have over and below them: drawings of a page stand at one height
 */
export type Drawn = (room: Box, least: Stand) => Figure;

export const NOTHING: Stand = { top: 0, bottom: 0 };

/** The larger of what a drawing needs itself and what others beside it have. */
export const standOf = (own: Stand, least: Stand): Stand => ({
  top: Math.max(own.top, least.top),
  bottom: Math.max(own.bottom, least.bottom),
});

/** Drawings of one page, in line with each other. */
function inLine(rooms: readonly Box[], own: readonly Drawn[]): Figure[] {
  const drawn = (least: Stand) => own.map((figure, k) => figure(pick(rooms, k), least));
  return drawn(drawn(NOTHING).reduce<Stand>((all, { stand }) => standOf(stand, all), NOTHING));
}

/** White between two drawings of a page. */
const APART: Mm = 6;
/** So many drawings stand on one page at most. */
const MOST = 4;

/** A room parted in `count`, beside each other or one below the other. */
function parted({ x, y, w, h }: Box, count: number, beside: boolean): Box[] {
  const whole = beside ? w : h;
  const own = (whole - (count - 1) * APART) / count;
  return Array.from({ length: count }, (_, i) => {
    const at = i * (own + APART);
    return beside ? { x: x + at, y, w: own, h } : { x, y: y + whole - at - own, w, h: own };
  });
}

/**
 * Drawings of one shape under one title, on as few pages as hold them no smaller than a page each would.
 *
 * @param shape of what is drawn: the whole face, where nothing else is said
 */
export function together(
  packet: Packet<Joined>,
  title: string,
  figures: readonly Drawn[],
  shape: { readonly width: Mm; readonly height: Mm } = packet.plan.face,
): Leaf[] {
  const wide = shape.width > shape.height;
  const alone = roomOn(packet.sheet, wide);
  // Upright faces lie beside each other and wide ones below each other; both on upright paper rather than turned.
  const partings = Array.from({ length: MOST - 1 }, (_, i) => MOST - i).flatMap((count) =>
    [false, true].map((landscape) => ({
      count,
      landscape,
      rooms: parted(roomOn(packet.sheet, landscape), count, !wide),
    })),
  );
  const leaves: Leaf[] = [];
  for (let from = 0; from < figures.length; ) {
    const left = figures.slice(from);
    const found = partings.find(({ count, rooms }) => {
      const own = left.slice(0, count);
      const scales = count <= left.length ? inLine(rooms, own).map(({ scale }) => scale) : [];
      return scales.length > 0 && own.every((one, k) => pick(scales, k) <= one(alone, NOTHING).scale);
    });
    const { landscape, rooms } = found ?? { landscape: wide, rooms: [alone] };
    const own = inLine(rooms, left.slice(0, rooms.length));
    leaves.push({
      title,
      landscape,
      scale: Math.max(...own.map(({ scale }) => scale)),
      draw: () => own.flatMap(({ draw }) => draw()),
    });
    from += rooms.length;
  }
  return leaves;
}
