import { useMemo } from 'react';
import type { Piece } from '../../joinery/piece.ts';
import { pieceDrawing } from '../../joinery/pieceDrawing.ts';
import { DrawingView } from '../control/DrawingView.tsx';
import { endMarks } from '../control/endWords.ts';
import { notchWords } from '../control/notchWords.ts';
import type { PaneSay } from '../control/useSay.ts';
import { useWords } from '../words/t.ts';

/** The piece as it lies on the bench, drawn small enough that its figures stay large on a phone. */
export function PieceFigure({ piece, say }: { piece: Piece; say: PaneSay }) {
  const t = useWords();
  const drawing = useMemo(() => {
    const box = { width: 78, height: piece.form === 'sheet' ? 62 : 32 };
    const words = {
      length: say.short,
      end: (end: Piece['ends'][0]) => endMarks(end, say),
      notch: (notch: Piece['notches'][0]) => notchWords(notch, say),
      face: '',
    };
    return pieceDrawing(piece, box, words);
  }, [piece, say]);
  return (
    <DrawingView
      drawing={drawing}
      className="saw-drawing"
      label={t('bench.drawing', { label: piece.label })}
    />
  );
}
