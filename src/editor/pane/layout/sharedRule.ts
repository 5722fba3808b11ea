import type { Edit } from '../../../design/edit/edit.ts';
import type { Axis, Design, Edge, Rule } from '../../../design/schema.ts';
import type { Layout } from '../../../layout/laid.ts';
import { inches } from '../../../measure/units.ts';
import { freeId } from '../../action/ids.ts';
import { editsToLoosen } from '../../action/loosen.ts';
import { edgeOfBox } from '../../action/place.ts';

/** Rules that several parts can be given together. */
export const SHARED_RULES = ['even', 'center', 'same', 'graded'] as const;
export type SharedRuleKind = (typeof SHARED_RULES)[number];

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
  const id = freeId(design, 'rule');
  const [low, high] = spanOf(draft);
  const loosen = draft.kind === 'same' ? [] : editsToLoosen(design, new Set(ids), axis, 'each');
  const hold = (item: Rule): Edit[] => [...loosen, { kind: 'insert', list: 'rules', item }];
  switch (draft.kind) {
    case 'even': {
      const { mode } = draft;
      const extra =
        mode === 'centers'
          ? { pitch: pitchNow(layout, parts, axis) }
          : mode === 'most'
            ? { most: inches(3) }
            : {};
      return hold({ id, kind: 'even', axis, parts, low, high, mode, ...extra });
    }
    case 'center':
      return hold({ id, kind: 'center', axis, parts, low, high });
    case 'same':
      return hold({ id, kind: 'same', axis, parts });
    case 'graded': {
      const ratio = readRatio(draft.ratio, parts.length);
      return ratio ? hold({ id, kind: 'graded', axis, parts, low, high, ratio, gap: 0 }) : [];
    }
  }
}

function spanOf({ low, high }: SharedDraft): [Edge, Edge] {
  const one = low === high;
  return [
    { of: low, side: one ? 'low' : 'high' },
    { of: high, side: one ? 'high' : 'low' },
  ];
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
