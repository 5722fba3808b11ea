import { useEffect, useState } from 'react';

/** `on`: the screen stays lit; `never`: the browser cannot; `insecure`: it could at a secure address. */
export type Awake = 'on' | 'off' | 'never' | 'insecure';

/** Keeps the screen lit while the component stands, and asks again when the page comes back into view. */
export function useAwake(): Awake {
  const [state, setState] = useState<Awake>(() => {
    if (!isSecureContext) return 'insecure';
    return 'wakeLock' in navigator ? 'off' : 'never';
  });
  useEffect(() => {
    if (!isSecureContext || !('wakeLock' in navigator)) return;
    let lock: WakeLockSentinel | null = null;
    let gone = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible' || (lock && !lock.released)) return;
      try {
        lock = await navigator.wakeLock.request('screen');
        if (gone) return void lock.release();
        lock.addEventListener('release', () => {
          if (!gone) setState('off');
        });
        setState('on');
      } catch {
        // Low battery or a rule of the device: the screen dims as usual.
        if (!gone) setState('off');
      }
    };
    void ask();
    const onShow = () => void ask();
    document.addEventListener('visibilitychange', onShow);
    return () => {
      gone = true;
      document.removeEventListener('visibilitychange', onShow);
      void lock?.release();
    };
  }, []);
  return state;
}
