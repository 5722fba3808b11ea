import { NumberField } from '../../control/NumberField.tsx';
import type { Size } from '../../photo/placing.ts';
import type { Quad } from '../../state/photo.ts';
import { useWords } from '../../words/t.ts';

const CORNERS = ['lowerLeft', 'lowerRight', 'upperRight', 'upperLeft'] as const;

interface QuadFieldsProps {
  readonly quad: Quad;
  readonly size: Size;
  readonly onCommit: (quad: Quad) => void;
}

/** Where the photo shows the bed's corners, as shares of the photo from its upper left. */
export function QuadFields({ quad, size, onCommit }: QuadFieldsProps) {
  const t = useWords();
  return (
    <>
      {CORNERS.map((corner, index) => (
        <fieldset key={corner} className="sub">
          <legend>{t(`photo.corner.${corner}`)}</legend>
          <div className="fields">
            {(['x', 'y'] as const).map((axis) => {
              const whole = axis === 'x' ? size.width : size.height;
              return (
                <NumberField
                  key={axis}
                  label={t(axis === 'x' ? 'photo.across' : 'photo.down')}
                  unit="%"
                  min={0}
                  max={100}
                  value={Math.round(((quad[index as 0 | 1 | 2 | 3][axis] ?? 0) / whole) * 1000) / 10}
                  onCommit={(percent) =>
                    onCommit(
                      quad.map((p, i) =>
                        i === index ? { ...p, [axis]: (percent / 100) * whole } : p,
                      ) as unknown as Quad,
                    )
                  }
                />
              );
            })}
          </div>
        </fieldset>
      ))}
    </>
  );
}
