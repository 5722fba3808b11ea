import type { Edit } from '../../design/edit/edit.ts';
import { inserting } from '../../design/edit/make.ts';
import { shapeOf } from '../../design/rule/table.ts';
import type { Axis, Design, Edge, Rule, RuleKind } from '../../design/schema.ts';
import type { Layout } from '../../layout/laid.ts';
import { inches } from '../../measure/units.ts';
import { edgeOfBox } from '../document/edges.ts';
import { freeId } from './ids.ts';
import { editsToLoosen } from './loosen.ts';

/** A question of the form beside the axis, in its order. */
type Asked = 'ends' | 'mode' | 'ratio';

interface Given {
  readonly id: string;
  readonly parts: readonly string[];
  readonly ends: { readonly low: Edge; readonly high: Edge };
  readonly layout: Layout;
}

/** How several parts are given a rule of a kind together. */
interface SharedRule {
  readonly asks: readonly Asked[];
  make(draft: SharedDraft, given: Given): Rule | null;
}

const KINDS = {
  even: {
    asks: ['ends', 'mode'],
    make: ({ axis, mode }, { id, parts, ends, layout }) => {
      const extra =
        mode === 'centers'
          ? { pitch: pitchNow(layout, parts, axis) }
          : mode === 'most'
            ? { most: inches(3) }
            : {};
      return { id, kind: 'even', axis, parts, ...ends, mode, ...extra };
    },
  },
  center: {
    asks: ['ends'],
    make: ({ axis }, { id, parts, ends }) => ({ id, kind: 'center', axis, parts, ...ends }),
  },
  same: { asks: [], make: ({ axis }, { id, parts }) => ({ id, kind: 'same', axis, parts }) },
  graded: {
    asks: ['ends', 'ratio'],
    make: (draft, { id, parts, ends }) => {
      const ratio = readRatio(draft.ratio, parts.length);
      return ratio && { id, kind: 'graded', axis: draft.axis, parts, ...ends, ratio, gap: 0 };
    },
  },
} as const satisfies Readonly<Partial<Record<RuleKind, SharedRule>>>;

export type SharedRuleKind = keyof typeof KINDS;
/** Rules that several parts can be given together. */
export const SHARED_RULES: Readonly<Record<SharedRuleKind, SharedRule>> = KINDS;

export interface SharedDraft {
  readonly kind: SharedRuleKind;
  readonly axis: Axis;
  readonly mode: Extract<Rule, { kind: 'even' }>['mode'];
  /** What they stand between: one thing's own two edges, or the facing edges of two things. */
  readonly low: string;
  readonly high: string;
  /** `graded`: sizes in this ratio, as typed. */
  readonly ratio: string;
}

/** The ratio as typed: `1 : 2 : 3`; null when it does not name a size for each part. */
export function readRatio(text: string, count: number): number[] | null {
  const numbers = text
    .split(/[:,;\s]+/)
    .filter(Boolean)
    .map(Number);
  return numbers.length === count && numbers.every((n) => n > 0 && n <= 1000) ? numbers : null;
}

/** The edits that give parts a rule together; what placed them along that axis before gives way. */
export function editsForShared(
  design: Design,
  layout: Layout,
  ids: readonly string[],
  draft: SharedDraft,
): Edit[] {
  const { axis } = draft;
  const parts = [...ids].sort((a, b) => middleOf(layout, a, axis) - middleOf(layout, b, axis));
  const given = { id: freeId(design, 'rule'), parts, ends: spanOf(draft), layout };
  const item = SHARED_RULES[draft.kind].make(draft, given);
  if (!item) return [];
  const loosen = shapeOf(item).pulled !== 'size' ? editsToLoosen(design, new Set(ids), axis, 'each') : [];
  return [...loosen, inserting('rules', item)];
}

function spanOf({ low, high }: SharedDraft): Given['ends'] {
  const one = low === high;
  return {
    low: { of: low, side: one ? 'low' : 'high' },
    high: { of: high, side: one ? 'high' : 'low' },
  };
}

const middleOf = (layout: Layout, id: string, axis: Axis) => {
  const box = layout.boxes.get(id);
  return box ? edgeOfBox(box, axis, 'mid') : 0;
};

/** Their centers' distance as they stand, so that holding it moves little. */
function pitchNow(layout: Layout, parts: readonly string[], axis: Axis): number {
  const [first] = parts;
  const last = parts.at(-1);
  if (first === undefined || last === undefined || parts.length < 2) return inches(3);
  const span = middleOf(layout, last, axis) - middleOf(layout, first, axis);
  return Math.max(1, span / (parts.length - 1));
}
