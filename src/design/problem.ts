import type { z } from 'zod';

/** What is wrong with a design file, told to the person who opened it. */
export interface Problem {
  /** Where in the file, such as `parts[3].box.w`; empty for the file as a whole. */
  readonly path: string;
  /** Name of the part, rule or finish it belongs to, where it has one. */
  readonly of: string | null;
  readonly found: string;
  readonly expected: string;
  /** What to do. */
  readonly todo: string;
}

/** The problem as one sentence. */
export function problemMessage(p: Problem): string {
  const where = p.path === '' ? 'The file' : p.of === null ? p.path : `${p.path} (“${p.of}”)`;
  return `${where}: found ${p.found}; expected ${p.expected}. ${p.todo}`;
}

type Issue = z.core.$ZodIssue;

/** Problems of a validation, one for each issue; the data is only read to show what was found. */
export function problemsOf(issues: readonly Issue[], data: unknown): Problem[] {
  return issues.map((issue) => ({
    path: pathText(issue.path),
    of: ownerName(issue.path, data),
    found: foundText(valueAt(data, issue.path), issue),
    expected: expectedText(issue),
    todo: todoText(issue),
  }));
}

export function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((p, i) => (typeof p === 'number' ? `[${p}]` : i === 0 ? String(p) : `.${String(p)}`))
    .join('');
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let now = data;
  for (const key of path) {
    if (typeof now !== 'object' || now === null || !Object.hasOwn(now, key)) return undefined;
    now = (now as Record<PropertyKey, unknown>)[key];
  }
  return now;
}

/** Name of the nearest thing around the path that has a name or an id. */
function ownerName(path: readonly PropertyKey[], data: unknown): string | null {
  for (let n = path.length - 1; n > 0; n--) {
    const owner = valueAt(data, path.slice(0, n));
    if (typeof owner !== 'object' || owner === null) continue;
    const { name, id } = owner as { name?: unknown; id?: unknown };
    if (typeof name === 'string' && name !== '') return name.slice(0, 80);
    if (typeof id === 'string' && id !== '') return id.slice(0, 80);
  }
  return null;
}

function foundText(value: unknown, issue: Issue): string {
  if (issue.code === 'unrecognized_keys')
    return `the unknown field ${issue.keys.map((k) => `“${k}”`).join(', ')}`;
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return `“${value.length > 60 ? `${value.slice(0, 57)}…` : value}”`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return 'an object';
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  int: 'a whole number',
  record: 'an object',
  tuple: 'a list of fixed length',
  null: 'null',
};

function expectedText(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE_WORDS[issue.expected] ?? issue.expected;
    case 'too_small':
      return sizeText(issue.origin, issue.inclusive ? 'at least' : 'more than', Number(issue.minimum));
    case 'too_big':
      return sizeText(issue.origin, issue.inclusive ? 'at most' : 'less than', Number(issue.maximum));
    case 'invalid_value':
      return `one of ${issue.values.map((v) => `“${String(v)}”`).join(', ')}`;
    case 'invalid_union':
      return issue.discriminator
        ? `a known “${issue.discriminator}”`
        : 'one of the forms that this field takes';
    case 'unrecognized_keys':
      return 'only fields of this format';
    case 'invalid_format':
      return issue.message.startsWith('Invalid') ? 'a text of the right form' : issue.message;
    default:
      return issue.message;
  }
}

function sizeText(origin: string, bound: string, limit: number): string {
  if (origin === 'string') return `a text of ${bound} ${limit} characters`;
  if (origin === 'array') return `a list of ${bound} ${limit} entries`;
  return `a number of ${bound} ${limit}`;
}

function todoText(issue: Issue): string {
  if (issue.code === 'unrecognized_keys')
    return 'Take it out, or open the file with the version that wrote it.';
  if (issue.code === 'invalid_type' && issue.input === undefined) return 'Add the field.';
  return 'Correct the value and open the file again.';
}
