import { badValue } from './problem.ts';

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const BETWEEN = /[\s,]*/y;
/** Farther out than any drawing is. */
export const FARTHEST = 1e7;

/** A place in a text from which numbers are read, as SVG lists them: with white, commas or nothing between them. */
export class Numbers {
  readonly #text: string;
  #at = 0;
  constructor(text: string) {
    this.#text = text;
  }

  #skip(): void {
    BETWEEN.lastIndex = this.#at;
    BETWEEN.test(this.#text);
    this.#at = BETWEEN.lastIndex;
  }

  get done(): boolean {
    this.#skip();
    return this.#at >= this.#text.length;
  }

  number(): number {
    this.#skip();
    NUMBER.lastIndex = this.#at;
    const [found] = NUMBER.exec(this.#text) ?? [];
    const value = Number(found ?? Number.NaN);
    if (found === undefined || !(Math.abs(value) <= FARTHEST)) return badValue(this.#text.slice(this.#at));
    this.#at += found.length;
    return value;
  }
}

/** A length in the picture's own units. A unit's name is passed over but for shares of a page that is not known. */
export function lengthIn(text: string | undefined, otherwise: number): number {
  if (text === undefined || text === 'auto') return otherwise;
  const [, number = '', unit = ''] = /^\s*([-+.\deE]+)\s*([a-z%]*)\s*$/.exec(text) ?? [];
  const PX: Readonly<Record<string, number>> = {
    '': 1,
    px: 1,
    mm: 96 / 25.4,
    cm: 960 / 25.4,
    in: 96,
    pt: 4 / 3,
    pc: 16,
  };
  const scale = Object.hasOwn(PX, unit) ? PX[unit] : undefined;
  const read = new Numbers(number);
  return scale === undefined ? badValue(text) : read.number() * scale;
}
