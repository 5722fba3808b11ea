import type { Axis, Design } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import { Typeset } from '../field/Typeset.tsx';
import { useStore } from '../state/hooks.ts';
import { type CanvasField, toScreen, type View } from '../state/store.ts';
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
          store.setState({ field: fieldOf(edits, d.axis, at) });
        };
        const words = 'array' in edits ? 'canvas.editSpacing' : 'canvas.editDimension';
        return (
          <button
            key={d.key}
            type="button"
            className={`dim ${d.role}`}
            style={style}
            onClick={open}
            aria-label={t(words, { measure: text })}
          >
            <Typeset text={text} />
          </button>
        );
      })}
    </>
  );
}

function fieldOf(edits: NonNullable<Dimension['edits']>, axis: Axis, at: Point): CanvasField {
  if ('rule' in edits) return { kind: 'rule', rule: edits.rule, end: edits.end, at };
  if ('array' in edits) return { kind: 'spacing', part: edits.array, axis, at };
  return { kind: 'size', ...edits, at };
}
