import { Fragment } from 'react';
import { fractionsIn } from '../words/fractions.ts';
import { useWords } from '../words/t.ts';
import { voiced } from '../words/voiced.ts';

/**
 * A text with its fractions set as a tape shows them. What is seen selects and copies as the text that it is;
 * a voice reads it with its units as words.
 */
export function Typeset({ text }: { text: string }) {
  useWords();
  const said = voiced(text);
  const parts = fractionsIn(text);
  if (said === text && parts.every((part) => 'plain' in part)) return <>{text}</>;
  const drawn = parts.map((part, i) => {
    // The places of the parts are all that tells them apart.
    const key = i;
    if ('plain' in part) return <Fragment key={key}>{part.plain}</Fragment>;
    return (
      <span key={key} className="mixed">
        {part.whole ? `${part.whole} ` : ''}
        <span className="frac">
          <sup>{part.over}</sup>
          <i>/</i>
          <sub>{part.under}</sub>
        </span>
        {part.mark}
      </span>
    );
  });
  return (
    <>
      <span className="hidden-text spoken-only">{said}</span>
      <span aria-hidden="true">{drawn}</span>
    </>
  );
}
