import { type Check, orderChecks } from '../check/check.ts';
import { isBought, isPaint } from '../design/made.ts';
import { asOne } from '../geometry/clip.ts';
import { distance } from '../geometry/point.ts';
import { areaOf, boxOf, centroidOf } from '../geometry/region.ts';
import type { Solid } from '../joinery/piece.ts';
import { sameItems } from '../layout/changes.ts';
import { isGlued, isLong, type LaidHardware, type LaidPart, legsOf } from '../layout/laid.ts';
import { under } from '../list/at.ts';
import { grouped, groupOf } from '../list/grouped.ts';
import { totalOf } from '../list/totals.ts';
import type { Liters } from '../measure/units.ts';
import { Shanks } from './apart.ts';
import { Asked } from './asked.ts';
import { type Driven, driveBrads, driveScrews, NOTHING, type PartContact, SCREW_SPACINGS } from './driven.ts';
import { beadLength, glueFor } from './glue.ts';
import { driveHardware } from './hardware.ts';
import type { FasteningInput, PartFastened } from './input.ts';
import { type Lever, massFelt } from './lever.ts';
import { looseEdge } from './looseEdge.ts';
import { commonOf, type KeptPart, known, type PartInput, type PartsFastened } from './memory.ts';
import type { Fastened, FastenerUse, FasteningPlan } from './result.ts';
import { contactsUnder, type Stack, solidsIn, stackOf } from './stack.ts';

/** A part's lever on the bed stowed: how far its middle stands out, and how high it is where it touches. */
function leverOf(laid: LaidPart, contacts: readonly PartContact[]): Lever {
  const box = boxOf(contacts.flatMap(({ contact }) => [...contact]));
  return { out: (laid.z1 - laid.z0) / 2, base: box?.h ?? 0 };
}

/** Width of a part across its length, for its beads of glue: a sheet's lesser side. */
function widthOf(laid: LaidPart): number {
  if (isLong(laid)) return legsOf(laid)[0]?.width ?? 0;
  return Math.min(laid.box.w, laid.box.h);
}

/** Screws hold a part around them for this share of their spacing; farther off it wants brads. */
const HELD_BY_SCREW = 0.75;

function contactsOf(stack: Stack, solids: readonly Solid[]): PartContact[] {
  return solids.map((solid) => {
    const supports = contactsUnder(stack, solid.region, solid.z0);
    return { solid, supports, contact: asOne(supports) };
  });
}

function nothingSolid(laid: LaidPart, solids: readonly Solid[]): Check {
  const region = solids.flatMap((s) => [...s.region]);
  const at = boxOf(region) ? centroidOf(region) : { x: laid.box.x, y: laid.box.y };
  return { code: 'fastening.nothing-solid', severity: 'warning', parts: [laid.id], at, figures: {} };
}

/** The edge of a sheet that is driven in but along one stretch finds no hold. */
function looseEdges(
  { settings }: FasteningInput,
  laid: LaidPart,
  contacts: readonly PartContact[],
  driven: readonly Driven[],
): Check[] {
  const at = driven.flatMap((d) => d.at);
  if (at.length === 0 || isLong(laid)) return [];
  const { fromEdge } = settings;
  const spacing = settings.spacing * (driven[0]?.fastener === settings.screw ? SCREW_SPACINGS : 1);
  return contacts.flatMap(({ solid, contact }): Check[] => {
    const loose = looseEdge(solid.region, contact, at, { spacing, fromEdge });
    if (!loose) return [];
    const figures = { length_mm: loose.length };
    return [{ code: 'fastening.loose-edge', severity: 'warning', parts: [laid.id], at: loose.at, figures }];
  });
}

