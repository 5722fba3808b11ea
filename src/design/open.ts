import type { z } from 'zod';
import { lastOf } from '../list/at.ts';
import { ENGLISH_FILE, type FileWords } from './fileWords.ts';
import { FORMAT_VERSION, MOST_CHARACTERS } from './limits.ts';
import { migrate } from './migrate/migrate.ts';
import { type Problem, problemsOf } from './problem.ts';
import { repairIds } from './repair.ts';
import { type Design, designSchema } from './schema.ts';

/** Deepest nesting that is read; the format itself needs fewer than ten levels. */
export const MOST_DEPTH = 64;
/** Problems told at once; a file of the wrong kind would name thousands. */
const MOST_PROBLEMS = 50;

/** What opens, with what was mended; or every problem of what does not. */
export type Opening<T> =
  | { readonly ok: true; readonly opened: T; readonly repairs: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export type Opened =
  | {
      readonly ok: true;
      readonly design: Design;
      readonly repairs: readonly string[];
      readonly migratedFrom: number;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Plain data, or why a text is none. */
export type Read =
  | { readonly ok: true; readonly data: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Opens the text of a design file. Nothing of a bad file gets in: it is refused with every problem named,
 * or mended where the mending cannot change what is built, with a list of what was done, both in the words given. Never throws.
 */
export function openDesign(text: string, words: FileWords = ENGLISH_FILE): Opened {
  const read = readText(text, words);
  return read.ok ? openData(read.data, words) : read;
}

/** The data of a file's text, whatever it is of; refused where it is too long, too deep or no JSON. */
export function readText(text: string, words: FileWords): Read {
  if (text.length > MOST_CHARACTERS) {
    return refuse({
      path: '',
      of: null,
      found: words.found.characters(text.length),
      expected: words.expected.most(MOST_CHARACTERS),
      todo: words.todo.noDesignOrFonts,
    });
  }
  const depth = deepest(text);
  if (depth > MOST_DEPTH) {
    return refuse({
      path: '',
      of: null,
      found: words.found.levels(depth),
      expected: words.expected.most(MOST_DEPTH),
      todo: words.todo.noDesign,
    });
  }
  const parsed = parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text, words);
  return parsed.ok ? parsed : refuse(parsed.problem);
}

/** Opens plain data, as `openDesign` does after parsing. */
export function openData(data: unknown, words: FileWords = ENGLISH_FILE): Opened {
  const current = migrate(data);
  if (!current.ok) return refuse(versionProblem(current.why, current.version, words));
  const opening = openedBy(designSchema, current.data, words);
  if (!opening.ok) return opening;
  return { ok: true, design: opening.opened, repairs: opening.repairs, migratedFrom: current.from };
}

/** What a schema takes of data, once second ids are mended. */
export function openedBy<T>(
  schema: z.ZodType<T>,
  data: Readonly<Record<string, unknown>>,
  words: FileWords,
): Opening<T> {
  const mended = repairIds(data, words);
  const checked = schema.safeParse(mended.data);
  if (checked.success) return { ok: true, opened: checked.data, repairs: mended.repairs };
  const issues = checked.error.issues.slice(0, MOST_PROBLEMS);
  return { ok: false, problems: problemsOf(issues, mended.data, words) };
}

function refuse(problem: Problem): { readonly ok: false; readonly problems: readonly Problem[] } {
  return { ok: false, problems: [problem] };
}

export function versionProblem(
  why: 'not-a-design' | 'newer' | 'unknown-version',
  version: unknown,
  { found, expected, todo }: FileWords,
  field = 'showface',
  last = FORMAT_VERSION,
): Problem {
  if (why === 'not-a-design') {
    return {
      path: '',
      of: null,
      found: found.noVersion,
      expected: expected.design,
      todo: todo.chooseDesign,
    };
  }
  return {
    path: field,
    of: null,
    found: typeof version === 'number' ? found.version(version) : found.otherVersion(JSON.stringify(version)),
    expected: expected.versions(last),
    todo: why === 'newer' ? todo.newer : todo.unknownVersion,
  };
}

/** How deep brackets stand inside each other, outside of strings; linear in the text. */
function deepest(text: string): number {
  let depth = 0;
  let most = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (inString) {
      if (c === 92) i++;
      else if (c === 34) inString = false;
    } else if (c === 34) inString = true;
    else if (c === 91 || c === 123) most = Math.max(most, ++depth);
    else if (c === 93 || c === 125) depth--;
  }
  return most;
}

function parseJson(
  text: string,
  words: FileWords,
): { ok: true; data: unknown } | { ok: false; problem: Problem } {
  try {
    return { ok: true, data: JSON.parse(text) };
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    const place = /position (\d+)/.exec(message);
    const at = place ? Number(place[1]) : text.length;
    const before = text.slice(0, at).split('\n');
    const what = at >= text.trimEnd().length ? words.found.end : words.quoted(text.slice(at, at + 12));
    return {
      ok: false,
      problem: {
        path: '',
        of: null,
        found: words.found.place(what, before.length, lastOf(before).length + 1),
        expected: words.expected.json,
        todo: words.todo.damaged,
      },
    };
  }
}
