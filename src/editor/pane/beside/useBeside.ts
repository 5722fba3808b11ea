import { useEffect, useRef, useState } from 'react';
import type { Design } from '../../../design/schema.ts';
import type { FaceFigures } from '../../../output/packet/sideBySide.ts';
import { type Alive, startWorker } from '../../planning/alive.ts';
import { useEditor } from '../../state/hooks.ts';
import { useLanguage } from '../../words/t.ts';
import type { BesideWork } from './besideWorker.ts';

/** A face to set beside others. */
export interface Choice {
  readonly key: string;
  readonly name: string;
  /** Null where what is kept of it cannot be read. */
  readonly design: () => Promise<Design | null>;
}

/** What is known of a face: its figures and where its picture is, or why there is none. */
export type Found =
  | { readonly figures: FaceFigures; readonly picture: string }
  | { readonly failed: 'unread' | 'unplanned' };

/** Plans the chosen faces one after the other in a worker, which ends with what shows them. */
export function useBeside(chosen: readonly Choice[]) {
  const language = useLanguage();
  const correction = useEditor((s) => s.correction);
  const [found, setFound] = useState<ReadonlyMap<string, Found>>(new Map());
  const alive = useRef<Alive<BesideWork> | null>(null);
  const pictures = useRef<string[]>([]);
  const next = chosen.find(({ key }) => !found.has(key));

  useEffect(
    () => () => {
      alive.current?.end();
      for (const picture of pictures.current) URL.revokeObjectURL(picture);
    },
    [],
  );

  useEffect(() => {
    if (!next) return;
    let wanted = true;
    const tell = (told: Found) => {
      if (wanted) setFound((before) => new Map(before).set(next.key, told));
    };
    const look = async (): Promise<Found> => {
      const design = await next.design();
      if (!design) return { failed: 'unread' };
      alive.current ??= startWorker<BesideWork>(
        () => new Worker(new URL('./besideWorker.ts', import.meta.url), { type: 'module' }),
        {
          died: () => {
            alive.current = null;
            tell({ failed: 'unplanned' });
          },
        },
      );
      const { figures, picture } = await alive.current.work.plan(next.key, design, correction, language);
      const at = URL.createObjectURL(new Blob([picture], { type: 'image/svg+xml' }));
      pictures.current.push(at);
      return { figures, picture: at };
    };
    look().then(tell, () => tell({ failed: 'unplanned' }));
    return () => {
      wanted = false;
    };
  }, [next, correction, language]);

  const sheet = () =>
    alive.current?.work.sheet(
      chosen.filter(({ key }) => found.has(key)).map(({ key, name }) => ({ key, name })),
    ) ?? Promise.resolve(null);
  return { found, isDone: next === undefined, sheet };
}
