import type { ReactNode } from 'react';
import type { CutBoard, CutSheet } from '../../../cutting/result.ts';
import type { Drawing } from '../../../drawing/drawing.ts';
import type { Piece } from '../../../joinery/piece.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Plan } from '../../../plan/types.ts';
import { DrawingView } from '../../control/DrawingView.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { type PaneSay, useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';

/** What the cards of boards and of sheets are given alike. */
export interface CutProps {
  readonly plan: Plan;
  readonly number: number;
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly cut: ReadonlySet<string>;
  readonly onCut: (ids: readonly string[], on: boolean) => void;
}

interface CutCardProps extends Omit<CutProps, 'plan' | 'number'> {
  readonly of: CutBoard | CutSheet;
  readonly name: string;
  readonly size: string;
  readonly drawing: Drawing;
  readonly label: string;
  /** Pieces by their ids, as they lie, and how large each is. */
  readonly lying: readonly string[];
  readonly sizeOf: (piece: Piece) => string;
  /** What is worth keeping of it. */
  readonly keeps: readonly string[];
  readonly children?: ReactNode;
}

/** What is cut from one board or sheet: a drawing to scale, its pieces to tick off, and what is kept. */
export function CutCard(props: CutCardProps) {
  const { of, name, size, drawing, label, lying, pieces, sizeOf, keeps, cut, onCut, children } = props;
  const t = useWords();
  const say = useSay();
  const price = say.money(of.cost);
  return (
    <li className="board-card">
      <div className="item-head">
        <h5>{name}</h5>
        <Typeset
          as="span"
          className="note"
          text={
            of.owned === null ? t('wood.bought', { length: size, price }) : t('wood.owned', { length: size })
          }
        />
      </div>
      <DrawingView
        drawing={drawing}
        className={'cuts' in of ? 'board-drawing' : 'sheet-drawing'}
        label={label}
      />
      <ul className="ticks">
        {lying.map((id) => {
          const piece = pieces.get(id);
          if (!piece) return null;
          return (
            <li key={id}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={cut.has(id)}
                  onChange={(e) => onCut([id], e.currentTarget.checked)}
                />
                <strong>{piece.label}</strong>
                <Typeset text={sizeOf(piece)} />
                <span className="hidden-text">
                  , {t('wood.of', { where: name, name: say.name(piece.part) })}
                </span>
              </label>
            </li>
          );
        })}
        {keeps.map((what, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two of a size may be left, and their order is fixed by the plan
          <Typeset as="li" key={i} className="kept-offcut" text={t('wood.keeps', { what })} />
        ))}
      </ul>
      {children}
    </li>
  );
}

export const cuttingText = (say: PaneSay, t: ReturnType<typeof useWords>) => ({
  length: say.short,
  angle: say.angle,
  offcut: (along: Mm, across?: Mm) =>
    across === undefined
      ? t('wood.offcut', { along: say.short(along) })
      : t('wood.offcutSheet', { along: say.short(along), across: say.short(across) }),
});
