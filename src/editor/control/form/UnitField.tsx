import { NumberField } from '../NumberField.tsx';

/** A unit as a field shows it: how many of the plan's own unit one of it is. */
export interface FieldUnit {
  readonly name: string;
  readonly size: number;
}

interface UnitFieldProps {
  readonly label: string;
  /** In the design's own unit. */
  readonly value: number;
  readonly onCommit: (value: number) => void;
  readonly unit: FieldUnit;
  /** In the unit shown. */
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  readonly step?: number | undefined;
  readonly digits: number;
  readonly hint?: string | undefined;
  readonly disabled?: boolean | undefined;
}

/** A number kept in one unit and typed in another. */
export function UnitField({ value, onCommit, unit, digits, ...rest }: UnitFieldProps) {
  const shown = Number((value / unit.size).toFixed(digits));
  return (
    <NumberField
      {...rest}
      unit={unit.name}
      value={shown}
      // What was not changed is not rounded either.
      onCommit={(typed) => onCommit(typed === shown ? value : typed * unit.size)}
    />
  );
}
