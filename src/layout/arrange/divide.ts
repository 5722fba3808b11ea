import type { Axis, Edge, Joint, Rule, Strip } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { at } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { edgesAt } from '../edgeAt.ts';
import { spread } from '../rule/spacing.ts';
import { section } from '../structure.ts';
import { type Arranged, type Arranging, idMaker, NOTHING, setRule } from './arranged.ts';

export interface DivideRequest {
  /** The space: any four edges. */
  readonly left: Edge;
  readonly right: Edge;
  readonly bottom: Edge;
  readonly top: Edge;
  readonly columns: number;
  readonly rows: number;
  /** Strips at the borders of the space too. */
  readonly framed: boolean;
  /** Which strips run through where they cross; `lap`: both, let into each other. */
  readonly through: 'up' | 'across' | 'lap';
  /** Stock of the upright strips and of those across. */
  readonly upright: string;
  readonly across: string;
  readonly names: { readonly upright: string; readonly across: string };
  /** What the strips share: what they lie on, finish, fixing and the like. */
  readonly like: Pick<Strip, 'on' | 'finish' | 'fixing' | 'onEdge' | 'ends' | 'fit' | 'locked'>;
}

/** One of the two families of strips, seen along the axis that it divides. */
interface Family {
  /** The axis along which the strips are spread; they run along the other. */
  readonly axis: Axis;
  readonly lie: 'up' | 'across';
  readonly stock: string;
  readonly width: Mm;
  readonly name: string;
  readonly count: number;
  readonly low: Edge;
  readonly high: Edge;
  readonly starts: readonly Mm[];
}

/**
 * Divides a space into columns and rows by strips that stay evenly spread whatever the space becomes.
 * Strips that do not run through are cut into one piece for each bay and fitted between their neighbors.
 */
export function divide(on: Arranging, request: DivideRequest): Arranged {
  const across = familyOf(on, request, 'x');
  const up = familyOf(on, request, 'y');
  if (!across || !up) return NOTHING;
  const plan = new Plan(on, request);
  if (request.through === 'across') {
    const rails = plan.throughout(up, across);
    plan.bays(across, up, rails);
  } else {
    const uprights = plan.throughout(across, up);
    if (request.through === 'lap') plan.laps(uprights, plan.throughout(up, across));
    else plan.bays(up, across, uprights);
  }
  return plan.done();
}

/** The strips that divide `axis`; null where the space or the stock is not there. */
function familyOf(on: Arranging, request: DivideRequest, axis: Axis): Family | null {
  const edgeAt = edgesAt(on.input, on.layout, axis);
  const [low, high] = axis === 'x' ? [request.left, request.right] : [request.bottom, request.top];
  const from = edgeAt(low);
  const to = edgeAt(high);
  const stock = axis === 'x' ? request.upright : request.across;
  const width = section(on.input.stocks.get(stock), request.like.onEdge)?.width;
  if (from === null || to === null || width === undefined) return null;
  const bays = axis === 'x' ? request.columns : request.rows;
  const count = request.framed ? bays + 1 : bays - 1;
  const mode = request.framed ? 'flush' : 'gaps';
  const places = count > 0 ? spread(to - from, width, { mode, count }).starts : [];
  return {
    axis,
    lie: axis === 'x' ? 'up' : 'across',
    stock,
    width,
    name: axis === 'x' ? request.names.upright : request.names.across,
    count,
    low,
    high,
    starts: places.map((start) => from + start),
  };
}

/** Collects the strips and rules of a division. */
class Plan {
  private readonly add: Strip[] = [];
  private readonly rules: Rule[] = [];
  private readonly joints: Joint[] = [];
  private readonly nextId: (word: string) => string;

  constructor(
    private readonly on: Arranging,
    private readonly request: DivideRequest,
  ) {
    this.nextId = idMaker(on.input.design);
  }

