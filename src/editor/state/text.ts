import type { Design } from '../../design/schema.ts';
import { formatReading } from '../../measure/format.ts';
import type { Mm } from '../../measure/units.ts';
import { styleIn } from '../../plan/words/languages.ts';
import { spoken } from '../words/t.ts';

/** A length as the design shows lengths. */
export const lengthText = (design: Pick<Design, 'measure'>, mm: Mm): string =>
  formatReading(mm, styleIn(spoken(), design.measure));
