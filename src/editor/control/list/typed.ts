/** Letters typed within this time belong to one name. */
const TYPING_MS = 700;

/** The beginning of a name as it is typed into a list, by the times at which the keys were pressed. */
export class Typed {
  #text = '';
  #at = Number.NEGATIVE_INFINITY;

  /** Whether a name is being typed: a space belongs to it then. */
  runsAt = (time: number): boolean => this.#text !== '' && time - this.#at < TYPING_MS;

  /** What is typed so far, with the letter of this moment (milliseconds, of the event). */
  add(letter: string, time: number): string {
    this.#text = (this.runsAt(time) ? this.#text : '') + letter.toLowerCase();
    this.#at = time;
    return this.#text;
  }
}

/** Which name begins with what was typed, going around from the one at `now`; one letter again and again goes on. */
export function placeByName(text: string, names: readonly string[], now: number): number | null {
  const [letter = ''] = text;
  const again = text === letter.repeat(text.length);
  const wanted = again ? letter : text;
  const from = Math.max(0, again ? now + 1 : now);
  for (let i = 0; i < names.length; i++) {
    const at = (from + i) % names.length;
    if (names[at]?.toLowerCase().startsWith(wanted)) return at;
  }
  return null;
}
