import library from 'harfbuzzjs/dist/harfbuzz.wasm?url';
import type { Shaper } from '../../lettering/shaping/shape.ts';

let loading: Promise<Shaper | null> | null = null;

/**
 * What sets letters together, fetched when it is first asked for, by workers alone: the page may not compile it. Null where
 * it cannot be had; the next time it is tried again.
 */
export async function shaperAtHand(): Promise<Shaper | null> {
  loading ??= load().catch(() => null);
  const shaper = await loading;
  if (!shaper) loading = null;
  return shaper;
}

async function load(): Promise<Shaper> {
  const [{ shaperOf }, response] = await Promise.all([
    import('../../lettering/shaping/shaper.ts'),
    fetch(new URL(library, self.location.href)),
  ]);
  const module = await WebAssembly.compile(await response.arrayBuffer());
  return shaperOf((imports) => new WebAssembly.Instance(module, imports).exports);
}
