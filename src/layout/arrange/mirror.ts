import { withStopsOfCopies } from '../../design/ends.ts';
import type { Axis, Edge, Rule } from '../../design/schema.ts';
import { edgesAt } from '../edgeAt.ts';
import { sizeOf, startOf, withSpan } from '../span.ts';
import { type Arranged, type Arranging, idMaker, NOTHING, selected } from './arranged.ts';
import { jointsOfCopies } from './joints.ts';
import { reflectPart, reflectPlace } from './reflect.ts';

export interface MirrorRequest {
  /** x: left and right change sides. */
  readonly axis: Axis;
  readonly about: Edge;
}

/** Mirror images of the parts, each held to its part by a rule. */
export function mirrorCopy(on: Arranging, ids: readonly string[], { axis, about }: MirrorRequest): Arranged {
  const line = edgesAt(on.input, on.layout, axis)(about);
  if (line === null) return NOTHING;
  const nextId = idMaker(on.input.design);
  const parts = selected(on, [...new Set(ids)]);
  const twins = new Map(parts.map((part) => [part.id, nextId(part.id)]));
  const add = parts.map((part) => {
    const size = sizeOf(part.box, axis);
    const start = 2 * line - startOf(part.box, axis) - size;
    return {
      ...withStopsOfCopies(reflectPart(part, axis), (id) => twins.get(id)),
      id: twins.get(part.id) ?? part.id,
      box: withSpan(part.box, axis, start, size),
      // What lies on a mirrored part lies on its twin.
      on: twins.get(part.on) ?? part.on,
    };
  });
  const rules = parts.map(
    (part): Rule => ({
      id: nextId('mirror'),
      kind: 'mirror',
      axis,
      part: part.id,
      twin: twins.get(part.id) ?? part.id,
      about,
    }),
  );
  const joints = jointsOfCopies(on, twins, add, nextId, (part, place) => {
    const array = parts.find(({ id }) => id === part);
    return array?.kind === 'array' ? reflectPlace(array, axis, place) : place;
  });
  return { ...NOTHING, add, rules, joints };
}
