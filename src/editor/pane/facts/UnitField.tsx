import { NumberField } from '../../control/NumberField.tsx';

interface UnitFieldProps {
  readonly label: string;
  /** In the design's own unit. */
  readonly value: number;
  readonly onCommit: (value: number) => void;
  readonly unit: { readonly name: string; readonly size: number };
  /** In the unit shown. */
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  readonly step?: number | undefined;
  readonly digits: number;
  readonly hint?: string | undefined;
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
