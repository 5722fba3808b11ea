import { useCallback, useEffect, useState } from 'react';
import type { Design } from '../../design/schema.ts';
import { clearRemoved, type Kept, listKept, listRemoved, readKept } from '../kept/shelf.ts';

interface Found {
  readonly kept: readonly Kept[];
  readonly removed: readonly Kept[];
}

/** The designs kept on this device, and those removed from among them. */
export interface Shelf extends Found {
  /** The kept designs by id, as far as they were read: for their pictures. */
  readonly designs: ReadonlyMap<string, Design>;
  /** Looks again once a change is done. */
  readonly change: (done: Promise<void>) => Promise<void>;
}

const NOTHING: Found = { kept: [], removed: [] };
const NONE: ReadonlyMap<string, Design> = new Map();
/** So many are shown with a picture: each is read, laid out and drawn. */
const MOST_PICTURES = 12;
/** Larger ones would keep the page from standing. */
const MOST_PARTS = 300;

export function useShelf(): Shelf {
  const [found, setFound] = useState(NOTHING);
  const [designs, setDesigns] = useState(NONE);
  const change = useCallback(async (done: Promise<void>) => {
    // Where the device refuses, the list shows what is still there.
    await done.catch(() => {});
    const [kept, removed] = await Promise.all([listKept(), listRemoved()]).catch(() => [[], []]);
    setFound({ kept: kept ?? [], removed: removed ?? [] });
  }, []);
  useEffect(() => {
    void change(clearRemoved(Date.now()));
  }, [change]);

  const { kept } = found;
  useEffect(() => {
    let over = false;
    const read = async () => {
      for (const { id } of kept.slice(0, MOST_PICTURES)) {
        const opened = await readKept(id).catch(() => null);
        if (over) return;
        if (!opened?.ok || opened.design.parts.length > MOST_PARTS) continue;
        setDesigns((before) => new Map(before).set(id, opened.design));
      }
    };
    void read();
    return () => {
      over = true;
    };
  }, [kept]);
  return { ...found, designs, change };
}
