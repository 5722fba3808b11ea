import type { Check } from '../check/check.ts';
import { fontsIn } from '../design/look.ts';
import { isLettered, isPaint } from '../design/made.ts';
import { hasPictures } from '../design/picture.ts';
import type { Design, Lettering } from '../design/schema.ts';
import { subtract, union } from '../geometry/clip.ts';
import { boxesMeet, boxOf, transformRegion } from '../geometry/region.ts';
import type { Region } from '../geometry/shape.ts';
import type { ShapeMemory } from '../geometry/shapeMemory.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { KeptResults } from '../layout/kept.ts';
import type { LaidLetters, LaidPart } from '../layout/laid.ts';
import { type CutOut, cutOuts } from '../lettering/cut-out.ts';
import { type Font, readFont } from '../lettering/font.ts';
import { letter } from '../lettering/letter.ts';
import type { Lettered } from '../lettering/result.ts';
import { type StencilSet, stencilSet } from '../lettering/stencil/layers.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { bytesOfBase64 } from './base64.ts';
import { photosOn } from './photos.ts';
import type { SignPlan, Supplies } from './types.ts';

/** What a sign's lettering comes to, wherever the sign stands. */
interface SignWork {
  readonly lettered: Lettered;
  readonly stencils: StencilSet | null;
  readonly cutOuts: readonly CutOut[];
  readonly checks: readonly Check[];
}

/** Four times what stays quick to work with. A sign beyond it is left out and named, or its stencil takes minutes. */
const MOST_LETTERED = 2000;

interface SignsInput {
  readonly parts: readonly LaidPart[];
  readonly fonts: Design['fonts'];
  readonly pictures: Design['pictures'];
  readonly photos: Design['photos'];
  readonly supplies: Supplies;
}

interface Signs {
  readonly signs: readonly SignPlan[];
  readonly checks: readonly Check[];
}

/** Letters every sign; each sign's work is kept while its words, font and size stay, and its letters by their shape. */
export function planSigns(
  { parts, fonts, pictures, photos, supplies }: SignsInput,
  results: KeptResults,
  shapes: ShapeMemory,
): Signs {
  const signs: SignPlan[] = [];
  const checks: Check[] = [];
  let letters = 0;
  for (const sign of parts.filter(isLettered)) {
    const { id, lettering, box } = sign;
    const more = lettering.lines.reduce((sum, line) => sum + [...line.text].length, 0);
    if (letters + more > MOST_LETTERED) {
      const figures = { count: letters + more, most: MOST_LETTERED };
      checks.push({ code: 'limit.letters', severity: 'error', parts: [id], figures });
      continue;
    }
    letters += more;
    const read = fontsIn(lettering).map((name) => ({ name, font: fontOf(name, fonts, supplies, results) }));
    const unknown = read.filter(({ font }) => font === null);
    for (const { name } of unknown) {
      const figures = { font: name };
      checks.push({ code: 'lettering.unknown-font', severity: 'error', parts: [id], figures });
    }
    if (unknown.length > 0) continue;
    const set = new Map(read.flatMap(({ name, font }) => (font ? [[name, font] as const] : [])));
    const own = lettering.lines.some(({ text }) => hasPictures(text)) ? pictures : undefined;
    // By value: a sign that moves with what lies on it keeps its letters.
    const told = JSON.stringify(sightOf(sign, parts));
    const { w, h, x, y } = box;
    const work = results.of(lettering, `letters of ${id}`, [...set.values(), w, h, told, own], () =>
      workSign(id, lettering, set, own, w, h, JSON.parse(told) as Sight, shapes),
    );
    const { lettered, stencils, cutOuts } = work;
    const printed = lettering.make === 'printed';
    const lying = results.of(lettering, `photos on ${id}`, [photos, told, w, h], () =>
      photosOn(sign, boxOf((JSON.parse(told) as Sight).board), photos, results),
    );
    signs.push(
      results.of(work, 'placed', [x, y, printed, lying], () => ({
        id,
        at: { x, y },
        lettered,
        photos: lying.placed,
        printed,
        stencils,
        cutOuts,
      })),
    );
    checks.push(...work.checks, ...lying.checks);
  }
  return { signs, checks };
}

/** A font of the design or of the tool, read; null for none that can be. */
function fontOf(
  name: string,
  fonts: Design['fonts'],
  { fonts: shipped, shaper = null }: Supplies,
  results: KeptResults,
): Font | null {
  const own = fonts.find((f) => `own:${f.id}` === name);
  const bytes = own ? results.of(own, 'bytes', [], () => bytesOfBase64(own.data)) : shipped.get(name);
  if (!bytes) return null;
  return results.of(bytes, 'font', [name, shaper], () => {
    const read = readFont(bytes, name, shaper);
    return read.ok ? read.font : null;
  });
}

/** The board of a sign and what of it is seen, in the sign's coordinates. */
interface Sight {
  readonly board: Region;
  readonly room: Region;
  readonly free: boolean;
}

/** The board of a laid sign, and where on it letters can be seen beside what lies on it. */
export function sightOf(sign: LaidLetters, parts: readonly LaidPart[]): Sight {
  const { x, y } = sign.box;
  const local = (value: Mm) => Math.round(value / SAME_LENGTH) * SAME_LENGTH;
  const own = (region: Region) => transformRegion(region, (p) => ({ x: local(p.x - x), y: local(p.y - y) }));
  const covers = coversOf(sign, parts);
  const board = own(sign.region);
  return {
    board,
    free: isPaint(sign),
    room: covers.length === 0 ? board : subtract(board, union(covers.map((part) => own(part.region)))),
  };
}

/** Parts with a thickness that lie on the sign, or on such parts; supports stand before what lies on them. */
function coversOf(sign: LaidPart, parts: readonly LaidPart[]): LaidPart[] {
  const under = new Set([sign.id]);
  return parts.filter((part) => {
    if (isPaint(part) || !under.has(part.on) || !boxesMeet(part.box, sign.box)) return false;
    under.add(part.id);
    return true;
  });
}

function workSign(
  id: string,
  lettering: Lettering,
  fonts: ReadonlyMap<string, Font>,
  pictures: Design['pictures'],
  w: Mm,
  h: Mm,
  sight: Sight,
  memory: ShapeMemory,
): SignWork {
  const font = pick([...fonts.values()], 0);
  const sign = { id, w, h };
  const { lettered, checks } = letter({ lettering, font, fonts, pictures, sign, ...sight, memory });
  if (lettering.make !== 'stencil') {
    return {
      lettered,
      stencils: null,
      cutOuts: lettering.make === 'cut-out' ? cutOuts(lettered) : [],
      checks,
    };
  }
  const made = stencilSet(lettered, lettering.stencil, sight.board, memory);
  return { lettered, stencils: made.set, cutOuts: [], checks: [...checks, ...made.checks] };
}
