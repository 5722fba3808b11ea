import { useEffect, useState } from 'react';
import type { Design } from '../../../design/schema.ts';
import type { Proportion } from '../../../lettering/legibility.ts';
import { bytesOfBase64 } from '../../../plan/base64.ts';
import { fontBytes } from '../../shipped/fonts.ts';
import { lookAtFont } from './lookAtFont.ts';

const known = new Map<string, Promise<readonly Proportion[]>>();

/** Proportions of a font's own letters, measured once in a worker. */
export function useProportions(font: string, own: Design['fonts']): readonly Proportion[] {
  const [found, setFound] = useState<{ font: string; proportions: readonly Proportion[] } | null>(null);
  useEffect(() => {
    let wanted = true;
    let measuring = known.get(font);
    if (!measuring) {
      measuring = measure(font, own);
      known.set(font, measuring);
    }
    void measuring.then((proportions) => {
      if (wanted) setFound({ font, proportions });
    });
    return () => {
      wanted = false;
    };
  }, [font, own]);
  return found?.font === font ? found.proportions : [];
}

async function measure(font: string, own: Design['fonts']): Promise<readonly Proportion[]> {
  const mine = own.find((f) => `own:${f.id}` === font);
  const bytes = mine ? bytesOfBase64(mine.data) : await fontBytes(font);
  const look = bytes ? await lookAtFont(bytes, font) : null;
  return look?.ok ? look.proportions : [];
}
