import type { OwnAssembly } from '../../design/assembly/own.ts';
import { newPart } from '../../design/defaults.ts';
import { withStopsAt } from '../../design/ends.ts';
import { isBought } from '../../design/made.ts';
import { mentionsOf, partOfReference, partsListedBy, partsOfRule } from '../../design/references.ts';
import { inSlot, isAlong, slotsOf, withFields } from '../../design/rule/table.ts';
import type { Axis, Edge, Part, Rule } from '../../design/schema.ts';
import { boxArea, boxAround, surrounds } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { edgesAt } from '../../layout/edgeAt.ts';
import type { OfferedRule } from '../../layout/snap/snapping.ts';
import { AXES, middle, type Span, spanOf, withSpan } from '../../layout/span.ts';
import { isFixedAlong } from '../../layout/structure.ts';
import { under } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { boundsIn, type Shown, shownFrom } from '../document/shown.ts';
import { t } from '../words/t.ts';
import { copyOf } from './copy.ts';
import { numberedId } from './ids.ts';
import { partsIn } from './movable.ts';

/**
 * An assembly of what is selected, as it lies. Rules among its parts stay, what held them to things outside holds them
 * to its ground, and what nothing holds is held as it lies there; null where no part is selected.
 */
export function ownOf(shown: Shown, selection: readonly string[], name: string): OwnAssembly | null {
  const ids = partsIn(shown.design, selection);
  const bounds = new Map(ids.map((id) => [id, boundsIn(shown, id)?.box]));
  const whole = boxAround([...bounds.values()].flatMap((box) => box ?? []));
  if (!whole) return null;
  const making = new Making(shown, ids, whole);
  making.holdToGround();
  making.holdTheRest();
  const { parts, rules, ground } = making;
  const clip = copyOf(shown.design, shown.layout.boxes, ids);
  const own = new Set(parts.map((part) => part.id));
  const { groups, finishes, stocks, fonts, pictures, photos } = clip;
  const joints = clip.joints.filter((joint) =>
    joint.parts.flatMap(partOfReference).every((id) => own.has(id)),
  );
  const [across, up] = making.fits();
  return {
    showfaceAssembly: 1,
    name,
    ground,
    across,
    up,
    parts,
    rules,
    groups,
    joints,
    finishes,
    stocks,
    fonts,
    pictures,
    photos,
  };
}

/** What a free part does along an axis as the whole is stretched: it goes along with both ends, or stays at one place. */
type Way = 'stretch' | Edge['side'];

/** Parts and rules of an assembly that is being made. Where its parts lie is asked of the layout. */
class Making {
  readonly ground: string;
  readonly parts: readonly Part[];
  rules: readonly Rule[];
  /** Whether its ground is one of the parts that were selected. */
  private readonly isReal: boolean;
  private readonly at: ReadonlyMap<string, Box>;

  constructor(
    private readonly shown: Shown,
    ids: readonly string[],
    private readonly whole: Box,
  ) {
    const { design, layout } = shown;
    const { parts, rules } = copyOf(design, layout.boxes, ids);
    const is = new Set(ids);
    const isOwn = (of: string) => partOfReference(of).some((id) => is.has(id));
    const onNone = parts.filter(({ on }) => !is.has(on));
    const [lowest] = onNone;
    // What all else lies on is the ground, where it is as large as the whole; else a space without color is.
    this.isReal =
      lowest !== undefined && onNone.length === 1 && sameSides(boundsIn(shown, lowest.id)?.box, whole);
    this.ground = this.isReal && lowest ? lowest.id : numberedId(is, 'space');
    const free = parts.map((part): Part => {
      const within = withStopsAt(part, (at) => (isOwn(at) ? at : null));
      const on = is.has(part.on) ? part.on : part.id === this.ground ? 'face' : this.ground;
      return { ...within, on, locked: false };
    });
    const space = newPart('painted', { id: this.ground, name: t('own.space'), box: whole, finish: null });
    this.parts = this.isReal ? free : [space, ...free];
    // What names the face or a level as well is no matter of its parts alone.
    this.rules = rules.filter((rule) => {
      const { lead, follow } = mentionsOf(rule);
      return [...lead, ...follow].every(isOwn);
    });
    this.at = this.lieAt();
  }

