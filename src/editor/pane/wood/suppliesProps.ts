import type { Design, ShedSupplies } from '../../../design/schema.ts';

/** What the fields of the shed are given. */
export interface SuppliesProps {
  readonly design: Design;
  readonly supplies: ShedSupplies;
  readonly put: (fields: Partial<ShedSupplies>) => void;
}