function fasten(
  input: FasteningInput,
  stack: Stack,
  { laid, solids, mass }: PartInput,
  shanks: Shanks,
): PartFastened {
  const contacts = contactsOf(stack, solids);
  const lever = leverOf(laid, contacts);
  const over = input.settings.screwOver_kg;
  const tooHeavy = massFelt(laid, mass, lever, over);
  const how = isBought(laid) || tooHeavy !== null ? 'screws' : laid.fixing.how;
  const held = contacts.some(({ contact }) => areaOf(contact) > 0);
  const checks: Check[] = [];
  if (!held && how !== 'none') checks.push(nothingSolid(laid, solids));
  if (isBought(laid)) {
    const bought = hardware(input, stack, laid, checks, lever);
    for (const shank of bought.shanks) shanks.add(shank);
    return bought;
  }
  let driven = NOTHING;
  if (held && !isPaint(laid)) {
    if (how === 'brads') driven = driveBrads(input, stack, laid, contacts, shanks);
    if (how === 'screws') driven = driveScrews(input, stack, laid, contacts, shanks);
  }
  for (const shank of driven.shanks) shanks.add(shank);
  const beside = besideScrews(input, stack, laid, contacts, driven, shanks);
  const besides = beside.flatMap((brads) => brads.shanks);
  for (const shank of besides) shanks.add(shank);
  checks.push(...driven.checks, ...looseEdges(input, laid, contacts, [driven, ...beside]));
  if (tooHeavy !== null) {
    const heavy = mass > over;
    checks.push({
      code: heavy ? 'fastening.screws' : 'fastening.lever',
      severity: 'note',
      parts: [laid.id],
      figures: heavy ? { mass_kg: mass } : { mass_kg: mass, out_mm: 2 * lever.out, base_mm: lever.base },
    });
  }
  const beads = contacts.reduce((sum, { contact }) => sum + beadLength(contact, widthOf(laid)), 0);
  const glue = isGlued(laid) ? glueFor(input.glue, beads) : 0;
  return {
    fastened: [
      fastenedBy(laid, how, driven, glue),
      ...beside.map((brads) => fastenedBy(laid, 'brads', brads, 0)),
    ],
    checks,
    lever,
    shanks: [...driven.shanks, ...besides],
  };
}

/** By the screws that it is sold with; where those are not told, it brings its own. */
function hardware(
  input: FasteningInput,
  stack: Stack,
  laid: LaidHardware,
  before: readonly Check[],
  lever: Lever,
): PartFastened {
  const { driven, checks } =
    before.length > 0 ? { driven: [], checks: [] } : driveHardware(input, stack, laid);
  return {
    fastened: (driven.length > 0 ? driven : [NOTHING]).map((one) => fastenedBy(laid, 'screws', one, 0)),
    checks: [...before, ...checks],
    lever,
    shanks: driven.flatMap(({ shanks }) => shanks),
  };
}

/** Each part as it was fastened last, where nothing of what that followed from is another; else anew. */
export function fastenParts(input: FasteningInput, last?: PartsFastened): PartsFastened {
  const asked = new Asked();
  const stack = stackOf(input.bed, input.face, input.solids, asked);
  const shanks = new Shanks(asked);
  const ownOf = ownInputs(input);
  const common = commonOf(input);
  const before = last && sameItems(last.common, common) ? last.byPart : new Map<string, KeptPart>();
  const done = new Map<LaidPart, KeptPart>();
  const parts = input.parts.filter((laid) => !isPaint(laid));
  // Hardware has its holes; what else is driven in keeps away from those.
  for (const laid of [...parts.filter(isBought), ...parts.filter((laid) => !isBought(laid))]) {
    const own = ownOf(laid);
    const same = known(before.get(laid.id), own, stack, shanks, input.settings);
    if (same) for (const shank of same.result.shanks) shanks.add(shank);
    done.set(laid, same ?? fastenedAnew(input, stack, own, shanks));
  }
  return { common, byPart: new Map(parts.map((laid) => [laid.id, under(done, laid)])) };
}

function fastenedAnew(input: FasteningInput, stack: Stack, own: PartInput, shanks: Shanks): KeptPart {
  stack.asked.begin();
  const result = fasten(input, stack, own, shanks);
  const around = stack.asked.around();
  const its = new Set(result.shanks);
  return {
    own,
    around,
    wood: around ? solidsIn(stack, around.box) : [],
    driven: around ? shanks.within(around).filter((shank) => !its.has(shank)) : [],
    result,
  };
}

/** What is each part's own. */
function ownInputs(input: FasteningInput): (laid: LaidPart) => PartInput {
  const masses = new Map(input.masses.map(({ part, mass }) => [part, mass]));
  const stocks = new Map(input.stocks.map((stock) => [stock.id, stock]));
  const solids = grouped(input.solids, ({ part }) => part);
  const pieces = grouped(input.pieces, ({ part }) => part);
  return (laid) => ({
    laid,
    solids: groupOf(solids, laid.id),
    pieces: groupOf(pieces, laid.id),
    stock: stocks.get(laid.stock ?? ''),
    mass: totalOf(masses, laid.id),
  });
}

