import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { FILL_FIELDS, LAYER_FIELDS, layerFields } from './layerFields.ts';
import type { LetteringFieldsProps } from './TextFields.tsx';

interface LookFieldsProps extends LetteringFieldsProps {
  /** Finish of the sign's board. */
  readonly board: string | null;
}

/** Colors of the letters, and what is painted around, in and under them. */
export function LookFields({ lettering, board, onChange }: LookFieldsProps) {
  const { finishes } = useSettledDesign();
  const layers = layerFields(finishes, lettering.finish, board);
  return (
    <>
      <FieldGrid three of={FILL_FIELDS} value={lettering} onChange={onChange} />
      {(['outline', 'inline', 'shade'] as const).map((layer) => (
        <fieldset key={layer} className="look">
          <Fields of={layers[layer]} value={lettering} onChange={onChange} />
          {lettering[layer] ? (
            <FieldGrid three of={LAYER_FIELDS[layer]} value={lettering} onChange={onChange} />
          ) : null}
        </fieldset>
      ))}
    </>
  );
}
