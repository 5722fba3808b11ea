import { useRef, useState } from 'react';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { KIND_ICONS } from '../../control/kindIcons.ts';
import { lazyPart } from '../../control/lazyPart.tsx';
import { useRoving } from '../../control/list/rove.ts';
import { Measure } from '../../control/Measure.tsx';
import { Section } from '../../control/Section.tsx';
import { Guard } from '../../frame/Guard.tsx';
import { placeInMiddle } from '../../gesture/draw.ts';
import { startPlacing } from '../../gesture/place.ts';
import { stocksOf } from '../../shipped/tables.ts';
import { useEditor, useSettledDesign, useStore } from '../../state/hooks.ts';
import { DRAWN_KINDS, type DrawnKind } from '../../state/tools.ts';
import { useWords } from '../../words/t.ts';
import { DivideSection } from '../part/DivideSection.tsx';
import { FinishList } from './FinishList.tsx';
import { PhotoSection } from './PhotoSection.tsx';
import { useLifting } from './useLifting.ts';

const BuiltShelf = lazyPart(() => import('./BuiltShelf.tsx').then((m) => m.BuiltShelf));

const FORMS = ['flat', 'shaped', 'sheet'] as const;

/** Adding parts: by kind, drawn on the face, or a stock dragged onto it. */
export default function LayoutPane() {
  const t = useWords();
  const store = useStore();
  const tool = useEditor((s) => s.tool);
  const kinds = useRef<HTMLDivElement>(null);
  const roving = useRoving(kinds, 'both');
  return (
    <div className="pane-stack">
      <h2 className="hidden-text">{t('step.layout')}</h2>
      <Section title="layout.draw">
        <p className="note">{t('layout.drawHint')}</p>
        <div ref={kinds} role="toolbar" className="kinds" aria-label={t('layout.draw')} {...roving}>
          {DRAWN_KINDS.map((kind) => {
            const Icon = KIND_ICONS[kind];
            return (
              <button
                key={kind}
                type="button"
                data-stop=""
                className="kind"
                aria-pressed={tool === kind}
                onClick={(e) => {
                  // A key cannot draw: it places one of usual size.
                  if (e.detail === 0) placeInMiddle(store, kind);
                  else store.setState({ tool: tool === kind ? 'select' : kind, sheetOpen: false });
                }}
              >
                <Icon aria-hidden="true" />
                <span>{t(`kind.${kind}`)}</span>
              </button>
            );
          })}
        </div>
      </Section>
      <Section title="built.title">
        <p className="note">{t('built.hint')}</p>
        <Guard onLost={() => undefined} meanwhile={<div className="builts" />}>
          <BuiltShelf />
        </Guard>
      </Section>
      <StockPalette />
      <DivideSection />
      <PhotoSection />
      <FinishList />
    </div>
  );
}

/** Stocks to drag onto the face; a click takes one in hand, and what is drawn next is made of it. */
function StockPalette() {
  const t = useWords();
  const store = useStore();
  const design = useSettledDesign();
  const chosen = useEditor((s) => s.stock);
  const [form, setForm] = useState<(typeof FORMS)[number]>('flat');
  const stocks = [...stocksOf(design).values()].filter((s) => s.form === form);
  const kind: DrawnKind = form === 'sheet' ? 'panel' : 'strip';
  const list = useRef<HTMLDivElement>(null);
  const roving = useRoving(list, 'down');
  useLifting(list);
  return (
    <Section title="layout.stock">
      <p className="note by-mouse">{t('layout.stockHint')}</p>
      <p className="note by-finger">{t('layout.stockHintFinger')}</p>
      <ChoiceField
        label={t('layout.form')}
        quiet
        value={form}
        choices={FORMS.map((value) => ({ value, label: t(`form.${value}`) }))}
        onCommit={setForm}
      />
      {/* One stop of the Tab key, and arrows within: the list is long. */}
      <div
        ref={list}
        role="toolbar"
        className="stocks"
        aria-orientation="vertical"
        aria-label={t('layout.stocks')}
        {...roving}
      >
        {stocks.map((stock) => (
          <button
            key={stock.id}
            type="button"
            data-stop=""
            className="stock"
            aria-pressed={stock.id === chosen}
            onPointerDown={(e) => startPlacing(store, kind, stock.id, e.nativeEvent)}
            onClick={(e) => {
              // Keys and screen readers click without a pointer; a pointer has already taken it.
              if (e.detail === 0) placeInMiddle(store, kind, stock.id);
            }}
          >
            <span
              className="stock-bar"
              data-form={stock.form}
              style={{ height: barHeight(stock) }}
              aria-hidden="true"
            />
            <span className="stock-name">{stock.name}</span>
            <span className="note">
              {stock.form === 'sheet' ? (
                <Measure mm={stock.thickness} />
              ) : (
                <>
                  <Measure mm={stock.thickness} /> × <Measure mm={stock.width} />
                </>
              )}
            </span>
          </button>
        ))}
      </div>
    </Section>
  );
}

/** Stock widths shown against each other, an eighth of their size and never too thin to see. */
const barHeight = (stock: { readonly form: string; readonly width?: number; readonly thickness: number }) =>
  Math.max(3, Math.min(22, (stock.form === 'sheet' ? stock.thickness : (stock.width ?? 0)) / 6));
