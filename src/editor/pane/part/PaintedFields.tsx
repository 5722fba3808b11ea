import type { PartOf } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { SHAPE_FIELDS } from './shapeFields.ts';
import { usePart } from './usePart.ts';

export function PaintedFields({ part }: { part: PartOf<'painted' | 'lettering'> }) {
  const { laid, change } = usePart(part);
  return <FieldGrid of={SHAPE_FIELDS} value={laid} onChange={change} />;
}
