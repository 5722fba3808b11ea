import { Fragment, type HTMLAttributes } from 'react';
import { fractionsIn } from '../words/fractions.ts';
import { useWords } from '../words/t.ts';
import { voiced } from '../words/voiced.ts';

/** The element that a text or a measure fills; none where it stands among others. */
export interface Filling extends Pick<HTMLAttributes<HTMLElement>, 'className' | 'role'> {
  readonly as?: 'dd' | 'em' | 'h4' | 'li' | 'p' | 'span' | 'strong' | 'td' | 'th' | undefined;
}

/** A text in the element that it fills. */
export function Typeset({ as: Filled, text, ...rest }: Filling & { readonly text: string }) {
  if (!Filled) return <Letters text={text} />;
  return (
    <Filled {...rest}>
      <Letters text={text} />
    </Filled>
  );
}

/**
 * A text with its fractions set as a tape shows them. What is seen selects and copies as the text that it is;
 * a voice reads it with its units as words.
 */
function Letters({ text }: { text: string }) {
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
