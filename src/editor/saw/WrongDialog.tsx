import { useState } from 'react';
import type { BenchStep } from '../../cutting/atSaw.ts';
import type { Saying } from '../../design/job/record.ts';
import { boardSaying, spoiledSaying } from '../../job/acts.ts';
import { boardIds } from '../../job/ids.ts';
import { under } from '../../list/at.ts';
import type { Plan } from '../../plan/types.ts';
import { Button } from '../control/Button.tsx';
import { Dialog } from '../control/Dialog.tsx';
import { MeasureField } from '../control/MeasureField.tsx';
import { stepName } from '../control/stepName.ts';
import { useStore } from '../state/hooks.ts';
import { atSaw, sayOfJob } from '../state/job.ts';
import { useWords } from '../words/t.ts';

const WHATS = ['short', 'ruined', 'split', 'size', 'read'] as const;
type What = (typeof WHATS)[number];

interface WrongProps {
  readonly step: BenchStep;
  readonly plan: Plan;
  /** Told what was planned before, and the wood that a short piece is now. */
  readonly onTold: (asked: { before: Plan; short: string | null }) => void;
  /** The board is there, and a rule reads another width or thickness of it. */
  readonly onRead: (stock: string) => void;
  readonly onClose: () => void;
}

/** What can go wrong with what is under the saw: each in a figure as a tape reads it, and the rest is planned again. */
export function WrongDialog({ step, plan, onTold, onRead, onClose }: WrongProps) {
  const t = useWords();
  const store = useStore();
  const offered = WHATS.filter((what) => isOffered(what, step));
  const [what, choose] = useState<What | null>(offered[0] ?? null);
  const start = startOf(step);
  const [figures, setFigures] = useState({
    left: start.length / 2,
    from: start.from,
    to: start.from + 50,
    size: start.board,
    width: start.sheet ?? 0,
  });
  const set = (some: Partial<typeof figures>) => setFigures({ ...figures, ...some });
  const longer = what === 'short' && figures.left >= start.length;
  const backward = what === 'split' && figures.to <= figures.from;
  const take = () => {
    if (what === null) return;
    if (what === 'read') {
      if (step.from === null) return;
      const { wood } = step.from;
      const there = boardSaying(wood, atSaw(plan, store.getState().edit.design), false);
      if (there.length > 0) sayOfJob(store, there, t('wrong.did.there', { what: stepName(step, t) }));
      onClose();
      onRead(wood.stock);
      return;
    }
    const said = sayingsOf(what, step, figures, plan, store.getState().edit.design);
    if (!said || !sayOfJob(store, said, t(`wrong.did.${what}`, { what: stepName(step, t) }))) return;
    const short = said.find((one) => one.is === 'board' && one.got === 'short' && one.of === null);
    onTold({ before: plan, short: short?.id ?? null });
    onClose();
  };
  return (
    <Dialog title={t('wrong.title', { what: stepName(step, t) })} className="wrong-dialog" onClose={onClose}>
      {offered.length === 0 || step.kind === 'sheet-cut' ? <p>{t('wrong.none')}</p> : null}
      <fieldset className="wrong-choices">
        <legend className="hidden-text">{t('wrong.open')}</legend>
        {offered.map((one) => (
          <label key={one}>
            <input type="radio" name="wrong" checked={what === one} onChange={() => choose(one)} />
            <span>{t(one === 'size' && start.sheet ? 'wrong.sheetSize' : `wrong.${one}`)}</span>
          </label>
        ))}
      </fieldset>
      {what === 'short' ? (
        <MeasureField
          label={t('wrong.left')}
          value={figures.left}
          min={1}
          error={longer ? t('wrong.longer') : undefined}
          onCommit={(left) => set({ left })}
        />
      ) : null}
      {what === 'split' ? (
        <>
          <p className="note">{t('wrong.along')}</p>
          <div className="fields">
            <MeasureField
              label={t('owned.defectFrom')}
              value={figures.from}
              onCommit={(from) => set({ from })}
            />
            <MeasureField
              label={t('owned.defectTo')}
              value={figures.to}
              error={backward ? t('wrong.backward') : undefined}
              onCommit={(to) => set({ to })}
            />
          </div>
        </>
      ) : null}
      {what === 'size' ? (
        <div className="fields">
          <MeasureField
            label={t(start.sheet ? 'size.length' : 'wrong.real')}
            value={figures.size}
            min={1}
            onCommit={(size) => set({ size })}
          />
          {start.sheet ? (
            <MeasureField
              label={t('size.width')}
              value={figures.width}
              min={1}
              onCommit={(width) => set({ width })}
            />
          ) : null}
        </div>
      ) : null}
      {what === null ? null : (
        <Button look="main saw-wide" disabled={longer || backward} onClick={take}>
          {t(what === 'read' ? 'bench.next' : 'wrong.take')}
        </Button>
      )}
      <p className="note">{t('wrong.undo')}</p>
    </Dialog>
  );
}

/** A cut of a sheet spoils none of its pieces by itself; boards alone have stretches. */
function isOffered(what: What, { kind }: BenchStep): boolean {
  if (what === 'read' || what === 'size') return kind !== 'loose-piece';
  if (what === 'short' || what === 'ruined') return kind === 'board-piece' || kind === 'sheet-piece';
  return kind === 'board-piece';
}

function startOf(step: BenchStep) {
  const piece = step.kind === 'sheet-cut' ? null : step.piece;
  const wood = step.from?.wood;
  return {
    length: piece?.length ?? 0,
    from: step.kind === 'board-piece' ? step.cut.from : 0,
    board: wood?.length ?? 0,
    /** How wide a sheet is; null of a board. */
    sheet: wood && 'width' in wood ? wood.width : null,
  };
}

function sayingsOf(
  what: Exclude<What, 'read'>,
  step: BenchStep,
  { left, from, to, size, width }: Record<'left' | 'from' | 'to' | 'size' | 'width', number>,
  plan: Plan,
  design: Plan['design'],
): readonly Saying[] | null {
  const at = atSaw(plan, design);
  if (what === 'short' || what === 'ruined') {
    if (step.kind === 'sheet-cut') return null;
    const said = spoiledSaying(step, what === 'short' ? left : null, at);
    return 'problem' in said ? null : said;
  }
  if (step.from === null) return null;
  const { wood } = step.from;
  const id = under(boardIds(plan.cutting, at.planned), wood);
  // A sheet that no saw was in is laid out within what it really measures.
  const there = boardSaying(wood, at, false);
  if (what === 'split')
    return [...there, { is: 'bad', id: `bad:${id}:${from.toFixed(1)}`, board: id, from, to }];
  const across = 'width' in wood ? { width } : {};
  return [...there, { is: 'size', id: `size:${id}`, board: id, length: size, ...across }];
}
