import { wrap } from 'comlink';
import { useEffect, useState } from 'react';
import type { Design } from '../../design/schema.ts';
import { shownFrom } from '../document/shown.ts';
import type { LetterColor } from '../planning/letterPictures.ts';
import type { Work } from '../planning/worker.ts';

/** The first page stands before letters are asked for, and a measure of the bed may still be typed. */
const QUIET_MS = 300;

/** The lettering of one design by its signs. */
export type Letters = ReadonlyMap<string, readonly LetterColor[]>;

const NOTHING: ReadonlyMap<Design, Letters> = new Map();

/** The lettering of designs, drawn one after the other in a worker once the page stands; their fonts come with it. */
export function useLetterPictures(designs: readonly Design[]): ReadonlyMap<Design, Letters> {
  const [found, setFound] = useState(NOTHING);
  useEffect(() => {
    let worker: Worker | null = null;
    const timer = setTimeout(() => {
      if (designs.length === 0) return;
      worker = new Worker(new URL('../planning/worker.ts', import.meta.url), { type: 'module' });
      const { letters } = wrap<Work>(worker);
      const draw = async () => {
        for (const design of designs) {
          const own = await letters(shownFrom(design).layout.parts, design.pictures);
          // What was drawn for another bed is let go.
          setFound((before) => new Map([...before].filter(([d]) => designs.includes(d))).set(design, own));
        }
      };
      // A worker that does not start leaves the signs bare: opened, they are lettered by the plan.
      void draw()
        .catch(() => undefined)
        .finally(() => worker?.terminate());
    }, QUIET_MS);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [designs]);
  return found;
}
