import { ringsOnSheet } from '../cutting/sheets/lie.ts';
import type { DrawItem, Drawing } from '../drawing/drawing.ts';
import { layer, moved, rectangle, shape } from '../drawing/items.ts';
import { pathOfRings } from '../geometry/path.ts';
import { regionOfBox, ringsOf } from '../geometry/region.ts';
import type { Box, Ring } from '../geometry/shape.ts';
import { FLATNESS } from '../geometry/tolerance.ts';
import { cyclic } from '../list/at.ts';
import { byId } from '../materials/lookup.ts';
import type { Mm } from '../measure/units.ts';
import { patternsOf } from '../patterns/planPatterns.ts';
import { isLetterOf } from '../plan/letters.ts';
import { signRequest } from '../plan/patternRequests.ts';
import type { Plan, SignPlan } from '../plan/types.ts';
import { sayFor } from '../plan/words/say.ts';
import { PLAN_WORDS } from '../plan/words/tables.ts';

/** What is cut or traced for a sign, full size. */
export interface SignFile {
  readonly drawing: Drawing;
  /** The same for a machine that follows every line it is given: nothing but closed paths to cut. */
  readonly machine: Drawing;
  /** How far its lines are from the true curves at most. */
  readonly tolerance: Mm;
}

/** Space between sheets, and between the stencils of several colors, in the file of one sign. */
const BETWEEN: Mm = 20;
/** Any weight will do for a machine. Programs that know no layers of an SVG file tell its lines apart by their color. */
const LOOKS = ['#000000', '#ff0000', '#0000ff', '#00a000', '#ff00ff', '#00a0a0', '#a06000'].map((stroke) => ({
  stroke,
  width: 0.1,
}));
const GUIDE_LOOK = { stroke: '#808080', width: 0.1 } as const;

/** A sheet to cut from, with what is cut of it, its lower left corner at the origin. */
interface Work {
  readonly width: Mm;
  readonly height: Mm;
  /** Name of the color that is painted through it, where sheets differ by that. */
  readonly color: string | null;
  readonly cuts: readonly Ring[];
  /** Border of the sheet itself where it is to be cut as well. */
  readonly edge: Ring | null;
}

/** Stencils and letters for a saw or a knife; other signs as their pattern is printed. */
export function signFile(plan: Plan, sign: SignPlan): SignFile {
  const title = sayFor(plan).name(sign.id);
  if (sign.stencils) return machineFile(title, stencilWork(sign.stencils, sayFor(plan).finish));
  if (sign.cutOuts.length > 0) return machineFile(title, letterWork(plan, sign));
  const drawing = tracedDrawing(plan, sign, title);
  return { drawing, machine: drawing, tolerance: FLATNESS };
}

/** Every sheet that letters of the sign lie on, with those letters as they are nested. */
function letterWork(plan: Plan, sign: SignPlan): Work[] {
  const letters = byId(plan.joinery.pieces.filter((p) => isLetterOf(sign.id, p)));
  return plan.cutting.sheets.flatMap((sheet): Work[] => {
    const cuts = sheet.placements.flatMap((place) => {
      const piece = letters.get(place.piece);
      return piece ? ringsOnSheet(place, piece) : [];
    });
    return cuts.length === 0
      ? []
      : [{ width: sheet.length, height: sheet.width, color: null, cuts, edge: null }];
  });
}

/** The stencil of every color: what is cut away, registration holes with it, and the sheet's own border. */
function stencilWork(
  { sheet, layers }: NonNullable<SignPlan['stencils']>,
  nameOf: (finish: string) => string,
): Work[] {
  const own = (ring: Ring, { x, y }: Box): Ring => ring.map((p) => ({ x: p.x - x, y: p.y - y }));
  const [edge] = ringsOf(regionOfBox({ ...sheet, x: 0, y: 0 }));
  return layers.map(({ finish, stencil }) => ({
    width: sheet.w,
    height: sheet.h,
    color: nameOf(finish),
    cuts: stencil.sheet.flatMap(({ holes }) => holes.map((ring) => own(ring, sheet))),
    edge: edge ?? null,
  }));
}

/**
 * One sheet above the other. Each color has a layer of its own, CUT and its name, and where the border of its sheet is cut
 * too another, EDGE and its name; letters of one kind of sheet lie on CUT. GUIDES are for the eye alone.
 */
function machineFile(title: string, works: readonly Work[]): SignFile {
  const placed = stacked(works);
  const colors = [...new Set(works.map(({ color }) => color))];
  const layersOf = (name: string, of: (work: Work) => readonly Ring[]): DrawItem[] =>
    colors.flatMap((color, i) => {
      const look = cyclic(LOOKS, i);
      const items = placed
        .filter(({ work }) => work.color === color)
        .flatMap(({ work, y }) =>
          of(work).map((ring) => moved({ x: 0, y }, [shape(pathOfRings([ring]), look)])),
        );
      return items.length === 0 ? [] : [layer(color === null ? name : `${name} ${color}`, items)];
    });
  const cut = [
    ...layersOf('CUT', (work) => work.cuts),
    ...layersOf('EDGE', (work) => (work.edge ? [work.edge] : [])),
  ];
  const guides = placed.map(({ work, y }) =>
    rectangle({ x: 0, y, w: work.width, h: work.height }, GUIDE_LOOK),
  );
  const size = sizeOf(works);
  return {
    drawing: { ...size, title, items: [layer('GUIDES', guides), ...cut] },
    machine: { ...size, title, items: cut },
    tolerance: FLATNESS,
  };
}

function stacked(works: readonly Work[]): { readonly work: Work; readonly y: Mm }[] {
  return works.map((work, i) => ({
    work,
    y: works.slice(0, i).reduce((sum, below) => sum + below.height + BETWEEN, 0),
  }));
}

const sizeOf = (sheets: readonly { readonly width: Mm; readonly height: Mm }[]) => ({
  width: Math.max(0, ...sheets.map((s) => s.width)),
  height: Math.max(
    0,
    sheets.reduce((sum, s) => sum + s.height + BETWEEN, -BETWEEN),
  ),
});

function tracedDrawing(plan: Plan, sign: SignPlan, title: string): Drawing {
  const say = sayFor(plan);
  const { seams, design, signs } = plan;
  const told = { nameOf: say.name, finishOf: say.finish, seams, design, signs, parts: plan.layout.parts };
  const request = signRequest(sign, told, plan.design.pages.also.includes('parts'));
  const drawings = patternsOf(request, PLAN_WORDS[plan.language].patterns).map((p) => p.drawing);
  const items: DrawItem[] = drawings.map((drawing) => ({ kind: 'group', items: drawing.items }));
  return { ...sizeOf(drawings), title, items };
}
