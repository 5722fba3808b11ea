import type { Axis, Design, Edge, Joint, Part, Rule } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { boxIn } from '../boxIn.ts';
import type { Layout } from '../laid.ts';
import type { LayoutInput } from '../layout.ts';

/** What an arrangement adds to a design and changes in it; nothing is taken away. */
export interface Arranged {
  readonly add: readonly Part[];
  /** Parts with new boxes. */
  readonly change: readonly Part[];
  readonly rules: readonly Rule[];
  readonly joints: readonly Joint[];
}

export const NOTHING: Arranged = { add: [], change: [], rules: [], joints: [] };

/** What arrangements work from: the input of the layout and what it came to. */
export interface Arranging {
  readonly input: LayoutInput & { readonly design: Design };
  readonly layout: Layout;
}

/** The parts of the design with these ids, in the order of the ids, in their solved boxes. */
export function selected({ input, layout }: Arranging, ids: readonly string[]): Part[] {
  const byId = new Map(input.design.parts.map((part) => [part.id, part]));
  return ids.flatMap((id) => {
    const part = byId.get(id);
    return part ? [{ ...part, box: boxIn(layout.boxes, part) }] : [];
  });
}

/** A rule that keeps an edge at a distance from another, in line with it where none is said. */
export const setRule = (id: string, axis: Axis, edge: Edge, from: Edge, distance: Mm = 0): Rule => ({
  id,
  kind: 'set',
  axis,
  edge,
  from,
  distance,
});

/** Gives out ids of the form `word-n` that nothing in the design has, each once. */
export function idMaker(design: Design): (word: string) => string {
  const taken = new Set<string>();
  for (const list of [design.parts, design.groups, design.keepClears, design.rules, design.joints]) {
    for (const { id } of list) taken.add(id);
  }
  return (word) => {
    const stem = word.replace(/-\d+$/, '').slice(0, 70);
    let n = 1;
    while (taken.has(`${stem}-${n}`)) n++;
    const id = `${stem}-${n}`;
    taken.add(id);
    return id;
  };
}
