import { NumberField, type NumberFieldProps } from '../NumberField.tsx';

/** A unit as a field shows it: how many of the plan's own unit one of it is. */
export interface FieldUnit {
  readonly name: string;
  readonly size: number;
}

/** The value is in the plan's own unit; limits and steps are in the one shown. */
interface UnitFieldProps extends Omit<NumberFieldProps, 'unit'> {
  readonly unit: FieldUnit;
  readonly digits: number;
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
