import { allKeepClears } from '../bed/legFootprints.ts';
import { BLEED, POUNCE } from '../design/defaults.ts';
import { isBent } from '../design/look.ts';
import { idsOfBars, isBoards, isLettered, isSheet } from '../design/made.ts';
import type { Design } from '../design/schema.ts';
import { leftOf } from '../geometry/cut.ts';
import { regionOfBox, ringOfBox, translateRegion } from '../geometry/region.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { endLine } from '../joinery/lengths.ts';
import type { Piece } from '../joinery/piece.ts';
import { profileOf } from '../joinery/profile.ts';
import type { LaidLetters, LaidPart } from '../layout/laid.ts';
import { papersOf } from '../layout/papers.ts';
import { holesOff } from '../lettering/stencil/sheet.ts';
import { groupOf } from '../list/grouped.ts';
import type { StoryStick } from '../marks/result.ts';
import type { Mm } from '../measure/units.ts';
import { isPrinted, type PrintedBlock, type Printing } from '../patterns/kind/print.ts';
import type { SignPattern } from '../patterns/kind/sign.ts';
import type { PatternRequest } from '../patterns/planPatterns.ts';
import { type DrillingInput, drillingRequests } from './drilling.ts';
import type { Grounds, Seam } from './ground.ts';
import type { SignPlan } from './types.ts';

/** What is found late in a plan: where it is absent, what is printed of it is left out. */
interface FoundLate extends Pick<DrillingInput, 'fastened'> {
  readonly sticks: readonly StoryStick[];
}

export interface RequestInput extends Omit<DrillingInput, 'fastened'>, Partial<FoundLate> {
  readonly design: Design;
  readonly pieces: readonly Piece[];
  readonly signs: readonly SignPlan[];
  readonly seams: Grounds['seams'];
  readonly finishOf: (id: string) => string;
}

/** What a print is in besides: paper is white. */
const PAPER = '#ffffff';

/**
 * Everything that is printed full size: every sign, with its board's outline where that is sawn by it, ends that no
 * saw cuts, and what the design asks for besides.
 */
export function patternRequests(input: RequestInput): PatternRequest[] {
  const { sticks, fastened } = input;
  const { also } = input.design.pages;
  const signs = toldApart(
    withoutBlocks(input).map((sign) => signRequest(sign, input, also.includes('parts'))),
  );
  const prints = signs.filter(isPrinted);
  return toldApart([
    ...signs.filter((sign) => !isPrinted(sign)),
    ...(prints.length > 0 ? [{ kind: 'prints', signs: prints } as const] : []),
    ...endRequests(input),
    ...(sticks && also.includes('story-sticks') ? [stickRequest(sticks, input)] : []),
    ...partRequests(input, also.includes('parts')),
    ...(also.includes('face') ? [faceRequest(input)] : []),
    ...(fastened && also.includes('drilling') ? drillingRequests({ ...input, fastened }) : []),
  ]);
}

/** Patterns of parts with one name are numbered: sheets of two signs must not be taped together. */
function toldApart<R extends object>(requests: readonly R[]): R[] {
  const nameOf = (request: R) =>
    'name' in request && typeof request.name === 'string' ? request.name : null;
  const taken = new Set(requests.map(nameOf));
  const told = new Set<string>();
  return requests.map((request) => {
    const name = nameOf(request);
    if (name === null) return request;
    let own = name;
    for (let n = 2; told.has(own) || (own !== name && taken.has(own)); n++) own = `${name} (${n})`;
    told.add(own);
    return own === name ? request : { ...request, name: own };
  });
}

/** All signs but those that are printed on the paper of another one. */
export function withoutBlocks({ parts, signs }: Pick<RequestInput, 'parts' | 'signs'>): SignPlan[] {
  const blocks = new Set(papersOf(parts).flatMap(([, ...others]) => others.map(({ id }) => id)));
  return signs.filter(({ id }) => !blocks.has(id));
}

function printingOf(
  { id, finish, lettering }: LaidLetters,
  sign: SignPlan,
  { parts, signs, design: { finishes } }: Pick<RequestInput, 'parts' | 'signs' | 'design'>,
): Printing {
  const colorOf = (of: string | null) => finishes.find((one) => one.id === of)?.color ?? null;
  const [, ...others] = papersOf(parts).find(([first]) => first.id === id) ?? [];
  return {
    photos: sign.photos,
    ground: colorOf(finish) ?? PAPER,
    bleed: lettering.bleed ?? BLEED,
    colors: Object.fromEntries(finishes.map((one) => [one.id, one.color])),
    blocks: others.flatMap((block): PrintedBlock[] => {
      const own = signs.find((one) => one.id === block.id);
      if (!own) return [];
      const at = { x: own.at.x - sign.at.x, y: own.at.y - sign.at.y };
      const board = translateRegion(block.region, -own.at.x, -own.at.y);
      return [{ at, board, ground: colorOf(block.finish), lettered: own.lettered, photos: own.photos }];
    }),
  };
}