  /** As it is laid with some parts to begin with; the ground is held in the hand. */
  private laid(parts: readonly Part[] = this.parts): Shown {
    const { design } = this.shown;
    const alone = { ...design, keepClears: [], groups: [], joints: [], parts, rules: this.rules };
    return shownFrom(alone, new Set([this.ground]));
  }

  /** The edges of parts that rules mean, as their rules have them. */
  private lieAt(parts = this.parts): ReadonlyMap<string, Box> {
    const laid = this.laid(parts);
    return new Map(parts.map(({ id, box }) => [id, boundsIn(laid, id)?.box ?? box]));
  }

  /** Its parts with a ground that is otherwise as long along both axes. */
  private onGroundOf(w: Mm, h: Mm): readonly Part[] {
    const [by, up] = [w - this.whole.w, h - this.whole.h];
    return this.parts.map((part) =>
      part.id === this.ground
        ? { ...part, box: { ...part.box, w: part.box.w + by, h: part.box.h + up } }
        : part,
    );
  }

  private spanOf(id: string, axis: Axis): Span {
    return spanOf(under(this.at, id), axis);
  }

  /** Rules with things outside go on with the ground where that says the same; the others are left out. */
  holdToGround(): void {
    const own = new Set(this.parts.map(({ id }) => id));
    const known = new Set(this.rules.map(({ id }) => id));
    const mapped = this.shown.design.rules
      .filter((rule) => !known.has(rule.id) && partsListedBy(rule).every((id) => own.has(id)))
      .flatMap((rule) => this.onGround(rule, own) ?? []);
    for (const rule of mapped) {
      const before = this.rules;
      this.rules = [...before, rule];
      if (!this.stays()) this.rules = before;
    }
  }

  /** Whether all parts lie as they did, every rule holding. */
  private stays(): boolean {
    const laid = this.laid();
    return (
      laid.layout.rules.every((rule) => rule.holds) &&
      this.parts.every(({ id }) => sameSides(boundsIn(laid, id)?.box, under(this.at, id)))
    );
  }

  /** A rule with each edge outside replaced by that of the ground which is nearest, measured anew; null: it says nothing. */
  private onGround(rule: Rule, own: ReadonlySet<string>): Rule | null {
    const { follow } = mentionsOf(rule);
    const isOwn = (of: string) => partOfReference(of).some((id) => own.has(id));
    if (!('axis' in rule) || !follow.every(isOwn) || follow.length === 0) return null;
    const span = spanOf(this.whole, rule.axis);
    const placeOf = edgesAt(this.shown, this.shown.layout, rule.axis);
    const fields = slotsOf(rule).flatMap((slot): [string, Edge][] => {
      const edge = slot.is === 'edge' ? inSlot(rule, slot) : null;
      if (!edge || isOwn(edge.of)) return [];
      const at = placeOf(edge);
      const inMiddle = at !== null && isMiddle(at, span);
      return [[slot.field, { of: this.ground, side: inMiddle ? 'mid' : sideFor(slot.field, edge.side) }]];
    });
    const held = withFields(rule, Object.fromEntries(fields));
    if (held.kind === 'set') {
      if (held.from.of !== this.ground || !this.at.has(held.edge.of)) return null;
      const at = placeIn(this.spanOf(held.edge.of, held.axis), held.edge.side);
      const side = held.from.side === 'mid' ? 'mid' : at <= middle(span) ? 'low' : 'high';
      return { ...held, from: { of: this.ground, side }, distance: at - placeIn(span, side) };
    }
    if (held.kind === 'between') {
      const own = this.spanOf(held.part, held.axis);
      const { low, high } = held;
      const insetLow = low.of === this.ground ? own.low - placeIn(span, low.side) : held.insetLow;
      const insetHigh = high.of === this.ground ? placeIn(span, high.side) - own.high : held.insetHigh;
      return { ...held, insetLow, insetHigh };
    }
    // What stood between two edges with gaps at the ends too stands from end to end of what is selected.
    if (held.kind === 'even' && held.mode !== 'centers') return { ...held, mode: 'flush' };
    return held;
  }

