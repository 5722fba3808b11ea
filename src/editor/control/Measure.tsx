import { formatLength } from '../../measure/format.ts';
import type { Mm } from '../../measure/units.ts';
import { useMeasureStyle } from '../state/hooks.ts';
import { Typeset } from './Typeset.tsx';

/** A length in the design's unit. */
export function Measure({ mm }: { mm: Mm }) {
  const style = useMeasureStyle();
  return (
    <span className="measure">
      <Typeset text={formatLength(mm, style)} />
    </span>
  );
}
