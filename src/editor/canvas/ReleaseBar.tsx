import type { Box } from '../../geometry/shape.ts';
import { Button } from '../control/Button.tsx';
import { Typeset } from '../control/Typeset.tsx';
import { boundsIn } from '../document/shown.ts';
import { EdgeSentence } from '../frame/EdgeSentence.tsx';
import { readAgain, readOtherEdge } from '../gesture/release.ts';
import { useEditor, useSettled, useStore } from '../state/hooks.ts';
import { isCarrying, type Release, releaseNow, toScreen } from '../state/store.ts';
import { useWords } from '../words/t.ts';

/** Beside the part that was put down: what holds it now, and what else may have been meant, by a click or a digit. */
export function ReleaseBar() {
  const release = useEditor((s) => (isCarrying(s) ? null : releaseNow(s)));
  return release ? <Bar release={release} /> : null;
}

function Bar({ release }: { release: Release }) {
  const t = useWords();
  const store = useStore();
  const view = useEditor((s) => s.view);
  const shown = useSettled();
  const { design, part, readings, chosen } = release;
  const box = boundsIn(shown, part)?.box;
  const now = readings[chosen];
  if (!box || !now) return null;
  const at = toScreen(view, { x: box.x, y: box.y + box.h });
  const beside = placeBeside(
    { ...at, w: box.w * view.scale, h: box.h * view.scale },
    store.getState().canvas,
  );
  const rules = now.rules.flatMap(({ id }) => design.rules.find((rule) => rule.id === id) ?? []);
  const take = (digit: number) => {
    readAgain(store, digit);
    store.getState().canvas?.focus({ preventScroll: true });
  };
  const others = readings
    .map((reading, digit) => ({ reading, digit }))
    .filter(({ digit }) => digit !== chosen);
  // What is likelier stands first; free is the last.
  const listed = [...others.filter(({ digit }) => digit > 0), ...others.filter(({ digit }) => digit === 0)];
  return (
    <section
      className={beside ? 'release-bar' : 'release-bar docked'}
      aria-label={t('release.title')}
      style={beside ?? undefined}
    >
      <ul className="release-now">
        {rules.length === 0 ? <li>{t('release.isFree')}</li> : null}
        {rules.map((rule) => (
          <li key={rule.id}>
            <EdgeSentence shown={shown} rule={rule} onTake={(other) => readOtherEdge(store, other)} />
          </li>
        ))}
      </ul>
      <div className="release-next">
        {listed.map(({ reading, digit }) => (
          <Button key={digit} look="bare" onClick={() => take(digit)}>
            <kbd>{digit}</kbd>
            <Typeset as="span" text={digit === 0 ? t('release.free') : reading.says} />
          </Button>
        ))}
      </div>
    </section>
  );
}

/** How wide the bar is, how much room it wants under or over a part, how far from it it stands, and how high the tools are: pixels. */
const WIDE = 320;
const ROOM = 215;
const UNDER = 40;
const OVER = 16;
const EDGE = 8;
const TOOLS = 56;
/** A narrower drawing has no room beside a part: there the bar stands along its foot. */
const NARROW = 480;

type Place = { readonly left: number } & ({ readonly top: number } | { readonly bottom: number });

/** Where the bar stands: under or over the part where there is room, else to the right or left of it. Null: along the foot. */
function placeBeside(part: Box, canvas: HTMLElement | null): Place | null {
  const { clientWidth: w, clientHeight: h } = canvas ?? { clientWidth: 0, clientHeight: 0 };
  if (w < NARROW) return null;
  const within = (at: number) => Math.max(EDGE, Math.min(at, w - WIDE - EDGE));
  const left = within(part.x + (part.w - WIDE) / 2);
  const foot = part.y + part.h;
  // Measures stand under a part, tools over the drawing.
  if (foot + UNDER + ROOM <= h) return { left, top: Math.max(EDGE, foot + UNDER) };
  if (part.y - OVER - ROOM >= TOOLS) return { left, bottom: h - part.y + OVER };
  const right = part.x + part.w + UNDER;
  const beside = right + WIDE + EDGE <= w ? right : within(part.x - UNDER - WIDE);
  return { left: beside, bottom: Math.max(EDGE, h - foot) };
}
