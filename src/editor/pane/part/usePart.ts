import type { Part } from '../../../design/schema.ts';
import type { Box } from '../../../geometry/shape.ts';
import { editsToPlace } from '../../action/place.ts';
import { layoutOf } from '../../state/derive.ts';
import { useCommit, useDesign } from '../../state/hooks.ts';
import { t } from '../../words/t.ts';

/** The part's box as laid out, and the ways to change the part from fields. */
export function usePart<P extends Part>(part: P) {
  const design = useDesign();
  const commit = useCommit();
  const box = layoutOf(design).boxes.get(part.id) ?? part.box;
  const held = new Set([part.id]);
  return {
    box,
    /** Changes fields of the part. */
    change: (fields: Partial<P>) =>
      commit(
        [{ kind: 'replace', list: 'parts', id: part.id, item: { ...part, ...fields } }],
        t('did.change', { name: part.name }),
        { held },
      ),
    /** Places or sizes it; rules that place it follow with their measures. */
    place: (sides: Partial<Box>) =>
      commit(
        editsToPlace(design, new Map([[part.id, box]]), new Map([[part.id, { ...box, ...sides }]])),
        t('did.change', { name: part.name }),
        { held },
      ),
  };
}
