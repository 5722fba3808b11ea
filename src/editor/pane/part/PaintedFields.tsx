import type { Painted } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import { SHAPE_FIELDS } from './shapeFields.ts';
import { usePart } from './usePart.ts';

export function PaintedFields({ part }: { part: Painted }) {
  const { laid, change } = usePart(part);
  return (
    <div className="fields">
      <Fields of={SHAPE_FIELDS} value={laid} onChange={change} />
    </div>
  );
}
