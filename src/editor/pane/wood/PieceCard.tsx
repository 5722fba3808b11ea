import { useMemo } from 'react';
import type { PieceGroup } from '../../../joinery/label.ts';
import { cornersToMark, otherEdge } from '../../../joinery/lengths.ts';
import type { Notch, Piece } from '../../../joinery/piece.ts';
import { pieceDrawing } from '../../../joinery/pieceDrawing.ts';
import type { Stock } from '../../../materials/types.ts';
import { pieceNames } from '../../../plan/words/pieces.ts';
import { curveWords, tapeWords } from '../../../plan/words/tape.ts';
import { DrawingView } from '../../control/DrawingView.tsx';
import { endMarks, endWords } from '../../control/endWords.ts';
import { Measure } from '../../control/Measure.tsx';
import { notchPlace, notchWords } from '../../control/notchWords.ts';
import { Typeset } from '../../control/Typeset.tsx';
import { type PaneSay, useSay } from '../../control/useSay.ts';
import { ReadInPlace } from '../../frame/ReadInPlace.tsx';
import { useWords } from '../../words/t.ts';

interface PieceCardProps {
  readonly group: PieceGroup;
  readonly stock: Stock | undefined;
  readonly where: ReadonlyMap<string, string>;
  readonly cut: ReadonlySet<string>;
  readonly onCut: (ids: readonly string[], on: boolean) => void;
}

/** All pieces of one label: one drawing, both ends in words, and a tick for each piece. */
export function PieceCard({ group, stock, where, cut, onCut }: PieceCardProps) {
  const t = useWords();
  const say = useSay();
  const [piece] = group.pieces;
  const drawing = useMemo(() => {
    if (!piece) return null;
    const box = { width: 112, height: piece.form === 'sheet' ? 44 : piece.notches.length > 0 ? 34 : 25 };
    return pieceDrawing(piece, box, {
      length: say.short,
      end: (end) => endMarks(end, say),
      notch: (notch) => notchWords(notch, say),
      face: t('wood.faceUp'),
    });
  }, [piece, say, t]);
  if (!piece || !drawing) return null;
  return (
    <li className="piece-card">
      <div className="piece-head">
        <span className="label">{group.label}</span>
        <strong>{pieceNames(group.pieces, say).join(', ')}</strong>
        <span className="note">
          {t('wood.alike', { count: group.quantity })} <Typeset text={stock?.name ?? piece.stock} />
        </span>
      </div>
      <DrawingView
        drawing={drawing}
        label={t('wood.picture', { label: group.label, name: say.name(piece.part) })}
      />
      <Figures piece={piece} />
      <InPlace pieces={group.pieces} />
      <ul className="ticks" aria-label={t('wood.from')}>
        {group.pieces.map((one) => {
          const from = where.get(one.id) ?? t('wood.notPlaced');
          return (
            <li key={one.id}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={cut.has(one.id)}
                  aria-label={t('wood.cut', { label: group.label, where: from, name: say.name(one.part) })}
                  onChange={(e) => onCut([one.id], e.currentTarget.checked)}
                />
                {from}
              </label>
            </li>
          );
        })}
      </ul>
    </li>
  );
}

function Figures({ piece }: { piece: Piece }) {
  const t = useWords();
  const say = useSay();
  const [start, end] = piece.ends;
  const tape = tapeWords(piece, say.words.tape);
  const curved = curveWords(piece, say.words.tape, say.measure);
  const other = otherEdge(piece);
  const corners = cornersToMark(piece);
  return (
    <dl className="facts">
      <div>
        <dt>{t('size.length')}</dt>
        <Measure as="dd" mm={piece.shown.length} />
        {tape === '' ? null : <dd className="note">{tape}</dd>}
        {curved === '' ? null : <Typeset as="dd" text={curved} />}
      </div>
      {other ? (
        <div>
          <dt>{say.words.tape.edge[other.edge]}</dt>
          <Measure as="dd" mm={other.shown} />
        </div>
      ) : null}
      <div>
        <dt>{t('wood.section')}</dt>
        <dd>
          <Measure mm={piece.thickness} /> × <Measure mm={piece.shown.width} />
        </dd>
      </div>
      {piece.form === 'sheet' ? null : (
        <>
          <div className="whole">
            <dt>{t('wood.startEnd')}</dt>
            <dd>{endWords(start, say)}</dd>
          </div>
          <div className="whole">
            <dt>{t('wood.endEnd')}</dt>
            <dd>{endWords(end, say)}</dd>
          </div>
        </>
      )}
      {corners.length > 0 ? (
        <div className="whole">
          <dt>{t('wood.corners')}</dt>
          {corners.map(({ x, y }) => (
            <Typeset
              as="dd"
              key={`${x} ${y}`}
              text={t('wood.cornerAt', { along: say.short(x), across: say.short(y) })}
            />
          ))}
        </div>
      ) : null}
      <Notches title="wood.notches" of={piece.notches.filter(({ side }) => side !== 'groove')} say={say} />
      <Notches title="wood.grooves" of={piece.notches.filter(({ side }) => side === 'groove')} say={say} />
    </dl>
  );
}

/** What is cut to fit, piece by piece: each goes into a place of its own. */
function InPlace({ pieces }: { pieces: readonly Piece[] }) {
  const say = useSay();
  return pieces
    .filter(({ fit }) => fit.inPlace)
    .map((piece) => (
      <ReadInPlace key={piece.id} piece={piece} name={pieces.length > 1 ? say.name(piece.part) : undefined} />
    ));
}

interface NotchesProps {
  readonly title: 'wood.notches' | 'wood.grooves';
  readonly of: readonly Notch[];
  readonly say: PaneSay;
}

function Notches({ title, of, say }: NotchesProps) {
  const t = useWords();
  if (of.length === 0) return null;
  return (
    <div className="whole">
      <dt>{t(title)}</dt>
      {of.map((notch) => (
        <Typeset as="dd" key={`${notch.from} ${notch.side}`} text={notchPlace(notch, say)} />
      ))}
    </div>
  );
}