  /** Holds to the ground what its rules leave free: in each round one dimension of all that hangs together. */
  holdTheRest(): void {
    const inOrder = this.parts
      .filter(({ id }) => id !== this.ground)
      .sort((a, b) => boxArea(under(this.at, b.id)) - boxArea(under(this.at, a.id)));
    for (const axis of AXES) {
      const keepsLength = !this.isReal && !this.stretches(axis);
      if (keepsLength) this.add(this.lengthOf(this.ground, axis, 'low'));
      // Each part has two dimensions along an axis at most.
      for (let round = 0; round < 2 * inOrder.length; round++) {
        const free = this.freeEdges(axis);
        if (free.size === 0) break;
        const tied = this.tiedAlong(axis);
        const done = new Set<string>();
        for (const part of inOrder) {
          const edges = free.get(part.id);
          const root = tied(part.id);
          if (!edges || done.has(root)) continue;
          done.add(root);
          this.add(this.ruleFor(part, axis, edges, keepsLength ? 'low' : this.wayOf(part, axis)));
        }
      }
    }
  }

  /** By which part of its own all that rules tie together along an axis is known; the ground ties nothing. */
  private tiedAlong(axis: Axis): (id: string) => string {
    const to = new Map<string, string>();
    const root = (id: string): string => {
      const next = to.get(id);
      return next === undefined ? id : root(next);
    };
    for (const rule of this.rules) {
      if (!isAlong(rule, axis)) continue;
      const [first, ...more] = partsOfRule(rule).filter((id) => id !== this.ground);
      if (first === undefined) continue;
      for (const id of more) if (root(id) !== root(first)) to.set(root(id), root(first));
    }
    return root;
  }

  /** The parts whose edges lie elsewhere once they are put elsewhere: no rule says where those are. */
  private freeEdges(axis: Axis): ReadonlyMap<string, Free> {
    const elsewhere = this.parts.map((part, i): Part => {
      if (part.id === this.ground) return part;
      const { low, high } = spanOf(part.box, axis);
      const [by, larger] = [ELSEWHERE.by + (i % 7) / 8, ELSEWHERE.larger + (i % 5) / 8];
      return { ...part, box: withSpan(part.box, axis, low + by, high - low + larger) };
    });
    const now = this.lieAt(elsewhere);
    const found = this.parts.flatMap(({ id }): [string, Free][] => {
      const [was, is] = [this.spanOf(id, axis), spanOf(under(now, id), axis)];
      const free = {
        low: Math.abs(is.low - was.low) > SAME_PLACE,
        high: Math.abs(is.high - was.high) > SAME_PLACE,
        mid: Math.abs(middle(is) - middle(was)) > SAME_PLACE,
      };
      return id !== this.ground && (free.low || free.high) ? [[id, free]] : [];
    });
    return new Map(found);
  }

  /** Whether a longer ground parts what is held to both its ends, or a free part goes along with it. */
  private stretches(axis: Axis): boolean {
    const { w, h } = this.whole;
    const [longer, free] = [this.lieAt(this.onGroundOf(w + LONGER, h + LONGER)), this.freeEdges(axis)];
    const moves = this.parts.flatMap(({ id }): Mm[] => {
      if (id === this.ground || free.has(id)) return [];
      const [was, is] = [this.spanOf(id, axis), spanOf(under(longer, id), axis)];
      return [is.low - was.low, is.high - was.high];
    });
    if (Math.max(...moves) - Math.min(...moves) > SAME_PLACE) return true;
    return this.parts.some((part) => free.has(part.id) && this.wayOf(part, axis) === 'stretch');
  }

  /**
   * What is longer than half of the whole, or ends in its middle, goes along with both ends, but for what has its size
   * from its stock or a shop; the rest keeps its length at the nearer end, or in the middle. Our own choice.
   */
  private wayOf(part: Part, axis: Axis): Way {
    const own = this.spanOf(part.id, axis);
    const all = spanOf(this.whole, axis);
    const isLong =
      own.high - own.low > (all.high - all.low) / 2 || isMiddle(own.low, all) || isMiddle(own.high, all);
    if (isLong && !isFixedAlong(part, axis) && !isBought(part)) return 'stretch';
    return isMiddle(middle(own), all) ? 'mid' : middle(own) < middle(all) ? 'low' : 'high';
  }

