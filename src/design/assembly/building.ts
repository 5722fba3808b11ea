import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { newPart } from '../defaults.ts';
import { hardwareOf } from '../hardware.ts';
import type { Axis, Edge, Part, PartKind, PartOf, Rule, RuleKind, RuleOf } from '../schema.ts';
import type { Supplies } from './question.ts';

/** The part that takes the place of the whole: all else lies in it, by rules. */
export const GROUND = 'ground';

/** How thin things are fastened, which brads would split or come out of. Common practice, no source. */
export const GLUED = { how: 'glue', glue: true } as const;

/** Four edges that things are put between. */
export interface Space {
  readonly left: Edge;
  readonly right: Edge;
  readonly bottom: Edge;
  readonly top: Edge;
}

/** What parts of assemblies are called; the editor has the words. */
export type PartNoun =
  | 'leaf'
  | 'left-stile'
  | 'right-stile'
  | 'bottom-rail'
  | 'top-rail'
  | 'cross-rail'
  | 'arch'
  | 'field'
  | 'muntin'
  | 'panel-molding'
  | 'raised-panel'
  | 'meeting-bead'
  | 'glass'
  | 'ring'
  | 'upright-bars'
  | 'cross-bars'
  | 'transom'
  | 'planks'
  | 'ledge'
  | 'brace'
  | 'louvers'
  | 'base'
  | 'cap'
  | 'stiles'
  | 'frieze'
  | 'architrave'
  | 'crown'
  | 'dentils'
  | 'brackets'
  | 'shaft'
  | 'capital'
  | 'reeds'
  | 'flute'
  | 'fillet'
  | 'cloth'
  | 'valance'
  | 'stripe'
  | 'shelf'
  | 'board'
  | 'frame'
  | 'knob'
  | 'opening'
  | 'counter'
  | 'mullion'
  | 'sill'
  | 'nut'
  | 'plate'
  | 'slot'
  | 'shade'
  | 'seat'
  | 'left-leg'
  | 'right-leg'
  | 'slats'
  | 'track'
  | 'left-hanger'
  | 'right-hanger'
  | 'cut-out'
  | 'dial'
  | 'hour-mark'
  | 'hour-hand'
  | 'minute-hand'
  | 'hub';

/** What a part is called: a noun, a number where there are several, and on which of two leaves it is. */
export interface Called {
  readonly noun: PartNoun;
  readonly number?: number | undefined;
  readonly leaf?: Leaf | undefined;
}

export type Leaf = 'left' | 'right';

type Own<K extends PartKind> = Partial<Omit<PartOf<K>, 'id' | 'kind' | 'box'>>;
type Fields<K extends RuleKind> = Omit<RuleOf<K>, 'id' | 'kind'>;

export interface MadePart {
  readonly part: Part;
  readonly called: Called;
}

/**
 * Collects parts and rules under the roles that they have in an assembly. A role stays the same whatever is
 * answered, so that what was altered is found again.
 */
export class Building {
  /**
   * @param idOf the id in the design of what has a role
   * @param box where the whole lies: each part begins there, and its rules carry it to its place
   */
  constructor(
    private readonly idOf: (role: string) => string,
    private readonly box: Box,
    readonly has: Supplies,
    private readonly leaf?: Leaf,
    readonly parts = new Map<string, MadePart>(),
    readonly rules = new Map<string, Rule>(),
  ) {}

  /** The same for one of two leaves: what is added there has roles and names of its own. The ground is shared. */
  on(leaf: Leaf): Building {
    return new Building(this.idOf, this.box, this.has, leaf, this.parts, this.rules);
  }

  /** Adds a part as it is when it has just been placed, but for what is said of it. All lies on the ground. */
  part<K extends PartKind>(kind: K, role: string, called: PartNoun | Called, own: Own<K>): string {
    const id = this.id(role);
    const on = role === GROUND ? 'face' : this.id(GROUND);
    const part = { ...newPart(kind, { id, name: '', box: this.box }), on, ...own } as Part;
    const noun = typeof called === 'string' ? { noun: called } : called;
    this.parts.set(this.roleOf(role), { part, called: { ...noun, leaf: this.leaf } });
    return role;
  }

  /** Adds hardware of the table, as large as it is sold. */
  hardware(role: string, called: PartNoun | Called, { entry, on }: { entry: string; on: string }): void {
    const found = this.has.hardware.find(({ id }) => id === entry);
    if (!found) throw new RangeError(`no hardware ${entry}`);
    this.part('fitting', role, called, { ...hardwareOf(found, false), on: this.id(on) });
  }

