import { useEffect, useState } from 'react';
import type { Design } from '../../../design/schema.ts';
import { bytesOfBase64 } from '../../../plan/base64.ts';
import { fontUrl } from '../../shipped/fonts.ts';

const asked = new Map<string, Promise<string | null>>();

/** A font of the tables or of the design as a family of the page; loaded when it is first shown. */
export function useFontFace(id: string, own: Design['fonts']): string | null {
  const [family, setFamily] = useState<string | null>(null);
  useEffect(() => {
    let wanted = true;
    void load(id, own).then((found) => {
      if (wanted) setFamily(found);
    });
    return () => {
      wanted = false;
    };
  }, [id, own]);
  return family;
}

function load(id: string, own: Design['fonts']): Promise<string | null> {
  const mine = own.find((f) => `own:${f.id}` === id);
  const key = mine ? `${id}|${mine.data.length}` : id;
  let loading = asked.get(key);
  if (!loading) {
    loading = bring(id, mine?.data ?? null);
    asked.set(key, loading);
  }
  return loading;
}

async function bring(id: string, data: string | null): Promise<string | null> {
  const family = `sign-${id.replace(/[^\w-]/g, '-')}`;
  const url = fontUrl(id);
  const source = data !== null ? bytesOfBase64(data).slice().buffer : url ? `url("${url}")` : null;
  if (source === null) return null;
  try {
    const face = await new FontFace(family, source).load();
    document.fonts.add(face);
    return family;
  } catch {
    // The browser is stricter with some fonts than our own reader; the name then shows in the page's font.
    return null;
  }
}
