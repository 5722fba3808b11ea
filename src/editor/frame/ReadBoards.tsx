import { useEffect, useMemo, useState } from 'react';
import { liveFacts } from '../../design/job/record.ts';
import { boardsOf } from '../../job/boards.ts';
import {
  type Batch,
  batchesOf,
  comeOutOf,
  cutOfThem,
  partsThatFit,
  type StockReading,
  type Supply,
} from '../../job/reading.ts';
import { designPart } from '../../layout/reference.ts';
import { grouped } from '../../list/grouped.ts';
import type { Stock } from '../../materials/types.ts';
import type { Plan } from '../../plan/types.ts';
import { Button } from '../control/Button.tsx';
import { Dialog } from '../control/Dialog.tsx';
import { MeasureField } from '../control/MeasureField.tsx';
import { Typeset } from '../control/Typeset.tsx';
import { useSay } from '../control/useSay.ts';
import type { Document } from '../document/document.ts';
import { tried } from '../document/document.ts';
import { freeId } from '../edit/ids.ts';
import { nameOf } from '../edit/movable.ts';
import { takenReading } from '../edit/stockReading.ts';
import { useCommit, useEditor, useStore } from '../state/hooks.ts';
import { loadTouching } from '../state/touching.ts';
import { useWords } from '../words/t.ts';
import { changesLayout, type LayoutChange, layoutChange } from './layoutChange.ts';
import { MovedList } from './MovedList.tsx';
import '../words/sawWords.ts';
import '../style/work.css';

interface ReadBoardsProps {
  readonly plan: Plan;
  readonly stock: Stock;
  readonly onClose: () => void;
}

/** What a rule reads of a stock, for which boards, and which parts are made of those; what that moves is shown first. */
export function ReadBoards({ plan, stock, onClose }: ReadBoardsProps) {
  const t = useWords();
  const doc = useEditor((s) => s.edit);
  const batches = useMemo(() => batchesOf(doc.design, stock.id), [doc.design, stock.id]);
  const [size, setSize] = useState({
    width: stock.form === 'sheet' ? 0 : stock.width,
    thickness: stock.thickness,
  });
  const [chosen, choose] = useState<ReadonlySet<string> | null>(null);
  const own = useMemo(() => batches.filter(({ id }) => chosen?.has(id)), [batches, chosen]);
  const boards = useMemo(() => supplyOf(plan, doc.design, stock, own), [plan, doc.design, stock, own]);
  const [picked, pick] = useState<ReadonlySet<string> | null>(null);
  const parts = picked ?? boards.suggested;
  const { asked, ask } = useTaken(doc, stock, onClose);
  const enough = useMemo(
    () =>
      chosen === null ||
      comeOutOf(
        boards.supply,
        [...parts].filter((id) => !boards.cut.has(id)),
      ),
    [chosen, boards, parts],
  );
  const same = size.thickness === stock.thickness && (stock.form === 'sheet' || size.width === stock.width);
  const ready = !same && boards.clash.length === 0 && (chosen === null || (own.length > 0 && enough));
  if (asked) return asked;
  return (
    <Dialog title={t('boards.read', { stock: stock.name })} className="wrong-dialog" onClose={onClose}>
      <div className="fields">
        {stock.form === 'sheet' ? null : (
          <MeasureField
            label={t('size.width')}
            value={size.width}
            min={0.5}
            onCommit={(width) => setSize({ ...size, width })}
          />
        )}
        <MeasureField
          label={t('size.thickness')}
          value={size.thickness}
          min={0.5}
          onCommit={(thickness) => setSize({ ...size, thickness })}
        />
      </div>
      <BatchChoices batches={batches} chosen={chosen} onChoose={(next) => [choose(next), pick(null)]} />
      {boards.clash.length > 0 ? (
        <p className="bad-text">
          {t('boards.clash', { parts: boards.clash.map((id) => nameOf(doc.design, id)).join(', ') })}
        </p>
      ) : null}
      {chosen !== null && own.length > 0 ? (
        <fieldset className="wrong-choices">
          <legend>{t('boards.parts')}</legend>
          {[...boards.supply.pieces.keys()].map((id) => (
            <label key={id}>
              <input
                type="checkbox"
                checked={parts.has(id)}
                disabled={boards.cut.has(id)}
                onChange={(e) => pick(turned(parts, id, e.currentTarget.checked))}
              />
              <span>{nameOf(doc.design, id)}</span>
            </label>
          ))}
          {enough ? null : <p className="bad-text">{t('boards.notEnough')}</p>}
        </fieldset>
      ) : null}
      <Button
        look="main saw-wide"
        disabled={!ready}
        onClick={() => ask({ stock, ...size, batches: own, parts }, chosen === null)}
      >
        {t('boards.look')}
      </Button>
    </Dialog>
  );
}

const turned = (set: ReadonlySet<string>, id: string, on: boolean): ReadonlySet<string> =>
  new Set([...set].filter((one) => one !== id).concat(on ? [id] : []));

interface BatchChoicesProps {
  readonly batches: readonly Batch[];
  /** Null: all boards. */
  readonly chosen: ReadonlySet<string> | null;
  readonly onChoose: (chosen: ReadonlySet<string> | null) => void;
}

