import { useState } from 'react';
import { useEditor } from '../../state/hooks.ts';

const keyOf = (what: string, design: string | null): string => `showface:${what}:${design ?? ''}`;

/** Things ticked off at the bench: kept on this device beside the design, never in it. */
export function useTicks(what: string) {
  const design = useEditor((s) => s.designId);
  const key = keyOf(what, design);
  const [state, setState] = useState(() => ({ key, ticked: read(key) }));
  const ticked = state.key === key ? state.ticked : read(key);
  return {
    ticked,
    tick: (ids: readonly string[], on: boolean) => {
      const next = new Set(ticked);
      for (const id of ids) {
        if (on) next.add(id);
        else next.delete(id);
      }
      setState({ key, ticked: next });
      try {
        localStorage.setItem(key, JSON.stringify([...next]));
      } catch {
        // Storage may be blocked; the ticks then last as long as the page.
      }
    },
  };
}

function read(key: string): ReadonlySet<string> {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? '[]');
    return new Set(Array.isArray(value) ? value.filter((id) => typeof id === 'string') : []);
  } catch {
    return new Set();
  }
}
