import type { Design, Rule } from '../../design/schema.ts';
import type { Layout } from '../../layout/laid.ts';
import type { Mm } from '../../measure/units.ts';
import { editsToType } from '../action/typed.ts';
import { MeasureField } from '../field/MeasureField.tsx';
import { commit } from '../state/commit.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { toScreen, type View } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { useWords, type WordKey } from '../words/t.ts';
import { CenterGapInPlace } from './CenterGapInPlace.tsx';
import { GapInPlace } from './GapInPlace.tsx';
import { LetteringInPlace } from './LetteringInPlace.tsx';
import { canvasElement } from './place.ts';
import { SpacingInPlace } from './SpacingInPlace.tsx';

interface CanvasFieldsProps {
  readonly layout: Layout;
  readonly view: View;
  readonly design: Design;
}

/** A field opened on the drawing itself: a dimension that was clicked, or the lettering of a sign. */
export function CanvasFields({ layout, view, design }: CanvasFieldsProps) {
  const t = useWords();
  const store = useStore();
  const field = useEditor((s) => s.field);
  if (!field) return null;
  const close = () => {
    store.setState({ field: null });
    canvasElement()?.focus({ preventScroll: true });
  };
  if (field.kind === 'lettering') {
    const part = design.parts.find((p) => p.id === field.part);
    const box = layout.boxes.get(field.part);
    if (part?.kind !== 'sign' || !box) return null;
    const at = toScreen(view, { x: box.x, y: box.y + box.h });
    return (
      <LetteringInPlace
        key={part.id}
        sign={part}
        at={at}
        width={box.w * view.scale}
        height={box.h * view.scale}
        onDone={close}
      />
    );
  }
  const style = { transform: `translate(-50%, -50%) translate(${field.at.x}px, ${field.at.y}px)` };
  if (field.kind === 'spacing') {
    const array = design.parts.find((p) => p.id === field.part);
    if (array?.kind !== 'array') return null;
    return (
      <div className="canvas-field" style={style}>
        <SpacingInPlace array={array} axis={field.axis} onDone={close} />
      </div>
    );
  }
  if (field.kind === 'rule') {
    const rule = design.rules.find((r) => r.id === field.rule);
    const follows = rule?.kind === 'even' && rule.mode !== 'centers' && rule.mode !== 'most';
    if (rule && (follows || rule.kind === 'center')) {
      const gap = layout.rules.find((state) => state.id === rule.id)?.result ?? 0;
      return (
        <div className="canvas-field roomy" style={style}>
          {rule.kind === 'center' ? (
            <CenterGapInPlace design={design} layout={layout} rule={rule} gap={gap} onDone={close} />
          ) : (
            <GapInPlace rule={rule} gap={gap} onDone={close} />
          )}
        </div>
      );
    }
    const measure = rule ? measureOf(rule, field.end) : null;
    if (!rule || !measure) return null;
    const take = (mm: number) =>
      commit(
        store,
        [{ kind: 'replace', list: 'rules', id: rule.id, item: measure.put(measure.value < 0 ? -mm : mm) }],
        t('did.measure', { to: lengthText(design, mm) }),
      );
    return (
      <div className="canvas-field" style={style}>
        <MeasureField
          label={t(measure.words)}
          // What an even rule is given is not the gap that was clicked.
          quiet={rule.kind !== 'even'}
          autoFocus
          min={rule.kind === 'even' ? 1 : 0}
          value={Math.abs(measure.value)}
          onCommit={take}
          onDone={close}
        />
      </div>
    );
  }
  const box = layout.boxes.get(field.part) ?? design.keepClears.find((k) => k.id === field.part)?.box;
  if (!box) return null;
  const take = (mm: number) => {
    const { edits } = editsToType(design, field.part, box, { [field.side]: mm });
    commit(store, edits, t('did.measure', { to: lengthText(design, mm) }));
  };
  return (
    <div className="canvas-field" style={style}>
      <MeasureField
        label={t(field.side === 'w' ? 'part.width' : 'part.height')}
        quiet
        autoFocus
        min={1}
        value={box[field.side]}
        onCommit={take}
        onDone={close}
      />
    </div>
  );
}

/** The one measure of a rule that its dimension shows or follows from; null where there is none. */
function measureOf(
  rule: Rule,
  end?: 'low' | 'high',
): { words: WordKey; value: Mm; put: (mm: Mm) => Rule } | null {
  if (rule.kind === 'set')
    return {
      words: 'rule.distance',
      value: rule.distance,
      put: (distance) => ({ ...rule, distance }),
    };
  if (rule.kind === 'between' && end === 'low')
    return {
      words: 'rule.insetLow',
      value: rule.insetLow,
      put: (insetLow) => ({ ...rule, insetLow }),
    };
  if (rule.kind === 'between' && end === 'high')
    return {
      words: 'rule.insetHigh',
      value: rule.insetHigh,
      put: (insetHigh) => ({ ...rule, insetHigh }),
    };
  if (rule.kind === 'reveal')
    return { words: 'rule.margin', value: rule.margin, put: (margin) => ({ ...rule, margin }) };
  if (rule.kind === 'even' && rule.mode === 'centers')
    return { words: 'array.pitch', value: rule.pitch ?? 0, put: (pitch) => ({ ...rule, pitch }) };
  if (rule.kind === 'even' && rule.mode === 'most')
    return { words: 'array.most', value: rule.most ?? 0, put: (most) => ({ ...rule, most }) };
  return null;
}