  /** Adds a strip that lies along its box. */
  strip(role: string, called: PartNoun | Called, lie: 'across' | 'up', own: Own<'strip'>): string {
    return this.part('strip', role, called, { lie, ...own });
  }

  id(role: string): string {
    return this.idOf(this.roleOf(role));
  }

  private roleOf(role: string): string {
    return this.leaf && role !== GROUND ? `${this.leaf}-${role}` : role;
  }

  edge(role: string, side: Edge['side']): Edge {
    return { of: this.id(role), side };
  }

  /** An edge of one of a row. */
  edgeOfMember(role: string, column: number, row: number, side: Edge['side']): Edge {
    return { of: `${this.id(role)}[${column},${row}]`, side };
  }

  /** The space that a part takes up. */
  within(role: string): Space {
    return {
      left: this.edge(role, 'low'),
      right: this.edge(role, 'high'),
      bottom: this.edge(role, 'low'),
      top: this.edge(role, 'high'),
    };
  }

  between(role: string, axis: Axis, low: Edge, high: Edge, insetLow: Mm = 0, insetHigh: Mm = insetLow): void {
    this.rule('between', `${role}-${axis}`, { axis, part: this.id(role), low, high, insetLow, insetHigh });
  }

  /** Fills a space, a margin held back on all sides. */
  fill(role: string, space: Space, margin: Mm = 0): void {
    this.between(role, 'x', space.left, space.right, margin);
    this.between(role, 'y', space.bottom, space.top, margin);
  }

  set(role: string, axis: Axis, side: Edge['side'], from: Edge, distance: Mm = 0): void {
    this.rule('set', `${role}-${axis}-${side}`, { axis, edge: this.edge(role, side), from, distance });
  }

  /** A size that no stock decides. */
  size(role: string, axis: Axis, size: Mm): void {
    const edge = this.edge(role, 'high');
    this.rule('set', `${role}-${axis}-size`, { axis, edge, from: this.edge(role, 'low'), distance: size });
  }

  center(role: string, axis: Axis, low: Edge, high: Edge): void {
    this.rule('center', `${role}-${axis}-middle`, { axis, parts: [this.id(role)], low, high });
  }

  even(roles: readonly string[], axis: Axis, low: Edge, high: Edge): void {
    const [first] = roles;
    if (first === undefined) return;
    const parts = roles.map((role) => this.id(role));
    this.rule('even', `${first}-${axis}-even`, { axis, parts, low, high, mode: 'gaps' });
  }

  /** Fills from `low` to `high` by parts whose sizes are in a ratio. */
  shared(
    roles: readonly string[],
    ratio: readonly number[],
    axis: Axis,
    low: Edge,
    high: Edge,
    gap: Mm,
  ): void {
    const [first] = roles;
    if (first === undefined) return;
    const parts = roles.map((role) => this.id(role));
    this.rule('graded', `${first}-${axis}-graded`, { axis, parts, low, high, ratio, gap });
  }

  /** Stripes as wide as the gaps between them and at both ends. */
  stripes(roles: readonly string[], axis: Axis, low: Edge, high: Edge): void {
    const [first] = roles;
    const last = roles.at(-1);
    if (first === undefined || last === undefined) return;
    const [from, to] = [this.edge(first, 'low'), this.edge(first, 'high')];
    roles.forEach((role, i) => {
      const before = roles[i - 1];
      const beside = before === undefined ? low : this.edge(before, 'high');
      const own = { axis, edge: this.edge(role, 'low'), from: beside, likeEdge: to, likeFrom: from };
      this.rule('gap', `${role}-${axis}-gap`, own);
    });
    const end = { axis, edge: this.edge(last, 'high'), from: high, likeEdge: from, likeFrom: to };
    this.rule('gap', `${first}-${axis}-end`, end);
    const parts = roles.map((role) => this.id(role));
    if (parts.length > 1) this.rule('same', `${first}-${axis}-same`, { axis, parts });
  }

  /** How wide strips of a flat stock are seen from the front. */
  widthOf(id: string): Mm {
    const found = this.has.stocks.get(id);
    return found && found.form !== 'sheet' ? found.width : 0;
  }

  private rule<K extends RuleKind>(kind: K, role: string, fields: Fields<K>): void {
    const own = this.roleOf(role);
    this.rules.set(own, { id: this.idOf(`rule.${own}`), kind, ...fields } as unknown as Rule);
  }
}
