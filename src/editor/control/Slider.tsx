import { useId } from 'react';
import '../style/slider.css';

interface SliderProps {
  readonly label: string;
  readonly hint: string;
  readonly min: number;
  readonly max: number;
  readonly value: number;
  /** The value in words. */
  readonly told: string;
  readonly onChange: (value: number) => void;
}

/** A number that is set by eye: a slider, with what it stands at. */
export function Slider({ label, hint, min, max, value, told, onChange }: SliderProps) {
  const id = useId();
  return (
    <div className="slider">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <output htmlFor={id}>{told}</output>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={1}
        value={value}
        aria-valuetext={told}
        aria-describedby={`${id}-hint`}
        onChange={(e) => onChange(e.currentTarget.valueAsNumber)}
      />
      <p id={`${id}-hint`} className="field-hint">
        {hint}
      </p>
    </div>
  );
}
