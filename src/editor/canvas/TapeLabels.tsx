import { Typeset } from '../control/Typeset.tsx';
import { RULER } from '../drawing/ticks.ts';
import { useDesign, useEditor, useLayout } from '../state/hooks.ts';
import { toScreen, type View } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { lanesOf, tapeLines } from './tapeLines.ts';

/** A label: how wide and high it is at most, pixels. */
const WIDE = 66;
const HIGH = 24;
/** From the face to the first lane, past the dimension of the face; lanes below it and at its left. */
const OFF = 44;
const LEFT_OFF = 10;
const LANES = { x: 3, y: 2 } as const;
/** Room that the words at the corner take at its left. */
const WORDS = 130;

/** Tape view: each edge with its distance from the lower left corner of the face, as a tape hooked there reads it. */
export function TapeLabels({ view }: { readonly view: View }) {
  const t = useWords();
  const { parts } = useLayout();
  const { measure } = useDesign();
  const selected = new Set(useEditor((s) => s.edit.selection));
  const datum = toScreen(view, { x: 0, y: 0 });
  // Where the face stands near the edge of the drawing, its labels stand over it.
  const room = Math.floor((datum.x - RULER - LEFT_OFF) / WIDE);
  const first = Math.max(datum.x - LEFT_OFF, RULER + WIDE);
  const onScreen = (axis: 'x' | 'y') =>
    tapeLines(parts, axis, selected).map((line) => {
      const at = toScreen(view, axis === 'x' ? { x: line.at, y: 0 } : { x: 0, y: line.at });
      return { ...line, at: axis === 'x' ? at.x : at.y, mm: line.at, long: line.reach * view.scale };
    });
  const across = onScreen('x');
  const up = onScreen('y');
  const lanes = {
    x: lanesOf(across, WIDE, LANES.x),
    y: lanesOf(up, HIGH, Math.max(1, Math.min(LANES.y, room))),
  };
  const own = (is: boolean) => (is ? ' own' : '');
  return (
    <>
      {across.map(({ at, mm, long, own: isOwn }, i) => {
        const lane = lanes.x[i] ?? null;
        if (lane === null) return null;
        const top = datum.y + OFF + lane * HIGH;
        return (
          <div key={mm} aria-hidden="true">
            <i
              className={`tape-line up${own(isOwn)}`}
              style={{ transform: `translate(${at}px, ${datum.y - long}px)`, height: top - datum.y + long }}
            />
            <span
              className={`tape-label${own(isOwn)}`}
              style={{ transform: `translate(${at}px, ${top}px) translate(-50%, 0)` }}
            >
              <Typeset text={lengthText({ measure }, mm)} />
            </span>
          </div>
        );
      })}
      {up.map(({ at, mm, long, own: isOwn }, i) => {
        const lane = lanes.y[i] ?? null;
        if (lane === null) return null;
        const right = first - lane * WIDE;
        return (
          <div key={mm} aria-hidden="true">
            <i
              className={`tape-line across${own(isOwn)}`}
              style={{
                transform: `translate(${right}px, ${at}px)`,
                width: Math.max(0, datum.x - right + long),
              }}
            />
            <span
              className={`tape-label${own(isOwn)}`}
              style={{ transform: `translate(${right}px, ${at}px) translate(-100%, -50%)` }}
            >
              <Typeset text={lengthText({ measure }, mm)} />
            </span>
          </div>
        );
      })}
      <span
        className="tape-datum"
        style={{
          transform: `translate(${datum.x}px, ${datum.y}px) translate(${datum.x - RULER > WORDS ? '-100%' : '0'}, 0)`,
        }}
      >
        {t('tape.datum')}
      </span>
    </>
  );
}
