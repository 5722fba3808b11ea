import type { Axis, Design } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import { nameOf } from '../action/movable.ts';
import { ruleSentence } from '../action/sentence.ts';
import { Typeset } from '../field/Typeset.tsx';
import { useStore } from '../state/hooks.ts';
import { type CanvasField, toScreen, type View } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { t, useWords } from '../words/t.ts';
import { voiced } from '../words/voiced.ts';
import { type Dimension, dimensionOnScreen } from './dimensions.ts';

interface LabelsProps {
  readonly dimensions: readonly Dimension[];
  readonly view: View;
  readonly design: Design;
  readonly layout: Layout;
}

/** Figures on the dimension lines; those that a rule or a size stands behind are opened by clicking them. */
export function DimensionLabels({ dimensions, view, design, layout }: LabelsProps) {
  const store = useStore();
  useWords();
  return (
    <>
      {dimensions.map((d) => {
        const { middle } = dimensionOnScreen(d, (p) => toScreen(view, p));
        const text = lengthText(design, Math.abs(d.to - d.from));
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
        return (
          <button
            key={d.key}
            type="button"
            className={`dim ${d.role}`}
            style={style}
            onClick={open}
            aria-label={t('canvas.editMeasure', {
              measure: voiced(text),
              what: whatIs(edits, design, layout),
            })}
          >
            <Typeset text={text} />
          </button>
        );
      })}
    </>
  );
}

/** Which measure of what it is. */
function whatIs(edits: NonNullable<Dimension['edits']>, design: Design, layout: Layout): string {
  if ('array' in edits) return t('canvas.gapOf', { name: nameOf(design, edits.array) });
  if ('part' in edits) return t(`canvas.sizeOf.${edits.side}`, { name: nameOf(design, edits.part) });
  const rule = design.rules.find(({ id }) => id === edits.rule);
  const state = layout.rules.find(({ id }) => id === edits.rule);
  return rule ? voiced(ruleSentence(design, rule, state)) : '';
}

function fieldOf(edits: NonNullable<Dimension['edits']>, axis: Axis, at: Point): CanvasField {
  if ('rule' in edits) return { kind: 'rule', rule: edits.rule, measure: edits.measure, at };
  if ('array' in edits) return { kind: 'spacing', part: edits.array, axis, at };
  return { kind: 'size', ...edits, at };
}
