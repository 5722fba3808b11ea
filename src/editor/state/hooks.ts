import {
  createContext,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useState,
  useSyncExternalStore,
} from 'react';
import type { Face } from '../../bed/face.ts';
import type { Edit } from '../../design/edit/edit.ts';
import type { Design } from '../../design/schema.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import type { Layout } from '../../layout/laid.ts';
import type { MeasureStyle } from '../../measure/style.ts';
import { styleIn } from '../../plan/words/languages.ts';
import type { Shown } from '../document/shown.ts';
import type { Planner, PlanState } from '../planning/planner.ts';
import { useLanguage } from '../words/t.ts';
import { type CommitOptions, commit } from './commit.ts';
import type { Follower } from './follower.ts';
import { type EditorState, type EditorStore, inPanes, shownNow, type Theme } from './store.ts';
import { themeOnPage, watchTheme } from './theme.ts';

export interface Bench {
  readonly store: EditorStore;
  readonly planner: Planner;
  readonly follower: Follower;
}

export const BenchContext = createContext<Bench | null>(null);

function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (!bench) throw new Error('no bench around this component');
  return bench;
}

export const useStore = (): EditorStore => useBench().store;

/** One value of the editor's state; re-renders when it changes, but for what is carried: see `useShown`. */
export function useEditor<T>(pick: (state: EditorState) => T): T {
  const { store, follower } = useBench();
  const get = () => pick(store.getState());
  return useSyncExternalStore(follower.besides, get, get);
}

/** The design as shown, laid out, with what a running gesture proposes; during a drag it is told every so often. */
export function useShown(): Shown {
  const { subscribe, get } = useBench().follower;
  return useSyncExternalStore(subscribe, get);
}

export const useDesign = (): Design => useShown().design;

/** Layout of the design as shown; follows a drag. */
export const useLayout = (): Layout => useShown().layout;

/** The design as last committed, laid out: for whatever need not follow a drag live. */
export const useSettled = (): Shown => useEditor((s) => s.edit.shown);

export const useSettledDesign = (): Design => useEditor((s) => s.edit.design);

export const useFace = (): Face => useEditor((s) => shownNow(s).face);

/** What is selected, as the panes show it: when a press turns into a drag, only once the hand rests or lets go. */
export const useSelection = (): readonly string[] => useEditor((s) => inPanes(s).selection);

/** How the design as shown is measured, in the notation of the language on screen. */
export function useMeasureStyle(): MeasureStyle {
  const measure = useEditor((s) => shownNow(s).design.measure);
  const language = useLanguage();
  return useMemo(() => styleIn(language, measure), [language, measure]);
}

/** What gives plans that are sure to be of the design as it is. */
export const usePlanner = (): Planner => useBench().planner;

/**
 * The whole plan, computed in a worker after each edit. `plan` is the last one that came; `stale` while a
 * newer one is on its way.
 */
export function usePlan(): PlanState {
  const { planner } = useBench();
  return useSyncExternalStore(planner.subscribe, planner.get);
}

/** Exact shadows of the plan that is shown, while they are wanted; null until they have come. */
export function useShadows(wanted: boolean): readonly ShadowArea[] | null {
  const { planner } = useBench();
  const { plan, stale } = usePlan();
  const [found, setFound] = useState<{
    readonly plan: unknown;
    readonly areas: readonly ShadowArea[];
  } | null>(null);
  useEffect(() => {
    if (!wanted || !plan || stale) return;
    let gone = false;
    void planner.shadows().then((areas) => {
      if (!gone) setFound({ plan, areas });
    });
    return () => {
      gone = true;
    };
  }, [wanted, plan, stale, planner]);
  return wanted && !stale && found?.plan === plan ? (found?.areas ?? null) : null;
}

/** Carries edits out as one step of undo. */
export function useCommit(): (edits: readonly Edit[], label: string, options?: CommitOptions) => boolean {
  const store = useStore();
  return useCallback((edits, label, options) => commit(store, edits, label, options), [store]);
}

/** The theme on screen: the person's choice, or what the device asks for. */
export function useResolvedTheme(): Theme {
  useEditor((s) => s.theme);
  return useSyncExternalStore(watchTheme, themeOnPage);
}