const fastenedBy = (
  laid: LaidPart,
  how: Fastened['how'],
  { fastener, length, from, at, depth, bite }: Driven,
  glue: Liters,
): Fastened => ({ part: laid.id, how, fastener, length, from, at, depth, bite, glue });

/**
 * Brads where a heavy part's screws cannot go, from behind not through the frame, say: its ends and edges are to
 * lie down too. None where nothing was screwed, or where screws hold all around.
 */
function besideScrews(
  input: FasteningInput,
  stack: Stack,
  laid: LaidPart,
  contacts: readonly PartContact[],
  screwed: Driven,
  shanks: Shanks,
): Driven[] {
  const { settings, brad } = input;
  if (!brad || screwed.at.length === 0 || screwed.fastener !== settings.screw) return [];
  const reach = HELD_BY_SCREW * SCREW_SPACINGS * settings.spacing;
  const brads = driveBrads(input, stack, laid, contacts, shanks);
  const at = brads.at.filter((p) => screwed.at.every((q) => distance(p, q) > reach));
  const kept = brads.shanks.filter((shank) => at.includes(shank.at));
  return at.length > 0 ? [{ ...brads, at, checks: [], shanks: kept }] : [];
}

/** How many of each length, by kind, fastener and length. */
function tally(parts: readonly Fastened[]): FastenerUse[] {
  const use = new Map<string, FastenerUse>();
  for (const { how, fastener, length, at } of parts) {
    if (fastener === null || length === null || (how !== 'brads' && how !== 'screws')) continue;
    const key = `${how}|${fastener}|${length}`;
    use.set(key, { how, fastener, length, count: (use.get(key)?.count ?? 0) + at.length });
  }
  const name = (u: FastenerUse) => `${u.how}|${u.fastener}`;
  return [...use.values()].sort((a, b) =>
    name(a) === name(b) ? a.length - b.length : name(a) < name(b) ? -1 : 1,
  );
}

/** Which brad or screw is not in the table is told once, for all the parts that ask for it. */
function unknownOnce(checks: readonly Check[]): Check[] {
  const told = new Map<string, Check>();
  const others: Check[] = [];
  for (const check of checks) {
    if (check.code !== 'fastening.unknown') {
      others.push(check);
      continue;
    }
    const key = String(check.figures.fastener);
    const before = told.get(key);
    told.set(key, before ? { ...before, parts: [...before.parts, ...check.parts] } : check);
  }
  return [...others, ...told.values()];
}

/**
 * How every part is held: brads from the front, screws for heavy parts (from behind, where they reach, so
 * that nothing shows, with brads where they do not: then the part comes twice), glue by the length of its beads; each with its places on the face.
 *
 * A brad is the longest listed that stops short of the far side by the margin, counted through the part,
 * everything solid beneath it and the wood behind the level at that very place. So none ever comes out
 * under the mattress, whatever the stack.
 *
 * No two stand nearer to each other than the wood takes them, whatever parts they hold: what is fixed first keeps
 * its places, and what goes in after it moves along its row.
 *
 * Checks: `fastening.unknown` (error) where the settings name a brad or screw that is not in the table; and
 * as warnings `fastening.through` where every listed length that bites would come out on the far
 * side, `fastening.no-brad` where there is not the wood for any (brads and screws alike),
 * `fastening.nothing-solid`, `fastening.few` where there is room for one or none, and `fastening.loose-edge` where a sheet is driven in but one of its edges is not. Notes, `fastening.screws` and `fastening.lever`, where a part set to brads is heavy enough for screws, or stands
 * out so far from so low a base.
 *
 * Decoration only: hinges, latches and anchors are fixed by their maker's word.
 */
export function planFastening({ byPart }: PartsFastened): FasteningPlan {
  const results = [...byPart.values()].map(({ result }) => result);
  const parts = results.flatMap((r) => r.fastened);
  return {
    parts,
    use: tally(parts),
    glue: parts.reduce((sum, p) => sum + p.glue, 0),
    checks: orderChecks(unknownOnce(results.flatMap((r) => r.checks))),
  };
}
