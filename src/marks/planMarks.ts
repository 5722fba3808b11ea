import { looksIn } from '../design/look.ts';
import { isBought, isLettered, isPaint } from '../design/made.ts';
import type { Lettering } from '../design/schema.ts';
import type { Piece } from '../joinery/piece.ts';
import { KeptResults } from '../layout/kept.ts';
import type { LaidPart } from '../layout/laid.ts';
import { papersOf } from '../layout/papers.ts';
import type { MeasureStyle } from '../measure/style.ts';
import { type FixingOrder, fixingOrder, type OrderInput } from './order.ts';
import type { MarksPlan, Painting, Step } from './result.ts';
import { runningMarks, storySticks } from './running.ts';

export interface MarksInput extends OrderInput {
  /** How the design shows its measures. */
  readonly measure: MeasureStyle;
  /** All that is painted, by the step that does it. */
  readonly paints: readonly Painting[];
  /** Where parts that are painted, or painted shapes, stay bare for glue. */
  readonly bare: readonly { readonly on: string }[];
}

type Act = Omit<Step, 'number' | 'paints'>;

const ids = (parts: readonly LaidPart[]): string[] => parts.map((laid) => laid.id);

/** Parts that have a piece of one of the forms, in the layout's order. */
const cutFrom = (parts: readonly LaidPart[], pieces: readonly Piece[], forms: readonly Piece['form'][]) =>
  having(
    parts,
    pieces.filter((p) => forms.includes(p.form)),
  );

/** Parts that some pieces are of, in the layout's order. */
function having(parts: readonly LaidPart[], pieces: readonly Piece[]): string[] {
  const found = new Set(pieces.map((p) => p.part));
  return ids(parts).filter((id) => found.has(id));
}

/** An act for some parts; none when there are none. */
const actFor = (act: Step['act'], parts: readonly string[]): Act[] =>
  parts.length > 0 ? [{ act, parts }] : [];

/** Outline and shade of sawn letters lie on the sign, partly under the letters; an inline is on the letters. */
const paintedAround = (lettering: Lettering): boolean =>
  looksIn(lettering).some(
    (look) => look.outline !== null || look.shade !== null || look.ribbon !== undefined,
  );

/** One step for all that is simply fixed in a round, one each for what is put together at once, and one for what is bent. */
function fixing({ rounds, inPlace }: FixingOrder, bent: ReadonlySet<string>): Act[] {
  const isMeasured = (laid: LaidPart) => inPlace.has(laid.id);
  return rounds.flatMap((round) => {
    const alone = round.flatMap((unit) => (unit.length === 1 ? unit : []));
    const simply = alone.filter((laid) => !isMeasured(laid));
    return [
      ...actFor('fix', ids(simply.filter(({ id }) => !bent.has(id)))),
      ...actFor('bend', ids(simply.filter(({ id }) => bent.has(id)))),
      ...round
        .filter((unit) => unit.length > 1)
        .flatMap((unit) => [
          ...actFor('cut-in-place', ids(unit.filter(isMeasured))),
          ...actFor('assemble', ids(unit)),
        ]),
      ...actFor('measure-in-place', ids(alone.filter(isMeasured))),
    ];
  });
}

