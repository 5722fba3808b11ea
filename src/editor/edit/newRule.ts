import { edgeOf } from '../../design/edge.ts';
import type { Axis, Edge, Part, Rule, RuleKind } from '../../design/schema.ts';
import { boxArea, surrounds } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { boxOfReference, edgeOfBox } from '../document/edges.ts';
import { boundsFor, type Shown } from '../document/shown.ts';
import { freeId } from './ids.ts';

/** A question of the form, in its order. */
export type Asked = 'axis' | 'side' | 'to' | 'and' | 'toSide' | 'inner';

/** How one part is given a rule of a kind. */
interface NewRule {
  readonly asks: readonly Asked[];
  /** What it is proposed to be about: the face, what lies around the part, or another part. */
  readonly about: 'face' | 'around' | 'other';
  /** The rule that holds the part where it stands; null where the draft names nothing that is there. */
  make(draft: RuleDraft, where: Where): Rule | null;
}

interface Where {
  readonly id: string;
  readonly part: string;
  readonly box: Box;
  /** The box that an answer names. */
  around(): Box | null;
  edge(of: string, side: Edge['side']): Edge;
  /** Whether the answer is another part. */
  readonly isOther: boolean;
}

const BETWEEN = ['axis', 'to', 'and', 'inner'] as const;

/** Rules that one part can be given from the inspector. */
const KINDS = {
  set: {
    asks: ['axis', 'side', 'to', 'toSide', 'inner'],
    about: 'face',
    make: ({ axis, side, to, toSide }, { id, part, box, around, edge }) => {
      const from = around();
      if (!from) return null;
      const distance = edgeOfBox(box, axis, side) - edgeOfBox(from, axis, toSide);
      return { id, kind: 'set', axis, edge: { of: part, side }, from: edge(to, toSide), distance };
    },
  },
  center: {
    asks: BETWEEN,
    about: 'around',
    make: (draft, { id, part, edge }) => ({
      id,
      kind: 'center',
      axis: draft.axis,
      parts: [part],
      ...span(draft, edge),
    }),
  },
  between: {
    asks: BETWEEN,
    about: 'face',
    make: (draft, { id, part, edge }) => ({
      id,
      kind: 'between',
      axis: draft.axis,
      part,
      ...span(draft, edge),
      insetLow: 0,
      insetHigh: 0,
    }),
  },
  reveal: {
    asks: ['to', 'inner'],
    about: 'around',
    make: ({ to, inner }, { id, part, box, around }) => {
      const outside = around();
      if (!outside) return null;
      return { id, kind: 'reveal', part, inside: to, inner, margin: Math.max(0, box.x - outside.x) };
    },
  },
  mirror: {
    asks: ['axis', 'to'],
    about: 'other',
    make: ({ axis, to }, { id, part, isOther }) =>
      isOther ? { id, kind: 'mirror', axis, part: to, twin: part, about: { of: 'face', side: 'mid' } } : null,
  },
  same: {
    asks: ['axis', 'to'],
    about: 'other',
    make: ({ axis, to }, { id, part, isOther }) =>
      isOther ? { id, kind: 'same', axis, parts: [to, part] } : null,
  },
} as const satisfies Readonly<Partial<Record<RuleKind, NewRule>>>;

export type NewRuleKind = keyof typeof KINDS;
export const NEW_RULES: Readonly<Record<NewRuleKind, NewRule>> = KINDS;

export interface RuleDraft {
  readonly kind: NewRuleKind;
  readonly axis: Axis;
  /** Edge of the part that is set. */
  readonly side: Edge['side'];
  /** What it refers to: `face`, `level:…` or a part's id. */
  readonly to: string;
  /** `between`, `center`: the second thing; the same one for its two inner edges. */
  readonly and: string;
  readonly toSide: Edge['side'];
  readonly inner: boolean;
}

/** What a rule of a kind is proposed to be about; around a part lies the innermost of frames and of what it lies on. */
export function proposed(
  shown: Shown,
  part: Part,
  kind: NewRuleKind,
): Pick<RuleDraft, 'to' | 'and' | 'inner'> {
  const { design, face, layout } = shown;
  const one = (to: string, inner = false) => ({ to, and: to, inner });
  const { about } = NEW_RULES[kind];
  if (about === 'other') return one(design.parts.find((other) => other.id !== part.id)?.id ?? 'face');
  if (about === 'face') return one('face');
  const box = boxIn(layout.boxes, part);
  const frames = boundsFor(shown).flatMap(({ id, inner }) =>
    inner && id !== part.id && surrounds(inner, box) ? { ...one(id, true), box: inner } : [],
  );
  const on = layout.parts.find((laid) => laid.part === part.id)?.on ?? 'face';
  const beneath = design.parts.some(({ id }) => id === on) || on === 'face' ? on : `level:${on}`;
  const under = boxOfReference(beneath, shown) ?? face.box;
  const [least] = [{ ...one(beneath), box: under }, ...frames].sort(
    (a, b) => boxArea(a.box) - boxArea(b.box),
  );
  return least ? one(least.to, least.inner) : one('face');
}

/** A rule that holds the part where it stands now, so that adding one moves nothing without cause. */
export function newRule(shown: Shown, part: Part, draft: RuleDraft): Rule | null {
  const { design, layout } = shown;
  return NEW_RULES[draft.kind].make(draft, {
    id: freeId(design, 'rule'),
    part: part.id,
    box: boxIn(layout.boxes, part),
    around: () => boxOfReference(draft.to, shown, draft.inner),
    edge: (of, side) => edgeOf({ of, inner: draft.inner }, side),
    isOther: draft.to !== part.id && design.parts.some((p) => p.id === draft.to),
  });
}

/** One thing's own two edges, or the facing edges of two things. */
function span(draft: RuleDraft, edge: (of: string, side: Edge['side']) => Edge): { low: Edge; high: Edge } {
  const one = draft.to === draft.and;
  return one
    ? { low: edge(draft.to, 'low'), high: edge(draft.and, 'high') }
    : { low: edge(draft.to, 'high'), high: edge(draft.and, 'low') };
}
