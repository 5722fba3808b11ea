import { faceOf } from '../../bed/faceOf.ts';
import type { Check } from '../../check/check.ts';
import type { CheckCode } from '../../check/codes.ts';
import type { Edit } from '../../design/edit/edit.ts';
import type { Part } from '../../design/schema.ts';
import { designPart } from '../../layout/reference.ts';
import type { Shown } from '../document/shown.ts';
import type { Mend } from './mend.ts';
import { editsToType } from './typed.ts';

/** Ways to mend one check that only the whole plan finds: of the swing, the legs and what is driven in. */
type Ways = (shown: Shown, check: Check) => Mend[];

/** The part of the check fixed otherwise. */
const fixed =
  (how: 'glue' | 'screws', fixing: (part: Part) => Part['fixing']): Ways =>
  ({ design }, { parts }) => {
    const id = designPart(parts[0] ?? '');
    const part = design.parts.find((one) => one.id === id);
    if (!part) return [];
    const item = { ...part, fixing: fixing(part) } as Part;
    const edits: Edit[] = [{ kind: 'replace', list: 'parts', id, item }];
    return [{ how, parts: [id], to: '', edits }];
  };

const glued = fixed('glue', () => ({ how: 'glue', glue: true }));
const screwed = fixed('screws', ({ fixing }) => ({ ...fixing, how: 'screws' }));

/** Legs as long as the lowered face stands above the floor. */
const legs: Ways = ({ design: { bed } }, { figures }) => {
  const length = Number(figures.needed_mm);
  if (!(length > 0)) return [];
  const value = { ...bed, legs: { ...bed.legs, length } };
  if (faceOf(value).checks.some(({ code }) => code === 'bed.legs')) return [];
  return [{ how: 'legs', parts: [], to: '', by: length, edits: [{ kind: 'set', field: 'bed', value }] }];
};

/** Moved in by as much as it reaches into what stands beside the bed. */
const movedIn: Ways = (shown, { parts, figures }) => {
  const { design, layout } = shown;
  const id = designPart(parts[0] ?? '');
  const part = design.parts.find((one) => one.id === id);
  const box = layout.boxes.get(id);
  if (!part || part.locked || !box) return [];
  const by = figures.side === 'left' ? Number(figures.over_mm) : -Number(figures.over_mm);
  const { edits } = editsToType(shown, id, box, { x: box.x + by });
  return [{ how: 'move', parts: [id], to: '', axis: 'x', by, edits }];
};

export const PLAN_MENDS: Readonly<Partial<Record<CheckCode, Ways>>> = {
  'bed.legs': legs,
  'fold.hits-side': movedIn,
  'fastening.through': glued,
  'fastening.no-brad': glued,
  'fastening.few': glued,
  'fastening.lever': screwed,
  'fastening.screws': screwed,
};
