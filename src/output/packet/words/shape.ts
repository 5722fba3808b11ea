import type { EN } from './en.ts';

/** The same keys with any text: strings, sentences with places for figures, tables of both. */
type Worded<T> = T extends string
  ? string
  : T extends (...figures: infer F) => string | readonly string[]
    ? (...figures: F) => ReturnType<T> extends string ? string : readonly string[]
    : { readonly [K in keyof T]: Worded<T[K]> };

/** Everything the packet says in its own voice; sentences of checks and steps come from the plan's words. */
export type PacketWords = Worded<typeof EN>;
