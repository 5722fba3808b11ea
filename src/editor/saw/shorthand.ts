import { designJsonSchema } from '../../design/jsonSchema.ts';

/**
 * The field names and set words of the design format as one or two control characters each: those never stand
 * in JSON text, and the compressor behind has less to say. Made from the format itself, so that both ends
 * agree as long as they run the same version; another version is refused by the file door.
 */
interface Shorthand {
  readonly shorten: (json: string) => string;
  readonly spell: (short: string) => string;
}

/** Characters 1 to 23 stand alone; 24 to 31 lead in one of 90 printable ones. */
const SINGLE = 23;
const FIRST_LEAD = 24;
const SECONDS = 90;
const FIRST_SECOND = 35;

let made: Shorthand | null = null;

export function shorthand(): Shorthand {
  made ??= make();
  return made;
}

function make(): Shorthand {
  const words = wordsOf(designJsonSchema());
  const codes = new Map(words.map((word, i) => [word, codeOf(i)]));
  const back = new Map(words.map((word, i) => [codeOf(i), word]));
  return {
    // Whole tokens only: a field name with its colon, a text between its quotes.
    shorten: (json) => json.replace(/"(?:[^"\\]|\\.)*":?/g, (token) => codes.get(token) ?? token),
    spell: (short) =>
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are the code.
      short.replace(/[\x18-\x1f][#-|]|[\x01-\x17]/g, (code) => back.get(code) ?? code),
  };
}

function codeOf(i: number): string {
  if (i < SINGLE) return String.fromCharCode(i + 1);
  const n = i - SINGLE;
  return String.fromCharCode(FIRST_LEAD + Math.floor(n / SECONDS), FIRST_SECOND + (n % SECONDS));
}

/** Field names and set words of the format, in the order in which they first stand in it. */
function wordsOf(schema: unknown): string[] {
  const found = new Set<string>();
  const visit = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    // A list is visited as an object of its entries: it has none of the three.
    const { properties, enum: choices, const: fixed } = node as Record<string, unknown>;
    if (typeof properties === 'object' && properties !== null) {
      for (const name of Object.keys(properties)) found.add(`${JSON.stringify(name)}:`);
    }
    for (const word of [...(Array.isArray(choices) ? choices : []), fixed]) {
      if (typeof word === 'string') found.add(JSON.stringify(word));
    }
    Object.values(node).forEach(visit);
  };
  visit(schema);
  return [...found];
}
