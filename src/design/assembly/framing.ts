import type { Mm } from '../../measure/units.ts';
import { type Building, GROUND, type PartNoun, type Space } from './building.ts';

/** What a frame is made of. */
export interface FrameStock {
  readonly stile: string;
  readonly bottom: string;
  /** The stile's stock where nothing is said. */
  readonly top?: string;
  readonly finish: string | null;
}

/**
 * Two stiles that run through, with a rail between them at the foot and at the head, as doors and sashes are joined.
 * Returns the space that they leave.
 */
export function framed(b: Building, space: Space, stock: FrameStock): Space {
  const { finish } = stock;
  const inner = stiles(b, space, stock);
  rail(b, 'rail-bottom', 'bottom-rail', inner, { stock: stock.bottom, finish });
  rail(b, 'rail-top', 'top-rail', inner, { stock: stock.top ?? stock.stile, finish });
  b.set('rail-bottom', 'y', 'low', space.bottom);
  b.set('rail-top', 'y', 'high', space.top);
  return { ...inner, bottom: b.edge('rail-bottom', 'high'), top: b.edge('rail-top', 'low') };
}

/** A stile at each side of a space, and what lies between them. */
export function stiles(
  b: Building,
  space: Space,
  { stile, finish }: Pick<FrameStock, 'stile' | 'finish'>,
  nouns: readonly [PartNoun, PartNoun] = ['left-stile', 'right-stile'],
): Pick<Space, 'left' | 'right'> {
  const [left, right] = ['stile-left', 'stile-right'];
  b.strip(left, nouns[0], 'up', { stock: stile, finish });
  b.strip(right, nouns[1], 'up', { stock: stile, finish });
  b.set(left, 'x', 'low', space.left);
  b.set(right, 'x', 'high', space.right);
  for (const role of [left, right]) b.between(role, 'y', space.bottom, space.top);
  return { left: b.edge(left, 'high'), right: b.edge(right, 'low') };
}

/** A strip across between two edges; its height is told apart. */
export function rail(
  b: Building,
  role: string,
  noun: PartNoun,
  { left, right }: Pick<Space, 'left' | 'right'>,
  made: { readonly stock: string; readonly finish: string | null },
  number?: number,
): void {
  b.strip(role, { noun, number }, 'across', { stock: made.stock, finish: made.finish });
  b.between(role, 'x', left, right);
}

/** A rail along one edge of a space. */
export function railAt(
  b: Building,
  role: string,
  noun: PartNoun,
  space: Space,
  made: { readonly stock: string; readonly finish: string | null },
  side: 'low' | 'high',
  edge = side === 'low' ? space.bottom : space.top,
): void {
  rail(b, role, noun, space, made);
  b.set(role, 'y', side, edge);
}

/**
 * Two stiles with a rail at the foot, and over them an arched head sawn of sheet as thick as they are. Returns the
 * space between them, up to the foot of the head.
 */
export function archFramed(
  b: Building,
  { rise, head, ...stock }: FrameStock & { readonly rise: Mm; readonly head: string },
): Space {
  const all = b.within(GROUND);
  const width = b.widthOf(stock.stile);
  b.part('panel', HEAD, 'arch', {
    stock: head,
    finish: stock.finish,
    shape: { form: 'arch-band', rise, width },
  });
  b.between(HEAD, 'x', all.left, all.right);
  b.set(HEAD, 'y', 'high', all.top);
  b.size(HEAD, 'y', rise + width);
  const inner = stiles(b, { ...all, top: b.edge(HEAD, 'low') }, stock);
  const made = { stock: stock.bottom, finish: stock.finish };
  railAt(b, 'rail-bottom', 'bottom-rail', { ...all, ...inner }, made, 'low');
  return { ...inner, bottom: b.edge('rail-bottom', 'high'), top: b.edge(HEAD, 'low') };
}

/** The role of what goes around the top of an arched opening. */
export const HEAD = 'head';
