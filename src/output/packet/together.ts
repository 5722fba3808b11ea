import type { DrawItem } from '../../drawing/drawing.ts';
import type { Box } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Leaf, Packet } from './leaf.ts';
import { bodyOf, turned } from './sheet.ts';

/** A drawing to scale in a room of a page; drawn when its page is. */
export interface Figure {
  readonly scale: number;
  readonly draw: () => DrawItem[];
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
 * Drawings of the whole face under one title, on as few pages as hold them no smaller than a page each would.
 *
 * @param figures each as it comes out in some room
 */
export function together(packet: Packet, title: string, figures: readonly ((room: Box) => Figure)[]): Leaf[] {
  const { face } = packet.plan;
  const wide = face.width > face.height;
  const roomOn = (landscape: boolean) => bodyOf(landscape ? turned(packet.sheet) : packet.sheet);
  const alone = roomOn(wide);
  const isAsLarge = (rooms: readonly Box[], own: readonly ((room: Box) => Figure)[]) =>
    own.every((figure, k) => figure(pick(rooms, k)).scale <= figure(alone).scale);
  // Upright faces lie beside each other and wide ones below each other; both on upright paper rather than turned.
  const partings = Array.from({ length: MOST - 1 }, (_, i) => MOST - i).flatMap((count) =>
    [false, true].map((landscape) => ({ count, landscape, rooms: parted(roomOn(landscape), count, !wide) })),
  );
  const leaves: Leaf[] = [];
  for (let from = 0; from < figures.length; ) {
    const left = figures.slice(from);
    const found = partings.find(
      ({ count, rooms }) => count <= left.length && isAsLarge(rooms, left.slice(0, count)),
    );
    const { landscape, rooms } = found ?? { landscape: wide, rooms: [alone] };
    const own = figures.slice(from, from + rooms.length);
    const scale = Math.max(...own.map((figure, k) => figure(pick(rooms, k)).scale));
    leaves.push({
      title,
      landscape,
      scale,
      draw: () => own.flatMap((figure, k) => figure(pick(rooms, k)).draw()),
    });
    from += rooms.length;
  }
  return leaves;
}
