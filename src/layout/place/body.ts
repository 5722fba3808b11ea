import { isBoards, isLettered, isMany } from '../../design/made.ts';
import type {
  Fitting,
  Lettering,
  Painted,
  Panel,
  Part,
  PartOf,
  Run,
  Sign,
  Strip,
} from '../../design/schema.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import type { Bought, LaidPart, Leg } from '../laid.ts';
import { section } from '../structure.ts';
import { legsOfRun, pathOfRun, reach, regionOfRun, sawnSides } from './run.ts';
import { sawnRun } from './sawnArcs.ts';
import { regionOfPanel, regionOfShape } from './shape.ts';
import { legOfStrip, regionOfStrip } from './strip.ts';

/** Footprint, height and make of a single part in its box, wherever it may lie. */
export interface Body {
  readonly region: Region;
  /** Out of what it lies on. */
  readonly height: Mm;
  /** How far over what it lies on: the second layer of a fill. */
  readonly lift?: Mm;
  /** Where it is not fastened as its part is. */
  readonly fixing?: LaidPart['fixing'];
  /** Null where it needs none or names one that is not there. */
  readonly stock: string | null;
  /** The stock it names, where that is not in the tables or not of the right kind. */
  readonly unknownStock: string | null;
  readonly make: Make;
  /** How wide the stock of a run is. */
  readonly across?: Mm;
}

type Only<K extends LaidPart['kind']> = Extract<LaidPart, { readonly kind: K }>;
/** The fields of a laid part that are its kind's own. */
type Make =
  | Pick<Only<'strip'>, 'kind' | 'leg' | 'spec'>
  | Pick<Only<'run'>, 'kind' | 'legs' | 'closed' | 'spec' | 'sawn'>
  | Pick<Only<'panel'>, 'kind' | 'spec'>
  | Pick<Only<'sign'>, 'kind' | 'spec' | 'lettering'>
  | Pick<Only<'fitting'>, 'kind' | 'spec'>
  | Pick<Only<'painted'>, 'kind' | 'spec'>
  | Pick<Only<'lettering'>, 'kind' | 'spec' | 'lettering'>
  | Pick<Only<'fill'>, 'kind' | 'leg' | 'wood' | 'spec' | 'relief'>;

/** Fields of a part or of a member of an array that a body is made from. */
export type Single =
  | Pick<Strip, 'kind' | 'stock' | 'lie' | 'angle' | 'length' | 'onEdge' | 'ends' | 'fit' | 'read'>
  | Pick<Run, 'kind' | 'stock' | 'path' | 'side' | 'corner' | 'onEdge' | 'ends' | 'fit' | 'reads'>
  | Pick<Panel, 'kind' | 'stock' | 'shape' | 'openings' | 'grain'>
  | Pick<Sign, 'kind' | 'stock' | 'shape' | 'openings' | 'grain' | 'lettering'>
  | Pick<Fitting, 'kind' | keyof Bought>
  | Pick<Painted, 'kind' | 'shape'>
  | Pick<PartOf<'lettering'>, 'kind' | 'shape' | 'lettering'>;

export function bodyOf(part: Single, box: Box, stocks: ReadonlyMap<string, Stock>): Body {
  switch (part.kind) {
    case 'strip':
      return stripBody(part, box, stocks);
    case 'run':
      return runBody(part, box, stocks);
    case 'panel':
    case 'sign':
      return panelBody(part, box, stocks);
    case 'fitting': {
      const { shape, depth, mass_kg, price, color, sold } = part;
      const make: Make = {
        kind: 'fitting',
        spec: { shape, depth, mass_kg, price, color, ...(sold ? { sold } : {}) },
      };
      return { region: regionOfShape(shape, box), height: depth, stock: null, unknownStock: null, make };
    }
    case 'painted':
    case 'lettering': {
      const spec = { shape: part.shape };
      const make: Make = isLettered(part)
        ? { kind: 'lettering', spec, lettering: part.lettering }
        : { kind: 'painted', spec };
      return { region: regionOfShape(part.shape, box), height: 0, stock: null, unknownStock: null, make };
    }
  }
}

function stripBody(
  part: Extract<Single, { kind: 'strip' }>,
  box: Box,
  stocks: ReadonlyMap<string, Stock>,
): Body {
  const found = section(stocks.get(part.stock), part.onEdge);
  // Without its stock the box is all that is known of it.
  const leg: Leg = legOfStrip(part, box, found ?? { width: Math.min(box.w, box.h), thickness: 0 });
  const { lie, ends, fit, onEdge, read } = part;
  const spec = { lie, ends, fit, onEdge, ...(fit && read ? { read } : {}) };
  return {
    region: regionOfStrip(part, box, leg),
    height: found?.thickness ?? 0,
    stock: found ? part.stock : null,
    unknownStock: found ? null : part.stock,
    make: { kind: 'strip', leg, spec },
  };
}

function runBody(part: Extract<Single, { kind: 'run' }>, box: Box, stocks: ReadonlyMap<string, Stock>): Body {
  const { ends, fit, corner, side, onEdge, reads } = part;
  const found = section(stocks.get(part.stock), onEdge === true);
  const size = found ?? { width: 1, thickness: 0 };
  const spec = {
    ...{ ends, fit, corner, side, path: part.path },
    ...(onEdge ? { onEdge } : {}),
    ...(fit && reads ? { reads } : {}),
  };
  const rest = { height: size.thickness, stock: found ? part.stock : null };
  const sawn = sawnSides(part, box);
  if (!sawn) {
    const path = pathOfRun(part, box, size.width);
    const [legs, region] =
      path.points.length > 1 ? [legsOfRun(part, path, size), regionOfRun(part, path, size.width)] : [[], []];
    const make = { kind: 'run', legs, closed: path.closed, spec } as const;
    return { ...rest, region, unknownStock: found ? null : part.stock, make };
  }
  const { band, closed, sides } = sawn;
  const bent = band.stock === null;
  const named = band.stock ?? part.stock;
  const of = stocks.get(named);
  // A molding bends to one side, and a sheet is no bar: only boards are bent.
  const known = of?.form === (bent ? 'flat' : 'sheet');
  const made = sawnRun(sides, closed, reach(part, size.width), size, band.pieces);
  const thickness = bent ? size.thickness : known ? of.thickness : 0;
  const arcs = { stock: named, thickness, bent, arcs: made?.arcs ?? [] };
  return {
    ...rest,
    across: size.width,
    region: made?.region ?? [],
    unknownStock: !found ? part.stock : known ? null : named,
    // Its straight lengths end at the arcs, and go around nowhere.
    make: { kind: 'run', legs: made?.legs ?? [], closed: false, spec, sawn: arcs },
  };
}

function panelBody(
  part: Extract<Single, { kind: 'panel' | 'sign' }>,
  box: Box,
  stocks: ReadonlyMap<string, Stock>,
): Body {
  const stock = stocks.get(part.stock);
  const sheet = stock?.form === 'sheet' ? stock : null;
  const { shape, openings, grain } = part;
  const spec = { shape, openings, grain };
  const lettering: Lettering | null = isLettered(part) ? part.lettering : null;
  return {
    region: regionOfPanel(shape, openings, box),
    height: sheet?.thickness ?? 0,
    stock: sheet ? part.stock : null,
    unknownStock: sheet ? null : part.stock,
    make: lettering ? { kind: 'sign', spec, lettering } : { kind: 'panel', spec },
  };
}

/** A part that stands for itself, not for many. */
export const isSingle = (part: Part): part is Exclude<Part, { readonly kind: 'array' | 'fill' }> =>
  !isMany(part) && !isBoards(part);