  /** The rule that holds one dimension of a part: first where it is, then how long it is. */
  private ruleFor({ id }: Part, axis: Axis, free: Free, way: Way): OfferedRule {
    const own = this.spanOf(id, axis);
    const all = spanOf(this.whole, axis);
    const to = (side: 'low' | 'high'): OfferedRule => {
      const [edge, from] = [
        { of: id, side },
        { of: this.ground, side },
      ] as const;
      return { kind: 'set', axis, edge, from, distance: own[side] - all[side] };
    };
    if (way === 'stretch') return to(free.low ? 'low' : 'high');
    if (way === 'mid') {
      const [low, high] = (['low', 'high'] as const).map((side) => ({ of: this.ground, side }));
      if (free.mid && low && high) return { kind: 'center', axis, parts: [id], low, high };
      return this.lengthOf(id, axis, 'low');
    }
    return free[way] ? to(way) : this.lengthOf(id, axis, way);
  }

  private lengthOf(id: string, axis: Axis, held: 'low' | 'high'): OfferedRule {
    const { low, high } = this.spanOf(id, axis);
    const side = held === 'low' ? 'high' : 'low';
    const distance = held === 'low' ? high - low : low - high;
    return { kind: 'set', axis, edge: { of: id, side }, from: { of: id, side: held }, distance };
  }

  private add(rule: OfferedRule): void {
    const id = numberedId(new Set(this.rules.map((one) => one.id)), 'held');
    this.rules = [...this.rules, { ...rule, id } as Rule];
  }

  /** How long it is along each axis, and the least that all of it fits into. */
  fits(): readonly [OwnAssembly['across'], OwnAssembly['up']] {
    const { w, h } = this.whole;
    const known = new Set(checksOf(this.laid()));
    const isSound = (w: Mm, h: Mm): boolean => {
      const laid = this.laid(this.onGroundOf(w, h));
      return laid.layout.rules.every((rule) => rule.holds) && checksOf(laid).every((told) => known.has(told));
    };
    const longer = under(this.lieAt(this.onGroundOf(w + LONGER, h + LONGER)), this.ground);
    const keeps = { x: longer.w < w + LONGER / 2, y: longer.h < h + LONGER / 2 };
    let least = {
      w: keeps.x ? w : leastOf(w, (length) => isSound(length, h)),
      h: keeps.y ? h : leastOf(h, (length) => isSound(w, length)),
    };
    // What is short both ways may not be sound where each way is by itself.
    while (least.w + least.h < w + h - SAME_PLACE && !isSound(least.w, least.h))
      least = { w: (least.w + w) / 2, h: (least.h + h) / 2 };
    return [
      { size: w, least: keeps.x ? null : least.w },
      { size: h, least: keeps.y ? null : least.h },
    ];
  }
}

/** Which places of a part no rule tells. */
interface Free {
  readonly low: boolean;
  readonly high: boolean;
  readonly mid: boolean;
}

/** How far parts are put from where they lie, and how much longer they are made, to see what holds them; in mm. */
const ELSEWHERE = { by: 3, larger: 2 };
/** How much longer a ground is made to see what goes along. */
const LONGER: Mm = 10;
/** No assembly is offered for a space shorter than this share of its length, and so many halvings find the least. */
const SHORTEST = { share: 1 / 4, halvings: 5 };

/** The least length that is sound, nearly, where longer ones are. */
function leastOf(length: Mm, isSound: (length: Mm) => boolean): Mm {
  let [short, long] = [length * SHORTEST.share, length];
  if (isSound(short)) return short;
  for (let n = 0; n < SHORTEST.halvings; n++) {
    const half = (short + long) / 2;
    if (isSound(half)) long = half;
    else short = half;
  }
  return long;
}

const checksOf = ({ layout }: Shown): string[] =>
  layout.checks.map(({ code, parts }) => `${code} ${parts.join()}`);

const placeIn = (span: Span, side: Edge['side']): Mm => (side === 'mid' ? middle(span) : span[side]);

const isMiddle = (at: Mm, span: Span): boolean => Math.abs(at - middle(span)) < SAME_PLACE;

/** A slot of two edges names its side itself. */
const sideFor = (field: string, side: Edge['side']): Edge['side'] =>
  field === 'low' || field === 'high' ? field : side;

const sameSides = (a: Box | undefined, b: Box): boolean =>
  a !== undefined && surrounds(a, b, SAME_PLACE) && surrounds(b, a, SAME_PLACE);