/** What is printed of one sign. */
export function signRequest(
  sign: SignPlan,
  input: Pick<RequestInput, 'nameOf' | 'finishOf' | 'seams' | 'design' | 'parts' | 'signs'>,
  outlined: boolean,
): SignPattern {
  const { nameOf, finishOf, seams, parts } = input;
  const laid = parts.filter(isLettered).find((p) => p.id === sign.id);
  const own = ({ x, y }: Point): Point => ({ x: x - sign.at.x, y: y - sign.at.y });
  const board = laid ? translateRegion(laid.region, -sign.at.x, -sign.at.y) : regionOfBox(sign.lettered.box);
  return {
    kind: 'sign',
    id: sign.id,
    name: nameOf(sign.id),
    mode: laid?.lettering.make ?? 'trace',
    spacing: laid?.lettering.pounce ?? POUNCE,
    board,
    seams: groupOf(seams, sign.id).map(([a, b]): Seam => [own(a), own(b)]),
    off: holesOff(sign.stencils?.holes ?? [], board),
    sawn: outlined && laid !== undefined && isShaped(laid),
    printing: laid?.lettering.make === 'printed' ? printingOf(laid, sign, input) : undefined,
    lettered: sign.lettered,
    bent: laid !== undefined && isBent(laid.lettering),
    stencils: (sign.stencils?.layers ?? []).map(({ finish, stencil }) => ({
      finish: finishOf(finish),
      stencil,
    })),
  };
}

/** Whether it is sawn from sheet to more than a plain rectangle. */
const isShaped = (part: LaidPart): boolean =>
  isSheet(part) && (part.spec.shape.form !== 'rectangle' || part.spec.openings.length > 0);

const stickRequest = (
  sticks: readonly StoryStick[],
  { face, measure, nameOf }: RequestInput,
): PatternRequest => ({
  kind: 'sticks',
  measure,
  sticks: sticks.map((stick) => ({
    axis: stick.axis,
    length: stick.axis === 'x' ? face.width : face.height,
    marks: stick.marks.flatMap((mark) =>
      mark.edges.map(({ part, edge }) => ({ at: mark.at, shown: mark.shown, name: nameOf(part), edge })),
    ),
  })),
});

/** Between two ends that are printed beside each other. */
const APART: Mm = 20;

/** The ends of strips and runs that are marked from a pattern, and pieces of heads, of one piece of each kind. */
function endRequests({ parts, pieces, nameOf }: RequestInput): PatternRequest[] {
  const bars = idsOfBars(parts);
  const seen = new Set<string>();
  return pieces.flatMap((piece): PatternRequest[] => {
    const { id, label, part } = piece;
    const whole: Region = [{ outer: piece.outline, holes: [] }];
    const ends = piece.form === 'sheet' ? whole : endsOf(piece);
    const region = bars.has(part) && !seen.has(label) ? ends : [];
    if (region.length === 0) return [];
    seen.add(label);
    return [{ kind: 'part', id, name: `${nameOf(part)} (${label})`, region }];
  });
}

/** The curved ends of a piece, each with as much wood behind its curve as it is wide; all of it where they would meet. */
function endsOf(piece: Piece): Region {
  const { outline, width, overall } = piece;
  const [start, end] = [endLine(piece, 'start'), endLine(piece, 'end')];
  const from = start ? Math.max(...start.map(({ x }) => x)) + width : 0;
  const to = end ? Math.min(...end.map(({ x }) => x)) - width : overall;
  const whole: Region = [{ outer: outline, holes: [] }];
  if (!start && !end) return [];
  if (from + APART >= to) return whole;
  const left = start ? leftOf(whole, { x: from, y: 0 }, { x: 0, y: 1 }) : [];
  const right = end ? leftOf(whole, { x: to, y: 0 }, { x: 0, y: -1 }) : [];
  return [...left, ...translateRegion(right, start ? from + APART - to : 0, 0)];
}

/**
 * What is sawn along a template: panels that are not plain rectangles, and boards of fills, one of a kind. Boards that are
 * cut to a curve are printed whether `all` is asked for or not: no measure of their corners tells it.
 */
function partRequests({ parts, pieces, nameOf }: RequestInput, all: boolean): PatternRequest[] {
  // A sign's board is on the pattern of its lettering.
  const shaped = parts.filter((p) => all && !isLettered(p) && isShaped(p));
  const seen = new Set<string>();
  const filled = new Set(parts.filter((part) => isBoards(part)).map(({ id }) => id));
  const boards = pieces.filter((piece) => {
    const { part, ends, label } = piece;
    const first = filled.has(part) && ends[0].cut === 'sawn' && !seen.has(label) && (all || isCurved(piece));
    if (first) seen.add(label);
    return first;
  });
  return [
    ...shaped.map((p) => ({ kind: 'part', id: p.id, name: nameOf(p.id), region: p.region }) as const),
    ...boards.map((piece) => boardRequest(piece, nameOf(piece.part))),
  ];
}

function isCurved(piece: Piece): boolean {
  const { curves, free } = profileOf(piece);
  return free || curves.length > 0;
}

/** The board as it lies on the saw, so that its page is no longer than it is. */
function boardRequest({ id, label, outline, holes }: Piece, name: string): PatternRequest {
  return { kind: 'part', id, name: `${name} (${label})`, region: [{ outer: outline, holes }] };
}

/** The whole face; of one out of square its real corners lie beyond the true rectangle, and are printed too. */
function faceRequest({ design, face, parts }: RequestInput): PatternRequest {
  const corners = (face.real ?? []).flatMap((real) => real.edges.flat());
  const { x, y, w, h } = boxOfPoints([...ringOfBox(face.box), ...corners]);
  const moved = (box: Box): Box => ({ ...box, x: box.x - x, y: box.y - y });
  const laid = <T extends { readonly region: Region }>(one: T): Region =>
    x === 0 && y === 0 ? one.region : translateRegion(one.region, -x, -y);
  return {
    kind: 'face',
    ...{ width: w, height: h, box: moved(face.box) },
    levels: face.levels.map((level) => ({ id: level.id, region: laid(level) })),
    keepClears: allKeepClears(design.keepClears, face, design.bed).map((k) => moved(k.box)),
    parts: parts.map((part) => ({ id: part.id, name: part.name, region: laid(part) })),
  };
}
