import { useEffect, useMemo, useRef } from 'react';
import type { Check } from '../../check/check.ts';
import { alike } from '../pane/facts/alike.ts';
import { useEditor, usePlan, useStore } from '../state/hooks.ts';
import { say } from '../state/store.ts';
import { t } from '../words/t.ts';

/** Checks that ask for something, to be mended or to be looked at: of those that are told as one message the first. */
const openOf = (checks: readonly Check[]): Check[] =>
  alike(checks.filter((c) => c.severity !== 'note')).flatMap(([first]) => first ?? []);

/** How many checks of the last plan ask for something; null before there is a plan. */
export function useOpenChecks(): number | null {
  const { plan } = usePlan();
  return useMemo(() => plan && openOf(plan.checks).length, [plan]);
}

/** Speaks how many checks came and went with each plan of the open design. */
export function useTellChecks(): void {
  const store = useStore();
  const { plan, stale } = usePlan();
  const id = useEditor((s) => s.designId);
  const told = useRef<{ readonly id: string | null; readonly checks: readonly Check[] } | null>(null);
  useEffect(() => {
    if (!plan || stale) return;
    const before = told.current;
    told.current = { id, checks: openOf(plan.checks) };
    if (before?.id !== id) return;
    const text = changeOfChecks(before.checks, told.current.checks);
    if (text) say(store, text);
  }, [plan, stale, id, store]);
}

/** What came and went from one list of checks to the next; nothing where it is the same. */
function changeOfChecks(before: readonly Check[], now: readonly Check[]): string {
  const came = without(now, before);
  const went = without(before, now);
  const all = now.length;
  if (came > 0 && went > 0) return t('say.checksChanged', { came, went, all });
  if (came > 0) return t('say.checksCame', { count: came, all });
  return went > 0 ? t('say.checksWent', { count: went, all }) : '';
}

/** How many of some checks are not among others; a check is told by what it says of which parts. */
function without(some: readonly Check[], others: readonly Check[]): number {
  const left = others.map(keyOf);
  return some.filter((check) => {
    const at = left.indexOf(keyOf(check));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  }).length;
}

const keyOf = ({ code, parts }: Check): string => `${code}|${parts.join()}`;