function stepsOf(input: MarksInput, order: FixingOrder): Step[] {
  const { parts, pieces, paints } = input;
  if (parts.length === 0) return [];
  const { fixed, inPlace } = order;
  const bent = pieces.filter((piece) => piece.bent);
  const sawnOut = (groove: boolean): string[] =>
    having(
      parts,
      pieces.filter((p) => p.notches.some(({ side }) => (side === 'groove') === groove)),
    );
  const allSigns = parts.filter(isLettered);
  const signs = ids(allSigns);
  const sawnSigns = allSigns.filter(({ lettering }) => lettering.make === 'cut-out');
  const sawn = ids(sawnSigns);
  const papers = papersOf(parts);
  const printed = ids(papers.flat());
  // What is on a paper goes on with it.
  const mounted = papers.map(([first]) => first.id);
  const around = ids(sawnSigns.filter(({ lettering }) => paintedAround(lettering)));
  const lettered = (some: readonly string[]): Act[] => [
    ...actFor(
      'letter',
      some.filter((id) => !sawn.includes(id) && !printed.includes(id)),
    ),
    ...actFor(
      'paint-around-letters',
      some.filter((id) => around.includes(id)),
    ),
    ...actFor(
      'mount-letters',
      some.filter((id) => sawn.includes(id)),
    ),
    ...actFor(
      'mount-print',
      some.filter((id) => mounted.includes(id)),
    ),
  ];
  const painted = (act: Step['act']): Act[] => {
    const found = new Set(paints.filter((one) => one.act === act).map(({ part }) => part));
    return actFor(act, ids(parts.filter(({ id }) => found.has(id))));
  };
  const glued = new Set(input.bare.map(({ on }) => on));
  /** What is taped before an act paints it. */
  const masked = (act: Step['act']): Act[] =>
    painted(act).flatMap(({ parts: some }) =>
      actFor(
        'mask-glue',
        some.filter((id) => glued.has(id)),
      ),
    );
  const before = painted('paint-before').flatMap((act) => act.parts);
  // Boards whose own color is that of the joints between courses painted on them.
  const under = new Set(parts.flatMap((laid) => (isPaint(laid) && laid.spec.course ? [laid.on] : [])));
  const coursed = before.filter((id) => under.has(id));
  const onBench = signs.filter((id) => before.includes(id));
  const onFace = signs.filter((id) => !before.includes(id));
  const hardware = parts.filter((laid) => isBought(laid) && !fixed.includes(laid));
  const acts: Act[] = [
    { act: 'prepare', parts: [] },
    ...actFor('cut-sheets', cutFrom(parts, pieces, ['sheet'])),
    ...actFor('cut-boards', cutFrom(parts, pieces, ['flat', 'shaped'])),
    ...actFor('notch', sawnOut(false)),
    ...actFor('groove', sawnOut(true)),
    ...painted('prime-backs'),
    ...masked('paint-before'),
    ...actFor('mask-joints', coursed),
    ...painted('paint-before'),
    ...lettered(onBench),
    // Color that lies on the bed itself goes on before anything covers its borders: no masking is needed then.
    ...masked('paint-ground'),
    ...painted('paint-ground'),
    { act: 'mark', parts: [] },
    ...actFor('dry-fit', ids(fixed.filter((laid) => !inPlace.has(laid.id)))),
    ...fixing(order, new Set(having(parts, bent))),
    ...painted('paint-after'),
    ...painted('last-coat'),
    ...lettered(onFace),
    ...actFor('fit-hardware', ids(hardware)),
    { act: 'try-swing', parts: [] },
  ];
  return acts.map(({ act, parts: some }, i) => ({
    number: i + 1,
    act,
    parts: some,
    paints: paints.filter((one) => one.act === act && some.includes(one.part)),
  }));
}

/**
 * Where everything goes and in what order: running marks of every part from the left and bottom edge of
 * the face, rounded as the design shows its measures, the story sticks they make, and the steps of the
 * work. All that lies beneath a part is fixed before it, what is joined at once in one step, parts painted on
 * the bench are painted before they are fixed, what is painted around sawn letters before these are glued
 * on, and pieces measured in place come after the parts that bound them. A design without parts has no steps.
 *
 * Check: `order.circle` (warning), see `fixingOrder`.
 */
export function planMarks(input: MarksInput, results = new KeptResults()): MarksPlan {
  const marks = runningMarks(input.parts, input.measure);
  const order = fixingOrder(input, results);
  return { marks, sticks: storySticks(marks), steps: stepsOf(input, order), checks: order.checks };
}
