import { proxy, wrap } from 'comlink';
import { useEffect, useState } from 'react';
import type { Check } from '../../check/check.ts';
import type { Design } from '../../design/schema.ts';
import type { Work } from '../planning/worker.ts';
import { useLanguage } from '../words/t.ts';

/** A measure may still be typed: planned is what stays this long. */
const QUIET_MS = 350;
const TRUE_TO_SIZE = { x: 1, y: 1 };

export interface Fitted {
  readonly name: string;
  readonly fitted: Design;
}

/** Errors and warnings of each fitted starter by its name; absent while they are looked for. */
export type FitChecks = ReadonlyMap<string, readonly Check[]>;

const NOTHING: FitChecks = new Map();

/** Plans fitted starters one after the other in a worker of their own and tells what came up; null: none to plan. */
export function useFitChecks(starters: readonly Fitted[] | null): FitChecks {
  const language = useLanguage();
  const [found, setFound] = useState<FitChecks>(NOTHING);
  useEffect(() => {
    setFound(NOTHING);
    if (!starters) return;
    let worker: Worker | null = null;
    const timer = setTimeout(() => {
      worker = new Worker(new URL('../planning/worker.ts', import.meta.url), { type: 'module' });
      const { plan } = wrap<Work>(worker);
      const look = async () => {
        for (const { name, fitted } of starters) {
          const { checks } = await plan(
            fitted,
            TRUE_TO_SIZE,
            language,
            proxy(() => {}),
            null,
          );
          setFound((before) =>
            new Map(before).set(
              name,
              checks.filter((c) => c.severity !== 'note'),
            ),
          );
        }
      };
      // A worker that does not start leaves the starters as they are: opened, they are planned anew.
      void look().catch(() => undefined);
    }, QUIET_MS);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [starters, language]);
  return found;
}
