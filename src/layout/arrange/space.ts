import { isLettered } from '../../design/made.ts';
import type { Axis, Edge, Part } from '../../design/schema.ts';
import { surrounds } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { type Bounds, boundsOf } from '../bounds.ts';
import { edgesAt } from '../edgeAt.ts';
import { middle, type Span, spanOf } from '../span.ts';
import type { Arranging } from './arranged.ts';

/** What bounds a space on each side: `face`, a level (`level:field`) or a part's id. */
export interface SpaceNames {
  readonly left: string;
  readonly right: string;
  readonly bottom: string;
  readonly top: string;
}

/** A space between four edges, and what strips in it lie on. */
export interface Space extends Readonly<Record<keyof SpaceNames, Edge>> {
  readonly on: string;
}

/**
 * The space between things that a person names. Of a part that the space lies within, its own edge counts
 * (of a frame the inside one); of a part beside the space, the edge that faces it.
 */
export function spaceBetween(on: Arranging, names: SpaceNames): Space {
  const bounds = new Map(boundsOf(on.input, on.layout).map((b) => [b.id, b]));
  const edge = (axis: Axis, name: string, opposite: string, side: 'low' | 'high'): Edge => {
    const own = bounds.get(name);
    if (!own) return { of: name, side };
    if (!lies(within(own, axis), bounds.get(opposite), axis, name === opposite))
      return { of: name, side: side === 'low' ? 'high' : 'low' };
    return own.inner ? { of: name, side, inner: true } : { of: name, side };
  };
  const edges = {
    left: edge('x', names.left, names.right, 'low'),
    right: edge('x', names.right, names.left, 'high'),
    bottom: edge('y', names.bottom, names.top, 'low'),
    top: edge('y', names.top, names.bottom, 'high'),
  };
  return { ...edges, on: supportOf(on, edges, bounds) };
}

const within = (bounds: Bounds, axis: Axis): Span => spanOf(bounds.inner ?? bounds.box, axis);

/** Whether the far side of the space lies within a part, so that the space does too. */
function lies(own: Span, opposite: Bounds | undefined, axis: Axis, same: boolean): boolean {
  if (same) return true;
  if (!opposite) return false;
  const other = spanOf(opposite.box, axis);
  const at = middle(other);
  return at > own.low && at < own.high && other.high - other.low < own.high - own.low;
}

/**
 * What all the named parts stand on: a panel that the space lies on, or what a part beside the space lies on;
 * where that differs, the nearest thing below them all. Face and levels have no say while a part is named.
 */
function supportOf(
  on: Arranging,
  edges: Readonly<Record<keyof SpaceNames, Edge>>,
  bounds: ReadonlyMap<string, Bounds>,
): string {
  const byId = new Map(on.input.design.parts.map((part) => [part.id, part]));
  const space = boxOfEdges(on, edges);
  const chains = [edges.left, edges.right, edges.bottom, edges.top].flatMap(({ of }) => {
    const part = byId.get(of);
    return part ? [chainFrom(carries(part, bounds.get(of), space) ? part.id : part.on, byId)] : [];
  });
  const [first, ...others] = chains;
  return first?.find((id) => others.every((chain) => chain.includes(id))) ?? 'face';
}

/** Everything below, from the top down to the face. */
function chainFrom(start: string, byId: ReadonlyMap<string, Part>): string[] {
  const chain: string[] = [];
  for (let id: string | undefined = start; id !== undefined && !chain.includes(id); id = byId.get(id)?.on)
    chain.push(id);
  return chain.includes('face') ? chain : [...chain, 'face'];
}

/** Only what has a surface of its own under the whole space carries strips in it; a frame lies around it. */
function carries(part: Part, bounds: Bounds | undefined, space: Box | null): boolean {
  if (part.kind !== 'panel' && !isLettered(part) && part.kind !== 'strip') return false;
  if (!bounds || !space) return false;
  return surrounds(bounds.box, space, SAME_LENGTH);
}

function boxOfEdges(on: Arranging, edges: Readonly<Record<keyof SpaceNames, Edge>>): Box | null {
  const x = edgesAt(on.input, on.layout, 'x');
  const y = edgesAt(on.input, on.layout, 'y');
  const [left, right, bottom, top] = [x(edges.left), x(edges.right), y(edges.bottom), y(edges.top)];
  if (left === null || right === null || bottom === null || top === null) return null;
  return { x: left, y: bottom, w: right - left, h: top - bottom };
}

/**
 * The names to start from when parts are selected: the inside of one part, or the space between several,
 * along each axis between the outermost two where those stand clear of each other. Null for no parts.
 */
export function namesFor(on: Arranging, ids: readonly string[]): SpaceNames | null {
  const chosen = boundsOf(on.input, on.layout).filter((b) => ids.includes(b.id));
  const [left, right] = outermost(chosen, 'x') ?? [];
  const [bottom, top] = outermost(chosen, 'y') ?? [];
  if (!left || !right || !bottom || !top) return null;
  return { left, right, bottom, top };
}

function outermost(chosen: readonly Bounds[], axis: Axis): readonly [string, string] | null {
  const [first, ...rest] = chosen;
  if (!first) return null;
  const at = (b: Bounds) => spanOf(b.box, axis);
  let [low, high, least] = [first, first, first];
  for (const b of rest) {
    if (middle(at(b)) < middle(at(low))) low = b;
    if (middle(at(b)) > middle(at(high))) high = b;
    if (at(b).high - at(b).low < at(least).high - at(least).low) least = b;
  }
  return at(low).high < at(high).low ? [low.id, high.id] : [least.id, least.id];
}
