import type { Check } from '../../check/check.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import { isBought, isMany } from '../../design/made.ts';
import type { Part } from '../../design/schema.ts';
import type { Body } from '../../fold/body.ts';
import { TIGHT } from '../../fold/foldChecks.ts';
import { hitsOf } from '../../fold/hits.ts';
import type { Hit } from '../../fold/result.ts';
import { boxAround } from '../../geometry/box.ts';
import { structureOf } from '../../layout/structure.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import type { Shown } from '../document/shown.ts';
import type { Mend } from './mend.ts';
import { concerned } from './mend.ts';
import { editsToType } from './typed.ts';

/** What is left of a part, at least. */
const LEAST: Mm = 10;
/** How finely places are looked through, and lengths told. */
const STEP: Mm = 5;
const FINE: Mm = 0.1;

/** A part that hits something as the bed swings. */
interface Swung {
  readonly shown: Shown;
  readonly part: Part;
  readonly body: Body;
  readonly clears: (change: Partial<Body>) => boolean;
}

/** Ways to mend that a part hits floor, wall or ceiling in the swing, or stands lower than the feet of the legs. */
export function swingMends(shown: Shown, checks: readonly Check[]): Mend[] {
  const part = concerned(shown.design, checks);
  const named = new Set(checks.flatMap((check) => check.parts));
  const laid = shown.layout.parts.filter((one) => named.has(one.id));
  const box = boxAround(laid.map((one) => one.box));
  if (!part || part.locked || !box) return [];
  const { id } = part;
  const body: Body = {
    id,
    kind: 'part',
    y0: box.y,
    y1: box.y + box.h,
    z0: Math.min(...laid.map(({ z0 }) => z0)),
    z1: Math.max(...laid.map(({ z1 }) => z1)),
    x0: box.x,
    x1: box.x + box.w,
  };
  const onlyLegs = checks.every(({ code }) => code === 'fold.hits-legs');
  const isMended = ({ what }: Hit) => what.startsWith('side-') || (onlyLegs && what !== 'legs');
  const mendsWith = (slack: Mm): Mend[] => {
    const clears: Swung['clears'] = (change) => {
      const now = { ...body, ...change };
      const wide = { ...now, y0: now.y0 - slack, y1: now.y1 + slack, z1: now.z1 + slack };
      return hitsOf(shown.design.bed, shown.face, wide).every(isMended);
    };
    const swung: Swung = { shown, part, body, clears };
    return [...thinner(swung), ...shorter(swung), ...movedClear(swung)];
  };
  // So clear that it is not told as tight either, where there is room for that.
  const roomy = mendsWith(TIGHT);
  return roomy.length > 0 ? roomy : mendsWith(0);
}

/** The least amount that clears, of those up to `most`: where one does, all larger ones do. */
function least(most: Mm, clears: (by: Mm) => boolean): Mm | null {
  if (most <= 0 || !clears(most)) return null;
  let [low, high] = [0, most];
  while (high - low > FINE) {
    const middle = (low + high) / 2;
    if (clears(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Made of the thickest stock like its own with which it clears. */
function thinner({ shown, part, body, clears }: Swung): Mend[] {
  if (!('stock' in part) || ('onEdge' in part && part.onEdge)) return [];
  const own = shown.stocks.get(part.stock);
  if (!own || own.form === 'shaped') return [];
  const found = [...shown.stocks.values()]
    .filter((stock) => isLike(stock, own) && stock.thickness < own.thickness)
    .sort(
      (a, b) =>
        b.thickness - a.thickness ||
        Number(b.material === own.material) - Number(a.material === own.material),
    )
    .find(({ thickness }) => clears({ z1: body.z1 - (own.thickness - thickness) }));
  if (!found) return [];
  const item = { ...part, stock: found.id };
  const edits: Edit[] = [replacing('parts', item)];
  return [{ how: 'stock', parts: [part.id], to: found.id, edits }];
}

const isLike = (stock: Stock, own: Stock): boolean =>
  stock.form === own.form && (stock.form !== 'flat' || own.form !== 'flat' || stock.width === own.width);

/** Cut off at the end where less has to go. */
function shorter({ shown, part, body, clears }: Swung): Mend[] {
  if (isMany(part) || isBought(part) || (part.kind === 'strip' && part.lie !== 'up')) return [];
  const box = shown.layout.boxes.get(part.id);
  if (!box || structureOf(part, 'y', shown.stocks, undefined).fixed !== null) return [];
  const most = body.y1 - body.y0 - LEAST;
  const ends = (['low', 'high'] as const).flatMap((end) => {
    const by = least(most, (off) => clears(end === 'low' ? { y0: body.y0 + off } : { y1: body.y1 - off }));
    return by === null ? [] : [{ end, by }];
  });
  const [first] = ends.sort((a, b) => a.by - b.by);
  if (!first) return [];
  const { end, by } = first;
  const sides = end === 'low' ? { y: box.y + by, h: box.h - by } : { h: box.h - by };
  const { edits } = editsToType(shown, part.id, box, sides);
  return [{ how: 'shorten', parts: [part.id], to: '', end, by, edits }];
}

/** Moved up or down the face to the nearest place where it clears. */
function movedClear({ shown, part, body, clears }: Swung): Mend[] {
  const box = shown.layout.boxes.get(part.id);
  const { y, h } = shown.face.box;
  if (!box) return [];
  const at = (by: Mm) => clears({ y0: body.y0 + by, y1: body.y1 + by });
  const ways = ([-1, 1] as const).flatMap((way) => {
    const room = way < 0 ? body.y0 - y : y + h - body.y1;
    for (let by = STEP; by <= room; by += STEP) {
      if (!at(way * by)) continue;
      const more = least(STEP, (off) => at(way * (by - STEP + off))) ?? STEP;
      return [way * (by - STEP + more)];
    }
    return [];
  });
  const [by] = ways.sort((a, b) => Math.abs(a) - Math.abs(b));
  if (by === undefined) return [];
  const { edits } = editsToType(shown, part.id, box, { y: box.y + by });
  return [{ how: 'move', parts: [part.id], to: '', axis: 'y', by, edits }];
}
