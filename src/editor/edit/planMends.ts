import { faceOf } from '../../bed/faceOf.ts';
import type { Check } from '../../check/check.ts';
import type { CheckCode } from '../../check/codes.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { Part } from '../../design/schema.ts';
import type { Shown } from '../document/shown.ts';
import type { Mend } from './mend.ts';
import { concerned } from './mend.ts';
import { swingMends } from './swingMends.ts';
import { editsToType } from './typed.ts';

/** Ways to mend what only the whole plan finds: of the swing, the legs and what is driven in. */
type Ways = (shown: Shown, checks: readonly Check[]) => Mend[];

/** The part of the check fixed otherwise. */
const fixed =
  (how: 'glue' | 'screws', fixing: (part: Part) => Part['fixing']): Ways =>
  ({ design }, checks) => {
    const part = concerned(design, checks);
    if (!part) return [];
    const item = { ...part, fixing: fixing(part) } as Part;
    const edits: Edit[] = [replacing('parts', item)];
    return [{ how, parts: [part.id], to: '', edits }];
  };

const glued = fixed('glue', () => ({ how: 'glue', glue: true }));
const screwed = fixed('screws', ({ fixing }) => ({ ...fixing, how: 'screws' }));

/** Legs as long as the lowered face stands above the floor. */
const legs: Ways = ({ design: { bed } }, [check]) => {
  const length = Number(check?.figures.needed_mm);
  if (!(length > 0)) return [];
  const value = { ...bed, legs: { ...bed.legs, length } };
  if (faceOf(value).checks.some(({ code }) => code === 'bed.legs')) return [];
  return [{ how: 'legs', parts: [], to: '', by: length, edits: [{ kind: 'set', field: 'bed', value }] }];
};

/** Moved in by as much as it reaches into what stands beside the bed. */
const movedIn: Ways = (shown, checks) => {
  const { design, layout } = shown;
  const part = concerned(design, checks);
  const box = part && layout.boxes.get(part.id);
  if (!part || part.locked || !box) return [];
  const { id } = part;
  const over = Math.max(...checks.map(({ figures }) => Number(figures.over_mm)));
  const by = checks[0]?.figures.side === 'left' ? over : -over;
  const { edits } = editsToType(shown, id, box, { x: box.x + by });
  return [{ how: 'move', parts: [id], to: '', axis: 'x', by, edits }];
};

/** A primer that hides the wood under what lets it show, left out. */
const unprimed: Ways = ({ design }, [check]) => {
  const finish = design.finishes.find(({ id }) => id === check?.figures.finish);
  if (!finish) return [];
  const item = { ...finish, primer: null };
  return [{ how: 'primer', parts: [], to: '', edits: [replacing('finishes', item)] }];
};

export const PLAN_MENDS: Readonly<Partial<Record<CheckCode, Ways>>> = {
  'bed.legs': legs,
  'fold.hits-floor': swingMends,
  'fold.hits-wall': swingMends,
  'fold.hits-ceiling': swingMends,
  'fold.hits-legs': swingMends,
  'fold.hits-side': movedIn,
  'fastening.loose-edge': glued,
  'finish.primer-hides': unprimed,
  'fastening.through': glued,
  'fastening.no-brad': glued,
  'fastening.few': glued,
  'fastening.lever': screwed,
  'fastening.screws': screwed,
};