  /** Strips that run from one end of the space to the other; returns their ids. */
  throughout(family: Family, along: Family): string[] {
    const ids = family.starts.map((start) => {
      const id = this.strip(
        family,
        start,
        this.place(along.low, along.axis),
        this.place(along.high, along.axis),
      );
      this.between(id, along.axis, along.low, along.high);
      return id;
    });
    this.even(family, ids);
    return ids;
  }

  /** Strips that stop at those that run through: one piece for each bay, in line with the first. */
  bays(family: Family, along: Family, through: readonly string[]): void {
    const firsts: string[] = [];
    family.starts.forEach((start) => {
      const row: string[] = [];
      for (const [from, to] of this.baysBetween(along, through)) {
        const id = this.strip(family, start, from.at, to.at);
        this.between(id, along.axis, from.edge, to.edge);
        const [first] = row;
        if (first !== undefined) this.inLine(id, first, family.axis);
        row.push(id);
      }
      const [first] = row;
      if (first !== undefined) firsts.push(first);
    });
    this.even(family, firsts);
  }

  /** Both families run through: a half lap at every crossing. */
  laps(uprights: readonly string[], rails: readonly string[]): void {
    for (const upright of uprights) {
      for (const rail of rails) {
        this.joints.push({ id: this.nextId('joint'), parts: [upright, rail], kind: 'half-lap' });
      }
    }
  }

  done(): Arranged {
    return { ...NOTHING, add: this.add, rules: this.rules, joints: this.joints };
  }

  /** The ends of each bay: the space's, and both sides of every strip that runs through. */
  private baysBetween(along: Family, through: readonly string[]) {
    const ends: { edge: Edge; at: Mm }[] = [];
    through.forEach((id, i) => {
      const start = at(along.starts, i);
      ends.push({ edge: { of: id, side: 'low' }, at: start });
      ends.push({ edge: { of: id, side: 'high' }, at: start + along.width });
    });
    const low = { edge: along.low, at: this.place(along.low, along.axis) };
    const high = { edge: along.high, at: this.place(along.high, along.axis) };
    // With strips at the borders the first and last bay begin behind those.
    const all = this.request.framed ? ends.slice(1, -1) : [low, ...ends, high];
    const bays: [{ edge: Edge; at: Mm }, { edge: Edge; at: Mm }][] = [];
    for (let i = 0; i + 1 < all.length; i += 2) {
      const from = all[i];
      const to = all[i + 1];
      if (from && to) bays.push([from, to]);
    }
    return bays;
  }

  private place(edge: Edge, axis: Axis): Mm {
    return edgesAt(this.on.input, this.on.layout, axis)(edge) ?? 0;
  }

  private strip(family: Family, start: Mm, from: Mm, to: Mm): string {
    const id = this.nextId(family.lie === 'up' ? 'upright' : 'rail');
    const box: Box =
      family.axis === 'x'
        ? { x: start, y: from, w: family.width, h: to - from }
        : { x: from, y: start, w: to - from, h: family.width };
    this.add.push({
      ...this.request.like,
      id,
      name: family.name,
      kind: 'strip',
      stock: family.stock,
      lie: family.lie,
      angle: 0,
      length: Math.max(1, to - from),
      box,
    });
    return id;
  }

  private between(part: string, axis: Axis, low: Edge, high: Edge): void {
    this.rules.push({
      id: this.nextId('divide'),
      kind: 'between',
      axis,
      part,
      low,
      high,
      insetLow: 0,
      insetHigh: 0,
    });
  }

  private inLine(part: string, first: string, axis: Axis): void {
    const edge = { of: part, side: 'low' } as const;
    this.rules.push(setRule(this.nextId('divide'), axis, edge, { of: first, side: 'low' }));
  }

  private even({ axis, low, high }: Family, parts: readonly string[]): void {
    if (parts.length === 0) return;
    this.rules.push({
      id: this.nextId('divide'),
      kind: 'even',
      axis,
      parts: [...parts],
      low,
      high,
      mode: this.request.framed ? 'flush' : 'gaps',
    });
  }
}
