import { lastOf } from '../../../list/at.ts';
import { PictureProblem, tooMuch, unsafe } from './problem.ts';

const NOTHING = '';
/** What an attribute says; nothing where it is not there. */
export const attribute = ({ attributes }: Pick<Element, 'attributes'>, name: string): string =>
  attributes.get(name) ?? NOTHING;

/** An element of a picture file, its text left out but for that of styles. */
export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: Element[];
  text: string;
}

const MOST_ELEMENTS = 20_000;
const DEEPEST = 64;

const NAME = '[A-Za-z_][\\w.:-]*';
/** What can stand at a place of a file: a comment, an instruction, a declaration, an end, a start, text. */
const TOKEN = new RegExp(
  `<!--([\\s\\S]*?)-->|<\\?([\\s\\S]*?)\\?>|<!\\[CDATA\\[([\\s\\S]*?)\\]\\]>|<(!)|</(${NAME})\\s*>|<(${NAME})((?:\\s+${NAME}\\s*=\\s*(?:"[^"<]*"|'[^'<]*'))*)\\s*(/?)>|([^<]+)`,
  'y',
);
const ATTRIBUTE = new RegExp(`(${NAME})\\s*=\\s*(?:"([^"]*)"|'([^']*)')`, 'g');

const ENTITIES: ReadonlyMap<string, string> = new Map([
  ['lt', '<'],
  ['gt', '>'],
  ['amp', '&'],
  ['quot', '"'],
  ['apos', "'"],
]);

/** Only what XML itself names, and characters by their number: what a file names itself could unfold without end. */
const unescaped = (text: string): string =>
  text.replace(/&([^;\s]{0,40};?)/g, (_, body: string) => {
    const [, name] = /^(\w+);$/.exec(body) ?? [];
    const [, hex] = /^#x([0-9a-f]{1,6});$/i.exec(body) ?? [];
    const [, decimal] = /^#(\d{1,7});$/.exec(body) ?? [];
    const code = hex ? Number.parseInt(hex, 16) : decimal ? Number(decimal) : null;
    if (code !== null && code <= 0x10ffff) return String.fromCodePoint(code);
    return ENTITIES.get(name ?? '') ?? unsafe(`&${body}`);
  });

/**
 * Reads well-formed XML without declarations, strictly: anything else is refused, in time that grows with the length of
 * the file alone.
 */
export function readMarkup(text: string): Element {
  const root: Element = { name: '', attributes: new Map(), children: [], text: '' };
  const open = [root];
  let count = 0;
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const token = TOKEN.exec(text);
    if (!token) throw new PictureProblem({ code: 'not-svg' });
    const [, , instruction, quoted, declared, ended, started, listed = '', alone, between] = token;
    const parent = lastOf(open);
    if (instruction !== undefined && !/^xml\s/.test(instruction)) unsafe(`<?${instruction}`);
    // The old line that names the public form of SVG says nothing; one with parts of its own could.
    if (declared) TOKEN.lastIndex = pastDoctype(text, token.index);
    if (ended !== undefined) {
      if (parent.name !== ended || open.length === 1) throw new PictureProblem({ code: 'not-svg' });
      open.pop();
    }
    if (started !== undefined) {
      count += 1;
      if (count > MOST_ELEMENTS || open.length > DEEPEST) tooMuch();
      const element: Element = { name: started, attributes: attributesOf(listed), children: [], text: '' };
      parent.children.push(element);
      if (!alone) open.push(element);
    }
    if (quoted !== undefined) parent.text += quoted;
    if (between !== undefined && parent.name === 'style') parent.text += unescaped(between);
  }
  const [only, more] = root.children;
  if (open.length > 1 || !only || more) throw new PictureProblem({ code: 'not-svg' });
  return only;
}

function pastDoctype(text: string, at: number): number {
  const [plain] =
    /^<!DOCTYPE\s+svg(?:\s+PUBLIC\s+"[^"<>[]*"\s+"[^"<>[]*")?\s*>/.exec(text.slice(at, at + 400)) ?? [];
  return plain ? at + plain.length : unsafe('<!DOCTYPE');
}

function attributesOf(listed: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const [, name = '', double, single] of listed.matchAll(ATTRIBUTE)) {
    if (found.has(name)) throw new PictureProblem({ code: 'not-svg' });
    found.set(name, unescaped(double ?? single ?? ''));
  }
  return found;
}
