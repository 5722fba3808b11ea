import { formatLength } from '../../measure/format.ts';
import type { Mm } from '../../measure/units.ts';
import { useMeasureStyle } from '../state/hooks.ts';
import { type Filling, Typeset } from './Typeset.tsx';

/** A length in the design's unit. */
export function Measure({ mm, as: Filled, ...rest }: { mm: Mm } & Filling) {
  const style = useMeasureStyle();
  const measure = <Typeset as="span" className="measure" text={formatLength(mm, style)} />;
  return Filled ? <Filled {...rest}>{measure}</Filled> : measure;
}
