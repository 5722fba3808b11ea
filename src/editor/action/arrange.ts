import type { Edit } from '../../design/edit/edit.ts';
import type { Design } from '../../design/schema.ts';
import type { Arranged, Arranging } from '../../layout/arrange/arranged.ts';
import { inputOf, layoutOf } from '../state/derive.ts';
import { freeName } from './ids.ts';

/** What arrangements of the layout room work from. */
export function arrangingOf(design: Design): Arranging {
  return { input: { ...inputOf(design), design }, layout: layoutOf(design) };
}

/** An arrangement as edits; copies get names of their own. */
export function editsToArrange(design: Design, arranged: Arranged): Edit[] {
  const names = design.parts.map((p) => p.name);
  const add = arranged.add.map((part) => {
    if (!names.includes(part.name)) return part;
    const name = freeName(names, part.name.replace(/ \d+$/, ''));
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
