import type { Strip } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { stockChoices } from '../facts/choices.ts';
import { EndFields } from './EndFields.tsx';
import { usePart } from './usePart.ts';

/** A strip that lies the other way keeps its length and its middle. */
function laidAs(lie: Strip['lie'], strip: Strip): Partial<Strip> {
  const { box } = strip;
  const length = strip.lie === 'up' ? box.h : strip.lie === 'across' ? box.w : strip.length;
  const narrow = Math.min(box.w, box.h);
  const cx = box.x + box.w / 2;
  const cy = box.y + box.h / 2;
  if (lie === 'across')
    return { lie, length, box: { x: cx - length / 2, y: cy - narrow / 2, w: length, h: narrow } };
  if (lie === 'up')
    return { lie, length, box: { x: cx - narrow / 2, y: cy - length / 2, w: narrow, h: length } };
  return { lie, length, angle: lie === 'turned' && strip.angle === 0 ? 45 : strip.angle };
}

const turned = ({ lie }: Strip) => lie === 'turned';

const LIE_FIELDS: readonly FormField<Strip>[] = [
  {
    is: 'choice',
    label: 'part.stock',
    field: 'stock',
    place: 'wide',
    of: ({ stock }, design) => stockChoices(design, ['flat', 'shaped'], stock),
  },
  {
    is: 'choice',
    label: 'strip.lie',
    of: named('lie', ['across', 'up', 'rising', 'falling', 'turned']),
    get: ({ lie }) => lie,
    put: laidAs,
  },
  { is: 'number', label: 'strip.angle', field: 'angle', when: turned, unit: '°', min: -180, max: 180 },
  { is: 'length', label: 'size.length', field: 'length', when: turned, min: 1 },
];

const MADE_FIELDS: readonly FormField<Strip>[] = [
  { is: 'switch', label: 'strip.onEdge', field: 'onEdge' },
  { is: 'switch', label: 'strip.fit', field: 'fit' },
];

export function StripFields({ part }: { part: Strip }) {
  const { laid, change } = usePart(part);
  return (
    <div className="fields">
      <Fields of={LIE_FIELDS} value={laid} onChange={change} />
      <EndFields part={part} onCommit={(ends) => change({ ends })} />
      <Fields of={MADE_FIELDS} value={laid} onChange={change} />
    </div>
  );
}
