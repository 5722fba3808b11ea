import { useState } from 'react';
import type { LetteredPart } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
import { editsToLetter } from '../edit/letter.ts';
import { useCommit } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';

interface LetteringInPlaceProps {
  readonly sign: LetteredPart;
  readonly at: Point;
  readonly width: number;
  readonly height: number;
  readonly onDone: () => void;
}

/** The words of a sign, typed where they stand. Enter starts a line; leaving keeps, Escape drops. */
export function LetteringInPlace({ sign, at, width, height, onDone }: LetteringInPlaceProps) {
  const t = useWords();
  const commit = useCommit();
  const [text, setText] = useState(sign.lettering.lines.map((l) => l.text).join('\n'));
  const lines = text.split('\n').length;
  const high = Math.max(44, height);
  const keep = () => {
    const edits = editsToLetter(sign, text);
    if (edits.length > 0) commit(edits, t('did.letter', { text: pick(text.split('\n'), 0) }));
    onDone();
  };
  return (
    <textarea
      className="letter-field"
      aria-label={t('lettering.text')}
      // It opens on the sign as it is drawn or double-clicked: that is where the person looks and types.
      // biome-ignore lint/a11y/noAutofocus: see above
      autoFocus
      value={text}
      rows={lines}
      style={{
        left: at.x,
        // A keyboard that comes up takes room from the drawing.
        top: `max(0px, min(${at.y}px, 100% - ${high}px))`,
        width: Math.max(140, width),
        height: high,
        fontSize: Math.max(16, Math.min(64, (height / (lines + 0.6)) * 0.8)),
      }}
      onFocus={(e) => e.currentTarget.select()}
      onChange={(e) => setText(e.currentTarget.value)}
      onBlur={keep}
      onKeyDown={(e) => {
        // Files are saved and opened from here too.
        if (!e.ctrlKey && !e.metaKey) e.stopPropagation();
        if (e.key === 'Escape') onDone();
        if (e.key === 'Enter' && (e.ctrlKey || e.metaKey)) keep();
      }}
    />
  );
}
