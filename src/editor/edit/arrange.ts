import type { Edit } from '../../design/edit/edit.ts';
import type { Axis, Design } from '../../design/schema.ts';
import type { Arranged, Arranging } from '../../layout/arrange/arranged.ts';
import type { Shown } from '../document/shown.ts';
import { t } from '../words/t.ts';
import { freeName } from './ids.ts';

/** What arrangements of the layout room work from. */
export const arrangingOf = (shown: Shown): Arranging => ({ input: shown, layout: shown.layout });

/** An arrangement as edits; copies get names of their own. */
export function editsToArrange(design: Design, arranged: Arranged): Edit[] {
  const names = design.parts.map((p) => p.name);
  const axes = new Map(arranged.rules.flatMap((r) => (r.kind === 'mirror' ? [[r.twin, r.axis]] : [])));
  const add = arranged.add.map((part) => {
    const axis = axes.get(part.id);
    const wanted = axis ? onOtherSide(part.name, axis) : part.name;
    const name = names.includes(wanted) ? freeName(names, wanted.replace(/ \d+$/, '')) : wanted;
    names.push(name);
    return { ...part, name };
  });
  return [
    ...add.map((item): Edit => ({ kind: 'insert', list: 'parts', item })),
    ...arranged.change.map((item): Edit => ({ kind: 'replace', list: 'parts', id: item.id, item })),
    ...arranged.rules.map((item): Edit => ({ kind: 'insert', list: 'rules', item })),
    ...arranged.joints.map((item): Edit => ({ kind: 'insert', list: 'joints', item })),
  ];
}

/** The name of a mirror image: what was left is right in it, what was upper is lower. */
function onOtherSide(name: string, axis: Axis): string {
  const [one, other] =
    axis === 'x'
      ? ([t('side.left'), t('side.right')] as const)
      : ([t('side.upper'), t('side.lower')] as const);
  const words = new RegExp(`(?<!\\p{L})(${one}|${other})`, 'giu');
  return name.replace(words, (word) => {
    const turned = word.toLowerCase() === one ? other : one;
    const isCapital = word.charAt(0) !== word.charAt(0).toLowerCase();
    return isCapital ? turned.charAt(0).toUpperCase() + turned.slice(1) : turned;
  });
}
