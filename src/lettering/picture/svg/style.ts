import type { Color } from '../../../drawing/drawing.ts';
import { attribute, type Element } from './markup.ts';
import { NAMED_COLORS } from './namedColors.ts';
import { Numbers } from './numbers.ts';
import { badValue, tooMuch, unsafe, unsupported } from './problem.ts';

/** What of its style decides what a shape covers and in which color. */
const READ = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-miterlimit',
  'stroke-dasharray',
  'fill-rule',
  'fill-opacity',
  'stroke-opacity',
  'opacity',
  'display',
  'visibility',
  'color',
  'clip-path',
  'mask',
  'filter',
  'marker-start',
  'marker-mid',
  'marker-end',
  'marker',
  'vector-effect',
] as const;
export type Property = (typeof READ)[number];
export type Style = ReadonlyMap<Property, string>;

/** Not handed on from a group to what is in it (SVG 1.1, property index). */
const OWN: readonly Property[] = ['opacity', 'display', 'clip-path', 'mask', 'filter', 'vector-effect'];
const LOOKS_OTHERWISE: readonly Property[] = [
  'clip-path',
  'mask',
  'filter',
  'marker',
  'marker-start',
  'marker-mid',
  'marker-end',
  'vector-effect',
];
const isProperty = (name: string): name is Property => READ.some((known) => known === name);

/** A rule of a style sheet: for which elements, and what it sets. */
interface StyleRule {
  readonly selector: string;
  readonly sets: readonly (readonly [Property, string])[];
}

const MOST_RULES = 500;

/** Rules of `style` elements; only plain selectors of one element, class or id are known. */
export function styleRules(sheet: string): StyleRule[] {
  const plain = sheet.replace(/\/\*[\s\S]*?\*\//g, ' ');
  safeStyle(plain);
  const rules = [...plain.matchAll(/([^{}]+)\{([^{}]*)\}/g)].flatMap(([, selectors = '', body = '']) =>
    selectors.split(',').map((selector) => {
      const one = selector.trim();
      return /^[.#]?[\w-]+$/.test(one) ? { selector: one, sets: declared(body) } : unsupported(one);
    }),
  );
  return rules.length > MOST_RULES ? tooMuch() : rules;
}

function safeStyle(text: string): void {
  if (/@|url\s*\(\s*['"]?(?!#)|expression|javascript:|\\/i.test(text)) unsafe(text.trim());
}

function declared(body: string): (readonly [Property, string])[] {
  safeStyle(body);
  return body.split(';').flatMap((one) => {
    const [name = '', value] = one.split(/:(.*)/s).map((part) => part.trim());
    return value !== undefined && isProperty(name)
      ? [[name, value.replace(/\s*!important$/, '')] as const]
      : [];
  });
}

/** The style of an element inside of one with a style: attributes, then rules by element, class and id, then its own. */
export function styleOf(element: Element, outer: Style, rules: readonly StyleRule[]): Style {
  const { name, attributes } = element;
  const style = new Map([...outer].filter(([property]) => !OWN.includes(property)));
  const put = (sets: readonly (readonly [Property, string])[]) => {
    for (const [property, value] of sets) if (value !== 'inherit') style.set(property, value);
  };
  put([...attributes].flatMap(([key, value]) => (isProperty(key) ? [[key, value.trim()] as const] : [])));
  const classes = attribute(element, 'class')
    .split(/\s+/)
    .map((one) => `.${one}`);
  const own = `#${attribute(element, 'id')}`;
  for (const wanted of [[name], classes, [own]]) {
    for (const { selector, sets } of rules) if (wanted.includes(selector)) put(sets);
  }
  put(declared(attribute(element, 'style')));
  for (const property of LOOKS_OTHERWISE) {
    if (styled(style, property) !== 'none') unsupported(property);
  }
  return style;
}

const INITIAL: Readonly<Partial<Record<Property, string>>> = {
  fill: 'black',
  color: 'black',
  visibility: 'visible',
};
const NONE = 'none';

/** What a property is where nothing tells it (SVG 1.1, property index). */
export const styled = (style: Style, property: Property): string =>
  style.get(property) ?? INITIAL[property] ?? NONE;

/** Whether anything is painted at all. */
export const isShown = (style: Style): boolean =>
  style.get('display') !== 'none' && !['hidden', 'collapse'].includes(styled(style, 'visibility'));

/** What a fill or stroke is painted in; null for none. Anything that is seen through counts as there. */
export function paintOf(style: Style, of: 'fill' | 'stroke'): Color | null {
  const value = styled(style, of).trim();
  const clear = [style.get('opacity'), style.get(`${of}-opacity`)];
  if (value === 'none' || clear.some((share) => share !== undefined && Number.parseFloat(share) === 0))
    return null;
  return colorOf(/^currentcolor$/i.test(value) ? styled(style, 'color') : value);
}

/** A color as `#rrggbb`; null where it is clear. */
function colorOf(text: string): Color | null {
  const value = text.toLowerCase();
  if (/^url\s*\(/.test(value)) return unsupported(text);
  if (value === 'transparent') return null;
  const named = NAMED_COLORS.get(value);
  if (named !== undefined) return `#${named}`;
  const [, short] = /^#([0-9a-f]{3,4})$/.exec(value) ?? [];
  const [, long] = /^#([0-9a-f]{6}|[0-9a-f]{8})$/.exec(value) ?? [];
  const digits = short === undefined ? long : [...short].map((d) => d + d).join('');
  if (digits !== undefined) return digits.slice(6) === '00' ? null : `#${digits.slice(0, 6)}`;
  const [, listed] = /^rgba?\(([^()]*)\)$/.exec(value) ?? [];
  return listed === undefined ? badValue(text) : ofParts(listed, text);
}

function ofParts(listed: string, text: string): Color | null {
  const parts = listed.split(/[\s,/]+/).filter((part) => part !== '');
  if (parts.length < 3 || parts.length > 4) return badValue(text);
  const amount = (part: string, whole: number): number => {
    const [, number = '', percent] = /^([-+.\de]+)(%?)$/.exec(part) ?? [];
    const value = new Numbers(number).number();
    return percent ? (value * whole) / 100 : value;
  };
  if (parts[3] !== undefined && amount(parts[3], 1) === 0) return null;
  const byte = (part: string) => Math.round(Math.min(255, Math.max(0, amount(part, 255))));
  return `#${parts
    .slice(0, 3)
    .map((part) => byte(part).toString(16).padStart(2, '0'))
    .join('')}`;
}
