import type { Painted } from '../../../design/schema.ts';
import { ShapeFields } from './ShapeFields.tsx';
import { usePart } from './usePart.ts';

export function PaintedFields({ part }: { part: Painted }) {
  const { box, change } = usePart(part);
  return (
    <div className="fields">
      <ShapeFields shape={part.shape} box={box} onCommit={(shape) => change({ shape })} />
    </div>
  );
}
