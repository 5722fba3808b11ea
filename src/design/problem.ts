import type { z } from 'zod';
import { ENGLISH_FILE, type FileWords, FORMS, type TypeName } from './fileWords.ts';

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
export function problemMessage(p: Problem, words: FileWords = ENGLISH_FILE): string {
  const where = p.path === '' ? words.file : p.of === null ? p.path : `${p.path} (${words.quoted(p.of)})`;
  return words.message(where, p.found, p.expected, p.todo);
}

type Issue = z.core.$ZodIssue;

/** Problems of a validation, one for each issue; the data is only read to show what was found. */
export function problemsOf(issues: readonly Issue[], data: unknown, words: FileWords): Problem[] {
  return issues.map((issue) => {
    const value = valueAt(data, issue.path);
    return {
      path: pathText(issue.path),
      of: ownerName(issue.path, data),
      found: foundText(value, issue, words),
      expected: expectedText(issue, words),
      todo: todoText(value, issue, words),
    };
  });
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

function foundText(value: unknown, issue: Issue, { found, quoted }: FileWords): string {
  if (issue.code === 'unrecognized_keys') return found.unknownFields(issue.keys.map(quoted).join(', '));
  if (value === undefined) return found.nothing;
  if (value === null) return 'null';
  if (typeof value === 'string') return quoted(value.length > 60 ? `${value.slice(0, 57)}…` : value);
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return found.list(value.length);
  return found.object;
}

function expectedText(issue: Issue, words: FileWords): string {
  const { expected, quoted } = words;
  switch (issue.code) {
    case 'invalid_type':
      return isTypeName(issue.expected, expected.type) ? expected.type[issue.expected] : issue.expected;
    case 'too_small':
      return sizeText(issue.origin, issue.inclusive ? 'least' : 'more', Number(issue.minimum), words);
    case 'too_big':
      return sizeText(issue.origin, issue.inclusive ? 'most' : 'less', Number(issue.maximum), words);
    case 'invalid_value':
      return expected.oneOf(issue.values.map((v) => quoted(String(v))).join(', '));
    case 'invalid_union':
      return issue.discriminator ? expected.known(quoted(issue.discriminator)) : expected.anyForm;
    case 'unrecognized_keys':
      return expected.fields;
    default: {
      const form = FORM_NAMES.find((name) => FORMS[name] === issue.message);
      return form ? expected.form[form] : expected.textForm;
    }
  }
}

const FORM_NAMES = Object.keys(FORMS) as (keyof typeof FORMS)[];

const isTypeName = (name: string, types: FileWords['expected']['type']): name is TypeName =>
  Object.hasOwn(types, name);

function sizeText(
  origin: string,
  bound: 'least' | 'more' | 'most' | 'less',
  limit: number,
  { expected }: FileWords,
): string {
  if (origin === 'string') return expected.characters(bound, limit);
  if (origin === 'array') return expected.entries(bound, limit);
  return expected.number(bound, limit);
}

function todoText(value: unknown, issue: Issue, { todo }: FileWords): string {
  if (issue.code === 'unrecognized_keys') return todo.takeOut;
  if (value === undefined) return todo.addField;
  return todo.correct;
}
