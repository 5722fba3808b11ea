import type { Design } from '../../design/schema.ts';
import { Typeset } from '../field/Typeset.tsx';
import { useStore } from '../state/hooks.ts';
import { toScreen, type View } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { useWords } from '../words/t.ts';
import { type Dimension, dimensionOnScreen } from './dimensions.ts';

interface LabelsProps {
  readonly dimensions: readonly Dimension[];
  readonly view: View;
  readonly measure: Design['measure'];
}

/** Figures on the dimension lines; those that a rule or a size stands behind are opened by clicking them. */
export function DimensionLabels({ dimensions, view, measure }: LabelsProps) {
  const store = useStore();
  const t = useWords();
  return (
    <>
      {dimensions.map((d) => {
        const { middle } = dimensionOnScreen(d, (p) => toScreen(view, p));
        const text = lengthText({ measure }, Math.abs(d.to - d.from));
        const style = { transform: `translate(-50%, -50%) translate(${middle.x}px, ${middle.y}px)` };
        const { edits } = d;
        if (!edits) {
          return (
            <span key={d.key} className={`dim ${d.role}`} style={style}>
              <Typeset text={text} />
            </span>
          );
        }
        const open = () => {
          const at = middle;
          store.setState({
            field: 'rule' in edits ? { kind: 'rule', rule: edits.rule, at } : { kind: 'size', ...edits, at },
          });
        };
        return (
          <button
            key={d.key}
            type="button"
            className={`dim ${d.role}`}
            style={style}
            onClick={open}
            aria-label={t('canvas.editDimension', { measure: text })}
          >
            <Typeset text={text} />
          </button>
        );
      })}
    </>
  );
}
