import type { Check } from '../check/check.ts';
import { isPaint } from '../design/made.ts';
import type { Design, Lettering } from '../design/schema.ts';
import { subtract, union } from '../geometry/clip.ts';
import { boxesMeet, transformRegion } from '../geometry/region.ts';
import type { Region } from '../geometry/shape.ts';
import { type ShapeMemory, shapeMemory } from '../geometry/shapeMemory.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Laid, LaidPart } from '../layout/laid.ts';
import { type CutOut, cutOuts } from '../lettering/cut-out.ts';
import { type Font, readFont } from '../lettering/font.ts';
import { letter } from '../lettering/letter.ts';
import type { Lettered } from '../lettering/result.ts';
import { type StencilSet, stencilSet } from '../lettering/stencil/layers.ts';
import type { Mm } from '../measure/units.ts';
import { bytesOfBase64 } from './base64.ts';
import { rememberingEach } from './memory.ts';
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

/** Letters every sign; remembers each sign's work while its words, font and size stay. */
export function createSignPlanner() {
  const memory = shapeMemory();
  const fontOf = rememberingEach((_id: string, bytes: Uint8Array): Font | null => {
    const read = readFont(bytes, _id);
    return read.ok ? read.font : null;
  });
  const ownBytes = rememberingEach((_id: string, data: string) => bytesOfBase64(data));
  const workOf = rememberingEach(
    (id: string, lettering: Lettering, font: Font, w: Mm, h: Mm, told: string): SignWork =>
      workSign(id, lettering, font, w, h, JSON.parse(told) as Sight, memory),
  );
  const planned = rememberingEach(
    (id: string, work: SignWork, x: Mm, y: Mm): SignPlan => ({
      id,
      at: { x, y },
      lettered: work.lettered,
      stencils: work.stencils,
      cutOuts: work.cutOuts,
    }),
  );
  return (parts: readonly LaidPart[], fonts: Design['fonts'], supplies: Supplies) => {
    const signs: SignPlan[] = [];
    const checks: Check[] = [];
    let letters = 0;
    for (const sign of parts.filter((p): p is Laid<'sign'> => p.kind === 'sign')) {
      const { lettering, box } = sign;
      const more = lettering.lines.reduce((sum, line) => sum + [...line.text].length, 0);
      if (letters + more > MOST_LETTERED) {
        const figures = { count: letters + more, most: MOST_LETTERED };
        checks.push({ code: 'limit.letters', severity: 'error', parts: [sign.id], figures });
        continue;
      }
      letters += more;
      const own = fonts.find((f) => `own:${f.id}` === lettering.font);
      const bytes = own ? ownBytes.of(own.id, own.data) : supplies.fonts.get(lettering.font);
      const font = bytes ? fontOf.of(lettering.font, bytes) : null;
      if (!font) {
        const figures = { font: lettering.font };
        checks.push({ code: 'lettering.unknown-font', severity: 'error', parts: [sign.id], figures });
        continue;
      }
      // By value: a sign that moves with what lies on it keeps its letters.
      const told = JSON.stringify(sightOf(sign, parts));
      const work = workOf.of(sign.id, lettering, font, box.w, box.h, told);
      signs.push(planned.of(sign.id, work, box.x, box.y));
      checks.push(...work.checks);
    }
    for (const memory of [fontOf, ownBytes, workOf, planned]) memory.sweep();
    return { signs, checks };
  };
}

/** The board of a sign and what of it is seen, in the sign's coordinates. */
interface Sight {
  readonly board: Region;
  readonly room: Region;
}

/** The board of a laid sign, and where on it letters can be seen beside what lies on it. */
export function sightOf(sign: Laid<'sign'>, parts: readonly LaidPart[]): Sight {
  const { x, y } = sign.box;
  const local = (value: Mm) => Math.round(value / SAME_LENGTH) * SAME_LENGTH;
  const own = (region: Region) => transformRegion(region, (p) => ({ x: local(p.x - x), y: local(p.y - y) }));
  const covers = coversOf(sign, parts);
  const board = own(sign.region);
  return {
    board,
    room: covers.length === 0 ? board : subtract(board, union(covers.map((part) => own(part.region)))),
  };
}

/** Parts with a thickness that lie on the sign, or on such parts; supports stand before what lies on them. */
function coversOf(sign: Laid<'sign'>, parts: readonly LaidPart[]): LaidPart[] {
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
  font: Font,
  w: Mm,
  h: Mm,
  sight: Sight,
  memory: ShapeMemory,
): SignWork {
  const { lettered, checks } = letter({ lettering, font, sign: { id, w, h }, ...sight, memory });
  if (lettering.make !== 'stencil') {
    return {
      lettered,
      stencils: null,
      cutOuts: lettering.make === 'cut-out' ? cutOuts(lettered) : [],
      checks,
    };
  }
  const made = stencilSet(lettered, lettering.stencil, memory);
  return { lettered, stencils: made.set, cutOuts: [], checks: [...checks, ...made.checks] };
}
