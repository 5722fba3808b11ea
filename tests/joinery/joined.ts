import { planJoinery } from '../../src/joinery/joinery.ts';
import type { Joinery } from '../../src/joinery/piece.ts';
import type { Layout } from '../../src/layout/laid.ts';
import type { Deg } from '../../src/measure/units.ts';
import { STOCKS } from '../layout/sample.ts';

/** The joinery of a layout made of the sample's stocks, by a saw that turns so far. */
export const joineryOf = ({ parts }: Pick<Layout, 'parts'>, miter: Deg): Joinery =>
  planJoinery({
    parts,
    joints: [],
    stocks: STOCKS,
    shop: { saw: { miter, bevel: 45 }, fitAllowance: 12 },
    measure: { unit: 'mm', fraction: '16' },
  });
