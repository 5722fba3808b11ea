import type { Face } from '../../../bed/face.ts';
import type { Axis, Design, Edge, Part, Rule } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import type { Layout } from '../../../layout/laid.ts';
import { freeId } from '../../action/ids.ts';
import { edgeOfBox } from '../../action/place.ts';
import { boxOfReference } from '../../canvas/dimensions.ts';
import { boundsFor } from '../../state/derive.ts';

/** Rules that one part can be given from the inspector. */
export const NEW_RULES = ['set', 'center', 'between', 'reveal', 'mirror', 'same'] as const;
export type NewRuleKind = (typeof NEW_RULES)[number];

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

/**
 * What a rule of a kind is proposed to be about: a margin and a center what lies around the part, the innermost of the
 * frames around it and of what it lies on; a mirror image and a size another part; all else the face.
 */
export function proposed(
  design: Design,
  face: Face,
  layout: Layout,
  part: Part,
  kind: NewRuleKind,
): Pick<RuleDraft, 'to' | 'and' | 'inner'> {
  const one = (to: string, inner = false) => ({ to, and: to, inner });
  if (kind === 'mirror' || kind === 'same')
    return one(design.parts.find((other) => other.id !== part.id)?.id ?? 'face');
  if (kind !== 'reveal' && kind !== 'center') return one('face');
  const box = layout.boxes.get(part.id) ?? part.box;
  const frames = [...boundsFor(layout).values()].flatMap(({ id, inner }) =>
    inner && id !== part.id && surrounds(inner, box) ? { ...one(id, true), box: inner } : [],
  );
  const on = layout.parts.find((laid) => laid.part === part.id)?.on ?? 'face';
  const beneath = design.parts.some(({ id }) => id === on) || on === 'face' ? on : `level:${on}`;
  const under = boxOfReference(beneath, face, layout, false) ?? face.box;
  const area = (b: Box) => b.w * b.h;
  const [least] = [{ ...one(beneath), box: under }, ...frames].sort((a, b) => area(a.box) - area(b.box));
  return least ? one(least.to, least.inner) : one('face');
}

const surrounds = (outer: Box, b: Box): boolean =>
  outer.x <= b.x && outer.y <= b.y && outer.x + outer.w >= b.x + b.w && outer.y + outer.h >= b.y + b.h;

/** A rule that holds the part where it stands now, so that adding one moves nothing without cause. */
export function newRule(
  design: Design,
  face: Face,
  layout: Layout,
  part: Part,
  draft: RuleDraft,
): Rule | null {
  const id = freeId(design, 'rule');
  const box = layout.boxes.get(part.id) ?? part.box;
  const { axis } = draft;
  const edge = (of: string, side: Edge['side']): Edge =>
    draft.inner ? { of, side, inner: true } : { of, side };
  switch (draft.kind) {
    case 'set': {
      const from = boxOfReference(draft.to, face, layout, draft.inner);
      if (!from) return null;
      const distance = edgeOfBox(box, axis, draft.side) - edgeOfBox(from, axis, draft.toSide);
      return {
        id,
        kind: 'set',
        axis,
        edge: { of: part.id, side: draft.side },
        from: edge(draft.to, draft.toSide),
        distance,
      };
    }
    case 'center':
      return { id, kind: 'center', axis, parts: [part.id], ...span(draft, edge) };
    case 'between': {
      return { id, kind: 'between', axis, part: part.id, ...span(draft, edge), insetLow: 0, insetHigh: 0 };
    }
    case 'reveal': {
      const around = boxOfReference(draft.to, face, layout, draft.inner);
      if (!around) return null;
      return {
        id,
        kind: 'reveal',
        part: part.id,
        inside: draft.to,
        inner: draft.inner,
        margin: Math.max(0, box.x - around.x),
      };
    }
    case 'mirror':
      if (draft.to === part.id || !design.parts.some((p) => p.id === draft.to)) return null;
      return { id, kind: 'mirror', axis, part: draft.to, twin: part.id, about: { of: 'face', side: 'mid' } };
    case 'same':
      if (draft.to === part.id || !design.parts.some((p) => p.id === draft.to)) return null;
      return { id, kind: 'same', axis, parts: [draft.to, part.id] };
  }
}

/** One thing's own two edges, or the facing edges of two things. */
function span(draft: RuleDraft, edge: (of: string, side: Edge['side']) => Edge): { low: Edge; high: Edge } {
  const one = draft.to === draft.and;
  return one
    ? { low: edge(draft.to, 'low'), high: edge(draft.and, 'high') }
    : { low: edge(draft.to, 'high'), high: edge(draft.and, 'low') };
}
