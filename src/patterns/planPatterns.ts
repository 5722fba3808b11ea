import type { Check } from '../check/check.ts';
import { inches, type Mm } from '../measure/units.ts';
import { type DrillingPattern, drillingPatterns } from './kind/drilling.ts';
import { type FacePattern, facePatterns } from './kind/face.ts';
import { type PartPattern, partPatterns } from './kind/part.ts';
import type { Pattern } from './kind/pattern.ts';
import { type SignPattern, signPatterns } from './kind/sign.ts';
import { type StickPattern, stickPatterns } from './kind/stick.ts';
import { type PageSetup, type Sheet, sheetsOf } from './paper.ts';
import { type PrintsPattern, printSets } from './prints.ts';
import type { PatternPlan, PatternSet } from './result.ts';
import { tile } from './tile.ts';
import type { PatternWords } from './words.ts';

/** What a pattern is asked for, as plain data. */
type DrawnRequest = SignPattern | FacePattern | PartPattern | StickPattern | DrillingPattern;
export type PatternRequest = DrawnRequest | PrintsPattern;

type Kind = DrawnRequest['kind'];

const DRAWN: {
  readonly [K in Kind]: (
    request: Extract<DrawnRequest, { kind: K }>,
    words: PatternWords,
    room?: Sheet['room'],
  ) => Pattern[];
} = {
  sign: signPatterns,
  face: facePatterns,
  part: partPatterns,
  sticks: stickPatterns,
  drilling: drillingPatterns,
};

/**
 * The full-size drawings of a request, before they are tiled; a sign's are also written for machines.
 *
 * @param room of an upright page, for what is laid out by it
 */
export function patternsOf<K extends Kind>(
  request: Extract<DrawnRequest, { kind: K }>,
  words: PatternWords,
  room?: Sheet['room'],
): Pattern[] {
  const draw = DRAWN[request.kind as K];
  return draw(request, words, room);
}

/** More pages than this for one pattern are a sign that a larger paper is meant. Common practice, no source. */
const MANY_PAGES = 120;

/** Every pattern asked for, on pages. Patterns that find no room on the paper give a check instead. */
export const planPatterns = (requests: readonly PatternRequest[], setup: PageSetup): PatternPlan =>
  joined(requests.map((request) => planPattern(request, setup)));

/** What printers for the home leave bare at least: an eighth of an inch. Common practice, no source. */
const BARE: Mm = inches(1 / 8);

/** Told where a margin is none at all: what lies in it is not printed, or the page is made smaller to fit. */
export const marginChecks = ({ pages }: PageSetup): Check[] =>
  Object.values(pages.margin).every((margin) => margin > 0)
    ? []
    : [{ code: 'patterns.no-margin', severity: 'warning', parts: [], figures: { least_mm: BARE } }];

export const joined = (plans: readonly PatternPlan[]): PatternPlan => ({
  sets: plans.flatMap(({ sets }) => sets),
  checks: plans.flatMap(({ checks }) => checks),
});

/** More than any pattern needs: a roll is as long as it may be. */
const LONGEST = { w: 1e5, h: 1e5 } as const;

/** The patterns of one request: they depend on no other. */
export function planPattern(request: PatternRequest, setup: PageSetup): PatternPlan {
  if (request.kind === 'prints') return printPlan(request, setup);
  const sets: PatternSet[] = [];
  const checks: Check[] = [];
  const [upright] = sheetsOf(setup, LONGEST);
  for (const pattern of patternsOf(request, setup.words, upright?.room)) {
    const set = tile(pattern.drawing, { ...pattern, setup });
    if (!set) {
      checks.push(noRoom([pattern.for], setup));
      continue;
    }
    sets.push(set);
    checks.push(...manyPages(set));
  }
  return { sets, checks };
}

function printPlan(request: PrintsPattern, setup: PageSetup): PatternPlan {
  const sets = printSets(request, setup);
  const signs = request.signs.map(({ id }) => id);
  return sets ? { sets, checks: sets.flatMap(manyPages) } : { sets: [], checks: [noRoom(signs, setup)] };
}

const noRoom = (parts: readonly string[], { paper }: PageSetup): Check => ({
  code: 'patterns.no-room',
  severity: 'error',
  parts,
  figures: { paper: paper.id },
});

const manyPages = (set: PatternSet): Check[] =>
  set.pages.length > MANY_PAGES
    ? [
        {
          code: 'patterns.too-many-pages',
          severity: 'warning',
          parts: [set.for],
          figures: { pages: set.pages.length },
        },
      ]
    : [];
