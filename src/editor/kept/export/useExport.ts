import { useCallback, useState } from 'react';
import type { Check } from '../../../check/check.ts';
import type { Design } from '../../../design/schema.ts';
import { NoPlan } from '../../planning/planner.ts';
import { usePlanner, useStore } from '../../state/hooks.ts';
import { say } from '../../state/store.ts';
import { t } from '../../words/t.ts';
import { saveBytes } from '../file.ts';
import type { ExportEntry } from './exports.ts';
import type { MadeFile } from './filesWorker.ts';

/** What is being written just now. */
export interface ExportJob {
  readonly entry: ExportEntry;
  /** Null while the plan of the design as it is now is waited for. */
  readonly files: { readonly done: number; readonly of: number } | null;
  readonly cancel: () => void;
}

/** An export that the command would refuse, held back until the person has read why. */
export interface ExportDoubt {
  readonly entry: ExportEntry;
  readonly errors: readonly Check[];
  readonly design: Design;
}

/** Sentences that a notice has room for, with a sign that there are more. */
const shortList = (sentences: readonly string[]): string =>
  sentences.slice(0, 3).join(' ') + (sentences.length > 3 ? ' …' : '');

/**
 * Writes what the menu offers, always from the plan of the design as it is now: that is waited for, and everything
 * can be canceled. A plan with errors is written only when the person wants it `anyway`.
 */
export function useExport() {
  const store = useStore();
  const planner = usePlanner();
  const [job, setJob] = useState<ExportJob | null>(null);
  const [doubt, setDoubt] = useState<ExportDoubt | null>(null);
  /** Made to be shared, which the person has to press for once more. */
  const [toShare, setToShare] = useState<readonly MadeFile[] | null>(null);

  const write = useCallback(
    async (entry: ExportEntry, anyway: boolean) => {
      const name = t(entry.words);
      const stop = new AbortController();
      let over = false;
      // The worker tells of its files on a channel of their own, on which the last word may come after the end.
      const show = (files: ExportJob['files']) => {
        if (!over) setJob({ entry, files, cancel: () => stop.abort() });
      };
      show(null);
      setDoubt(null);
      try {
        const plan = await planner.current(stop.signal);
        const errors = plan.checks.filter((c) => c.severity === 'error');
        if (errors.length > 0 && !anyway) return setDoubt({ entry, errors, design: plan.design });
        const onFile = (done: number, of: number) => show({ done: Math.min(done + 1, of), of });
        const { files, warnings } = await entry.write(plan, {
          ...{ signal: stop.signal, onFile },
          pixels: store.getState().picturePixels,
        });
        if (entry.shared) return setToShare(files);
        for (const file of files) await saveBytes(file.name, file.type, file.bytes);
        const written = t('say.exported', { name });
        if (warnings.length === 0) say(store, written);
        else store.setState({ notice: { tone: 'bad', text: `${written}. ${shortList(warnings)}` } });
      } catch (error) {
        if (error instanceof DOMException && error.name === 'AbortError') {
          say(store, t('export.stopped', { name }));
          return;
        }
        const why = error instanceof Error ? error.message : String(error);
        const text =
          error instanceof NoPlan ? t('export.noPlan', { name }) : t('export.failed', { name, why });
        store.setState({ notice: { tone: 'bad', text } });
      } finally {
        over = true;
        setJob(null);
      }
    },
    [store, planner],
  );
  const drop = () => {
    setDoubt(null);
    setToShare(null);
  };
  return { job, doubt, toShare, write, drop };
}
