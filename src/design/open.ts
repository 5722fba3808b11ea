import { migrate } from './migrate/migrate.ts';
import { type Problem, problemsOf } from './problem.ts';
import { repairIds } from './repair.ts';
import { type Design, designSchema, FORMAT_VERSION } from './schema.ts';

/** Longest file that is read, in characters: two thousand parts with opened fonts stay well below. */
export const MOST_CHARACTERS = 64_000_000;
/** Deepest nesting that is read; the format itself needs fewer than ten levels. */
export const MOST_DEPTH = 64;
/** Problems told at once; a file of the wrong kind would name thousands. */
const MOST_PROBLEMS = 50;

export type Opened =
  | {
      readonly ok: true;
      readonly design: Design;
      readonly repairs: readonly string[];
      readonly migratedFrom: number;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Opens the text of a design file. Nothing of a bad file gets in: it is refused with every problem named,
 * or mended where the mending cannot change what is built, with a list of what was done. Never throws.
 */
export function openDesign(text: string): Opened {
  if (text.length > MOST_CHARACTERS) {
    return refuse({
      path: '',
      of: null,
      found: `${text.length} characters`,
      expected: `at most ${MOST_CHARACTERS}`,
      todo: 'This is not a design file of this tool, or its opened fonts are too large.',
    });
  }
  const depth = deepest(text);
  if (depth > MOST_DEPTH) {
    return refuse({
      path: '',
      of: null,
      found: `${depth} levels of brackets inside each other`,
      expected: `at most ${MOST_DEPTH}`,
      todo: 'This is not a design file of this tool.',
    });
  }
  const parsed = parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text);
  if (!parsed.ok) return refuse(parsed.problem);
  return openData(parsed.data);
}

/** Opens plain data, as `openDesign` does after parsing. */
export function openData(data: unknown): Opened {
  const current = migrate(data);
  if (!current.ok) return refuse(versionProblem(current.why, current.version));
  const mended = repairIds(current.data);
  const checked = designSchema.safeParse(mended.data);
  if (!checked.success) {
    return { ok: false, problems: problemsOf(checked.error.issues.slice(0, MOST_PROBLEMS), mended.data) };
  }
  return { ok: true, design: checked.data, repairs: mended.repairs, migratedFrom: current.from };
}

/** The text of a design file; opening it gives the same design again. */
export function saveDesign(design: Design): string {
  return `${JSON.stringify(design, null, 2)}\n`;
}

function refuse(problem: Problem): Opened {
  return { ok: false, problems: [problem] };
}

function versionProblem(why: 'not-a-design' | 'newer' | 'unknown-version', version: unknown): Problem {
  if (why === 'not-a-design') {
    return {
      path: '',
      of: null,
      found: 'no field “showface”',
      expected: 'a design file, which names its format version in that field',
      todo: 'Choose a design file; those end in .json and are written by “Save”.',
    };
  }
  const found =
    typeof version === 'number' ? `format version ${version}` : `the version ${JSON.stringify(version)}`;
  return {
    path: 'showface',
    of: null,
    found,
    expected: `a format version from 1 to ${FORMAT_VERSION}`,
    todo:
      why === 'newer'
        ? 'The file was written by a newer version of this tool: open it with that one. The file was not changed.'
        : 'No version of this tool wrote that. The file was not changed.',
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

function parseJson(text: string): { ok: true; data: unknown } | { ok: false; problem: Problem } {
  try {
    return { ok: true, data: JSON.parse(text) };
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    const place = /position (\d+)/.exec(message);
    const at = place ? Number(place[1]) : text.length;
    const before = text.slice(0, at).split('\n');
    const found = at >= text.trimEnd().length ? 'the end of the text' : `“${text.slice(at, at + 12)}”`;
    return {
      ok: false,
      problem: {
        path: '',
        of: null,
        found: `${found} at line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`,
        expected: 'more of a JSON text',
        todo: 'The file is damaged or cut short: take a backup copy, or mend it at that place.',
      },
    };
  }
}
