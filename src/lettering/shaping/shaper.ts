import { codeAt } from '../../list/at.ts';
import { type Form, keyOf, type PlacedGlyphId } from '../font/form.ts';
import { harfBuzz, type RunShaper, type ShapedGlyph } from './harfbuzz.ts';
import { type Run, runsOf } from './runs.ts';
import type { ChosenFeature, Cluster, LayoutRules, LineToShape, Shaper } from './shape.ts';

/**
 * Scripts whose letters change, join, stack or trade places by the rules of a font, with the OpenType tags of such rules
 * (OpenType registry, "Script tags"). A font without them draws the letters apart.
 */
const RULED: Readonly<Record<string, readonly string[]>> = {
  ...{ Arab: ['arab'], Syrc: ['syrc'], Nkoo: ['nko '], Adlm: ['adlm'], Rohg: ['rohg'], Mand: ['mand'] },
  ...{ Mong: ['mong'], Deva: ['dev3', 'dev2', 'deva'], Beng: ['bng3', 'bng2', 'beng'] },
  ...{ Guru: ['gur3', 'gur2', 'guru'], Gujr: ['gjr3', 'gjr2', 'gujr'], Orya: ['ory3', 'ory2', 'orya'] },
  ...{ Taml: ['tml3', 'tml2', 'taml'], Telu: ['tel3', 'tel2', 'telu'], Knda: ['knd3', 'knd2', 'knda'] },
  ...{ Mlym: ['mlm3', 'mlm2', 'mlym'], Sinh: ['sinh'], Khmr: ['khmr'], Mymr: ['mym2', 'mymr'] },
  ...{ Tibt: ['tibt'], Java: ['java'], Bali: ['bali'], Cham: ['cham'] },
};

/**
 * Scripts that are written joined: by their letters (CSS Text 3, appendix "Cursive scripts"), or by a line above them (common
 * practice).
 */
const JOINED = new Set([
  ...['Arab', 'Syrc', 'Nkoo', 'Adlm', 'Rohg', 'Mand', 'Mong'],
  ...['Deva', 'Beng', 'Guru'],
]);

/** Of scripts whose letters may stand alone, ligatures and the like are made where they are chosen. */
const BY_CHOICE: readonly ChosenFeature[] = ['liga', 'clig', 'calt'].map((tag) => ({ tag, value: 0 }));
/** Space between letters parts ligatures that no script asks for (CSS Fonts 4, "font-variant-ligatures"). */
const NOT_SPACED: readonly ChosenFeature[] = ['liga', 'clig', 'dlig', 'hlig'].map((tag) => ({
  tag,
  value: 0,
}));
const UNKERNED: ChosenFeature = { tag: 'kern', value: 0 };

/** Marks that take no room of their own. */
const MARK = /\p{Mn}/u;
/** By one of these a font tells where they go (OpenType registry, "Feature tags"). */
const PLACING = ['mark', 'abvm', 'blwm'];
/** Stands, by the library's doing, where marks have no letter. */
const DOTTED_CIRCLE = '\u25cc';

/** Shaping of lines with HarfBuzz, see `harfBuzz`. */
export function shaperOf(instantiate: Parameters<typeof harfBuzz>[0]): Shaper {
  const open = harfBuzz(instantiate);
  return (file, rules) => {
    const shapeRun = open(file);
    const known = new Map<string, readonly Cluster[]>();
    // The same lines are set in one size after the other until they fit.
    return (line) => {
      const { apart } = line;
      const key = JSON.stringify([line, apart && line.characters.map(apart)]);
      const before = known.get(key);
      if (before) return before;
      const clusters = runsOf(line).flatMap((run) => clustersOf(line, run, shapeRun, rules));
      if (known.size >= MOST_KNOWN) known.clear();
      known.set(key, clusters);
      return clusters;
    };
  };
}

/** Lines of a font that are kept as they were shaped. */
const MOST_KNOWN = 200;

function clustersOf(line: LineToShape, run: Run, shapeRun: RunShaper, rules: LayoutRules): Cluster[] {
  const { characters, features, spaced } = line;
  const { from, count, script } = run;
  if (run.apart) {
    const key = characters.slice(from, from + count).join('');
    return [{ from, count, key, kerned: key, kern: 0, joined: false, unruled: false }];
  }
  const codes = characters.map((character) => codeAt(character));
  const asked = [
    ...(script !== null && script in RULED ? [] : BY_CHOICE),
    ...features,
    ...(spaced ? NOT_SPACED : []),
  ];
  const kerned = grouped(shapeRun(codes, run, asked), run);
  const plain = grouped(shapeRun(codes, run, [...asked, UNKERNED]), run);
  const joined = script !== null && JOINED.has(script);
  return kerned.map((group, i): Cluster => {
    const own = plain[i] ?? group;
    const text = characters.slice(group.from, group.from + group.count);
    return {
      from: group.from,
      count: group.count,
      key: keyOf(own),
      kerned: keyOf(group),
      kern: group.advance - own.advance + tabledKern(group, kerned[i + 1], rules),
      joined: joined && !text.every((character) => /\s/u.test(character)),
      unruled: isUnruled(text, script, group, rules),
    };
  });
}

/** Between what stands beside each other in a font that shaping does not kern. */
function tabledKern(left: Form, right: Form | undefined, { tabled }: LayoutRules): number {
  const [a, b] = [left.glyphs.at(-1), right?.glyphs[0]];
  return tabled && a && b ? tabled(a.glyph, b.glyph) : 0;
}

/** Glyphs that stand for the same characters, each from where the first one begins. */
interface Group extends Form {
  readonly from: number;
  readonly count: number;
}

function grouped(glyphs: readonly ShapedGlyph[], { from, count }: Run): Group[] {
  const starts = [...new Set(glyphs.map(({ cluster }) => cluster))].sort((a, b) => a - b);
  const endOf = (cluster: number) => starts[starts.indexOf(cluster) + 1] ?? from + count;
  const groups: (Group & { advance: number; glyphs: PlacedGlyphId[] })[] = [];
  for (const { glyph, cluster, advance, x, y } of glyphs) {
    let last = groups.at(-1);
    if (last?.from !== cluster) {
      last = { from: cluster, count: endOf(cluster) - cluster, advance: 0, glyphs: [] };
      groups.push(last);
    }
    last.glyphs.push({ glyph, x: last.advance + x, y });
    last.advance += advance;
  }
  return groups;
}

/** Whether a font lacks what some letters ask of it: rules of their script, a place for their marks, or a letter that marks stand on. */
function isUnruled(
  text: readonly string[],
  script: string | null,
  { glyphs }: Form,
  { scripts, features, glyphOf }: LayoutRules,
): boolean {
  const tags = script === null ? undefined : RULED[script];
  const letters = text.some((character) => /[\p{L}\p{M}]/u.test(character));
  if (letters && tags && !tags.some((tag) => scripts.has(tag))) return true;
  const marked = glyphs.length > 1 && text.some((character) => MARK.test(character));
  if (marked && !PLACING.some((tag) => features.has(tag))) return true;
  const circle = text.includes(DOTTED_CIRCLE) ? 0 : glyphOf(codeAt(DOTTED_CIRCLE));
  return circle !== 0 && glyphs.some(({ glyph }) => glyph === circle);
}
