import { useEffect, useState, useSyncExternalStore } from 'react';
import { LOWERED, STOWED } from '../../../bed/swing.ts';
import type { Deg } from '../../../measure/units.ts';

/** Down and up again. */
const ROUND_MS = 9000;
/** Without motion the bed is shown at one position after the other. */
const STEP: Deg = 15;

/** The angle on show, and playing the swing down and up. */
export function useSwing() {
  const still = useReducedMotion();
  const [angle, setAngle] = useState<Deg>(30);
  const [playing, setPlaying] = useState(false);

  useEffect(() => {
    if (!playing) return;
    const begun = performance.now();
    let frame = requestAnimationFrame(function draw(now) {
      const share = (now - begun) / ROUND_MS;
      if (share >= 1) {
        setAngle(STOWED);
        setPlaying(false);
        return;
      }
      // A cosine slows at both ends, as a bed does in the hand.
      setAngle(((1 - Math.cos(2 * Math.PI * share)) / 2) * LOWERED);
      frame = requestAnimationFrame(draw);
    });
    return () => cancelAnimationFrame(frame);
  }, [playing]);

  return {
    angle,
    playing,
    still,
    show: (to: Deg) => {
      setPlaying(false);
      setAngle(to);
    },
    play: () => {
      if (still) setAngle((now) => (now >= LOWERED ? STOWED : Math.min(LOWERED, now + STEP)));
      else setPlaying((now) => !now);
    },
  };
}

const QUERY = '(prefers-reduced-motion: reduce)';

/** The device asks for no motion. */
const useReducedMotion = (): boolean =>
  useSyncExternalStore(
    (listener) => {
      const query = matchMedia(QUERY);
      query.addEventListener('change', listener);
      return () => query.removeEventListener('change', listener);
    },
    () => matchMedia(QUERY).matches,
  );
