import type { Axis, Design } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import { pick } from '../../list/at.ts';
import { Typeset } from '../control/Typeset.tsx';
import { type Dimension, dimensionOnScreen } from '../drawing/dimensions.ts';
import type { Handle } from '../drawing/handles.ts';
import { nameOf } from '../edit/movable.ts';
import { OPENING_MEASURES, openingName } from '../edit/openings.ts';
import { ruleSentence } from '../edit/sentence.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { type CanvasField, toScreen, type View } from '../state/store.ts';
import { t, useWords } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { voiced } from '../words/voiced.ts';
import { keptClear, placeChips } from './chips.ts';

interface LabelsProps {
  readonly dimensions: readonly Dimension[];
  readonly handles: readonly Handle[];
  readonly view: View;
  readonly design: Design;
  readonly layout: Layout;
}

/** Figures on the dimension lines; those that a rule or a size stands behind are opened by clicking them. */
export function DimensionLabels({ dimensions, handles, view, design, layout }: LabelsProps) {
  const store = useStore();
  useWords();
  const selection = useEditor((s) => s.edit.selection);
  const texts = dimensions.map((d) => lengthText(design, Math.abs(d.to - d.from)));
  const places = placeChips(
    dimensions.map((d, i) => {
      const { from, to } = dimensionOnScreen(d, (p) => toScreen(view, p));
      return { from, to, axis: d.axis, text: pick(texts, i), fixed: d.role === 'face' };
    }),
    keptClear(layout, new Set(selection), handles, view),
  );
  return (
    <>
      {dimensions.map((d, i) => {
        const middle = pick(places, i);
        const text = pick(texts, i);
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
  if ('opening' in edits) return [t(OPENING_MEASURES[edits.side]), openingName(design, edits)].join(', ');
  if ('part' in edits) return t(`canvas.sizeOf.${edits.side}`, { name: nameOf(design, edits.part) });
  const rule = design.rules.find(({ id }) => id === edits.rule);
  return rule ? voiced(ruleSentence(design, rule, layout.rules)) : '';
}

function fieldOf(edits: NonNullable<Dimension['edits']>, axis: Axis, at: Point): CanvasField {
  if ('rule' in edits) return { kind: 'rule', rule: edits.rule, measure: edits.measure, at };
  if ('array' in edits) return { kind: 'spacing', part: edits.array, axis, at };
  if ('opening' in edits) return { kind: 'opening', ...edits, at };
  return { kind: 'size', ...edits, at };
}
