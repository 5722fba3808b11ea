import { Fragment } from 'react';
import { fractionsIn } from './fractions.ts';

/**
 * A text with its fractions set as a tape shows them. Screen readers get the text as it is written: the
 * drawn form is hidden from them.
 */
export function Typeset({ text }: { text: string }) {
  const parts = fractionsIn(text);
  if (parts.every((part) => 'plain' in part)) return <>{text}</>;
  const drawn = parts.map((part, i) => {
    // The places of the parts are all that tells them apart.
    const key = i;
    if ('plain' in part) return <Fragment key={key}>{part.plain}</Fragment>;
    return (
      <span key={key} className="measure">
        {part.whole}
        <span className="frac">
          <sup>{part.over}</sup>
          <i>⁄</i>
          <sub>{part.under}</sub>
        </span>
        {part.mark}
      </span>
    );
  });
  return (
    <>
      <span className="hidden-text">{text}</span>
      <span aria-hidden="true">{drawn}</span>
    </>
  );
}
