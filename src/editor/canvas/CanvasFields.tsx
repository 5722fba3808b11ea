import type { Design } from '../../design/schema.ts';
import type { Layout } from '../../layout/laid.ts';
import { editsToPlace } from '../action/place.ts';
import { MeasureField } from '../field/MeasureField.tsx';
import { commit } from '../state/commit.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { toScreen, type View } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { useWords } from '../words/t.ts';
import { LetteringInPlace } from './LetteringInPlace.tsx';
import { canvasElement } from './place.ts';

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
  if (field.kind === 'rule') {
    const rule = design.rules.find((r) => r.id === field.rule);
    if (rule?.kind !== 'set' && rule?.kind !== 'reveal') return null;
    const value = rule.kind === 'set' ? rule.distance : rule.margin;
    const take = (mm: number) => {
      const signed = value < 0 ? -mm : mm;
      const item = rule.kind === 'set' ? { ...rule, distance: signed } : { ...rule, margin: signed };
      commit(
        store,
        [{ kind: 'replace', list: 'rules', id: rule.id, item }],
        t('did.measure', { to: lengthText(design, mm) }),
      );
    };
    return (
      <div className="canvas-field" style={style}>
        <MeasureField
          label={t('rule.distance')}
          quiet
          autoFocus
          value={Math.abs(value)}
          onCommit={take}
          onDone={close}
        />
      </div>
    );
  }
  const box = layout.boxes.get(field.part) ?? design.keepClears.find((k) => k.id === field.part)?.box;
  if (!box) return null;
  const take = (mm: number) => {
    const edits = editsToPlace(
      design,
      new Map([[field.part, box]]),
      new Map([[field.part, { ...box, [field.side]: mm }]]),
    );
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
