import { Fragment } from 'react';

/** With the whole inches before it and the mark behind it, which stay on its line. */
const FRACTION = /(\d+ )?(\d+)\/(\d+)("?)/g;

/**
 * A text with its fractions set as a tape shows them. Screen readers get the text as it is written: the
 * drawn form is hidden from them.
 */
export function Typeset({ text }: { text: string }) {
  const matches = [...text.matchAll(FRACTION)];
  if (matches.length === 0) return <>{text}</>;
  let from = 0;
  const drawn = matches.map((m) => {
    const before = text.slice(from, m.index);
    from = m.index + m[0].length;
    return (
      <Fragment key={m.index}>
        {before}
        <span className="measure">
          {m[1]?.trimEnd()}
          <span className="frac">
            <sup>{m[2]}</sup>
            <i>⁄</i>
            <sub>{m[3]}</sub>
          </span>
          {m[4]}
        </span>
      </Fragment>
    );
  });
  return (
    <>
      <span className="hidden-text">{text}</span>
      <span aria-hidden="true">
        {drawn}
        {text.slice(from)}
      </span>
    </>
  );
}
