import type { CSSProperties } from 'react';
import { replacing } from '../../design/edit/make.ts';
import { isLettered } from '../../design/made.ts';
import { inSlot, measuresOf, withFields } from '../../design/rule/table.ts';
import { MeasureField } from '../control/MeasureField.tsx';
import type { Shown } from '../document/shown.ts';
import { ruleWord } from '../edit/ruleWords.ts';
import { editsToType } from '../edit/typed.ts';
import { commit } from '../state/commit.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { toScreen, type View } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { CenterGapInPlace } from './CenterGapInPlace.tsx';
import { GapInPlace } from './GapInPlace.tsx';
import { LetteringInPlace } from './LetteringInPlace.tsx';
import { OpeningInPlace } from './OpeningInPlace.tsx';
import { SpacingInPlace } from './SpacingInPlace.tsx';

/** A field opened on the drawing itself: a dimension that was clicked, or the lettering of a sign. */
export function CanvasFields({ shown, view }: { shown: Shown; view: View }) {
  const { design, layout } = shown;
  const t = useWords();
  const store = useStore();
  const field = useEditor((s) => s.field);
  if (!field) return null;
  const close = () => {
    store.setState({ field: null });
    store.getState().canvas?.focus({ preventScroll: true });
  };
  if (field.kind === 'lettering') {
    const part = design.parts.find((p) => p.id === field.part);
    const box = layout.boxes.get(field.part);
    if (!part || !isLettered(part) || !box) return null;
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
  const style = { '--x': `${field.at.x}px`, '--y': `${field.at.y}px` } as CSSProperties;
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
    if (!rule) return null;
    const all = measuresOf(rule);
    const measure = all.find((slot) => slot.field === field.measure) ?? all[0];
    if (!measure) {
      const gap = layout.rules.find((state) => state.id === rule.id)?.result ?? 0;
      return (
        <div className="canvas-field roomy" style={style}>
          {rule.kind === 'center' ? (
            <CenterGapInPlace shown={shown} rule={rule} gap={gap} onDone={close} />
          ) : rule.kind === 'even' ? (
            <GapInPlace rule={rule} gap={gap} onDone={close} />
          ) : null}
        </div>
      );
    }
    const value = inSlot(rule, measure) ?? 0;
    const take = (mm: number) => {
      const item = withFields(rule, { [measure.field]: value < 0 ? -mm : mm });
      commit(store, [replacing('rules', item)], t('did.measure', { to: lengthText(design, mm) }));
    };
    return (
      <div className="canvas-field" style={style}>
        <MeasureField
          label={t(ruleWord(measure.field))}
          // What an even rule is given is not the gap that was clicked.
          quiet={!measure.where}
          autoFocus
          min={Math.max(0, measure.least)}
          value={Math.abs(value)}
          onCommit={take}
          onDone={close}
        />
      </div>
    );
  }
  if (field.kind === 'opening')
    return (
      <div className="canvas-field" style={style}>
        <OpeningInPlace shown={shown} of={field} onDone={close} />
      </div>
    );
  const box = layout.boxes.get(field.part) ?? design.keepClears.find((k) => k.id === field.part)?.box;
  if (!box) return null;
  const take = (mm: number) => {
    const { edits } = editsToType(shown, field.part, box, { [field.side]: mm });
    commit(store, edits, t('did.measure', { to: lengthText(design, mm) }));
  };
  return (
    <div className="canvas-field" style={style}>
      <MeasureField
        label={t(field.side === 'w' ? 'size.width' : 'part.height')}
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