/** All boards of the stock, or some of those that are there. */
function BatchChoices({ batches, chosen, onChoose }: BatchChoicesProps) {
  const t = useWords();
  const say = useSay();
  const told = ({ is, lengths }: Batch) => {
    const by = grouped(lengths, (length) => say.short(length));
    const sizes = [...by].map(([length, some]) => `${some.length} × ${length}`).join(', ');
    return t(is === 'on-hand' ? 'boards.onHand' : 'boards.bought', { sizes });
  };
  return (
    <fieldset className="wrong-choices">
      <legend>{t('boards.hold')}</legend>
      <label>
        <input type="radio" name="hold" checked={chosen === null} onChange={() => onChoose(null)} />
        <span>{t('boards.all')}</span>
      </label>
      <label>
        <input
          type="radio"
          name="hold"
          checked={chosen !== null}
          disabled={batches.length === 0}
          onChange={() => onChoose(new Set(batches.slice(0, 1).map(({ id }) => id)))}
        />
        <span>{t(batches.length === 0 ? 'boards.noneThere' : 'boards.some')}</span>
      </label>
      {chosen === null
        ? null
        : batches.map((batch) => (
            <label key={batch.id} className="sub-choice">
              <input
                type="checkbox"
                checked={chosen.has(batch.id)}
                onChange={(e) => onChoose(turned(chosen, batch.id, e.currentTarget.checked))}
              />
              <span>
                <Typeset text={told(batch)} />
              </span>
            </label>
          ))}
    </fieldset>
  );
}

/** What comes out of some boards: the parts of the stock, those that are cut of them, and those to suggest. */
function supplyOf(plan: Plan, design: Document['design'], stock: Stock, batches: readonly Batch[]) {
  const facts = liveFacts(design.job);
  const boards = new Set(batches.flatMap((batch) => batch.boards));
  const { of: cut, alsoOfOthers } = cutOfThem(facts, boards, designPart);
  const pieces = grouped(
    plan.joinery.pieces.filter((piece) => piece.stock === stock.id),
    (piece) => designPart(piece.part),
  );
  const real = boardsOf(facts).filter(({ fact }) => boards.has(fact.id));
  const done = new Set(real.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)));
  const open = new Map([...pieces].map(([part, own]) => [part, own.filter(({ id }) => !done.has(id))]));
  const supply: Supply = {
    stock,
    pieces: open,
    wood: batches.flatMap(({ left }) => left),
    shop: design.shop,
  };
  const there = new Set([...boards, ...batches.flatMap(({ owned }) => (owned === null ? [] : [owned]))]);
  const isThere = ({ owned }: { owned: string | null }) => owned !== null && there.has(owned);
  const planned = [
    ...plan.cutting.boards.filter(isThere).flatMap(({ cuts }) => cuts),
    ...plan.cutting.sheets.filter(isThere).flatMap(({ placements }) => placements),
  ].map(({ piece }) => piece);
  const shares = new Map(
    [...pieces].map(([part, own]) => [part, own.filter(({ id }) => planned.includes(id)).length]),
  );
  const suggested = batches.length === 0 ? cut : partsThatFit(supply, cut, shares);
  return { supply, cut, clash: [...alsoOfOthers], suggested };
}

type Wanted = Omit<StockReading, 'as'>;

/** What a reading changes, and the parts that it is said of what they are. */
interface Taken {
  readonly edits: ReturnType<typeof takenReading>;
  readonly parts: ReadonlySet<string>;
}

/** A reading that is asked about: what it moves, with the drawing showing it. */
function useTaken(doc: Document, stock: Stock, onClose: () => void) {
  const t = useWords();
  const say = useSay();
  const store = useStore();
  const commit = useCommit();
  const [question, setQuestion] = useState<(Taken & { readonly change: LayoutChange }) | null>(null);
  useEffect(() => {
    if (!question) return;
    store.setState({ provisional: { shown: question.change.shown, guides: [], live: false } });
    return () => store.setState({ provisional: null });
  }, [question, store]);
  const label = t('boards.did', { stock: stock.name });
  const take = ({ edits, parts }: Taken) => {
    onClose();
    commit(edits, label, { said: parts });
  };
  const ask = (wanted: Wanted, all: boolean) =>
    void loadTouching().then((touching) => {
      const sides = stock.form === 'sheet' ? [wanted.thickness] : [wanted.width, wanted.thickness];
      const name = t('boards.name', {
        stock: stock.name,
        size: sides.map((mm) => say.short(mm)).join(' × '),
      });
      const as = all ? null : { id: freeId(doc.design, 'read'), name };
      const edits = takenReading(doc, { ...wanted, as }, touching);
      const parts = all ? new Set(doc.design.parts.map(({ id }) => id)) : wanted.parts;
      const change = layoutChange(doc.shown, tried(doc, edits).design);
      if (changesLayout(change)) setQuestion({ edits, parts, change });
      else take({ edits, parts });
    });
  const asked = question && (
    <Dialog title={t('boards.read', { stock: stock.name })} onClose={onClose}>
      <MovedList
        design={doc.design}
        change={question.change}
        label={stock.name}
        drop="stock.drop"
        unseen
        onKeep={() => take(question)}
        onDrop={onClose}
      />
    </Dialog>
  );
  return { asked, ask };
}
