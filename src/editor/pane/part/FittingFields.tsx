import type { Fitting } from '../../../design/schema.ts';
import { KG_PER_POUND } from '../../../measure/units.ts';
import { ColorField } from '../../control/ColorField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { useDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { ShapeFields } from './ShapeFields.tsx';
import { usePart } from './usePart.ts';

export function FittingFields({ part }: { part: Fitting }) {
  const t = useWords();
  const { measure } = useDesign();
  const { box, change } = usePart(part);
  const pounds = measure.unit === 'in' || measure.unit === 'ft-in';
  const per = pounds ? KG_PER_POUND : 1;
  return (
    <div className="fields">
      <ShapeFields shape={part.shape} box={box} onCommit={(shape) => change({ shape })} />
      <MeasureField label={t('fitting.depth')} value={part.depth} onCommit={(depth) => change({ depth })} />
      <NumberField
        label={t('fitting.mass')}
        unit={pounds ? 'lb' : 'kg'}
        max={200 / per}
        step={0.1}
        value={part.mass_kg / per}
        onCommit={(value) => change({ mass_kg: value * per })}
      />
      <NumberField
        label={t('fitting.price')}
        unit={measure.currency}
        step={0.5}
        value={part.price}
        onCommit={(price) => change({ price })}
      />
      <ColorField label={t('fitting.color')} value={part.color} onCommit={(color) => change({ color })} />
    </div>
  );
}
