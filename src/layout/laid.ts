import type { LevelId } from '../bed/face.ts';
import type { Check } from '../check/check.ts';
import { isBought, isPaint } from '../design/made.ts';
import type { Fill, Fitting, Lettering, Painted, Panel, Run, Sign, Strip } from '../design/schema.ts';
import type { Box, Point, Quad, Region, Ring } from '../geometry/shape.ts';
import type { Arc } from '../geometry/stretch.ts';
import type { Deg, Mm } from '../measure/units.ts';

/** Straight length of stock in place: the center line from `start` to `end` and the width across it. */
export interface Leg {
  readonly start: Point;
  readonly end: Point;
  readonly width: Mm;
  readonly thickness: Mm;
  /** Direction of travel, counterclockwise from x. */
  readonly angle: Deg;
  /** A straight segment of a bow: its corners are mitered, whatever others are. */
  readonly bowed?: true;
  /** Where it is cut to an arc beside it that is sawn apart. */
  readonly stops?: Stops;
}

/** An end that is cut to the border of something. */
export interface StoppedEnd {
  /** What it stops at: a part or a member of one, a level, the face, or an arc of its own run. */
  readonly at: string;
  /** Whether it comes up against it; else it ends flush with the edge of what it lies on, or lies within. */
  readonly against: boolean;
  /** Where it is cut, on the face: from the left edge to the right one in the direction of travel. */
  readonly line: readonly Point[];
  /** It only lies so: a joint there cuts it otherwise. */
  readonly laid?: true;
}
export type Stops = { readonly [End in 'start' | 'end']?: StoppedEnd };

/** A long edge of a leg that is planed to an edge of the bed that bows, once the leg is cut. */
export interface Scribe {
  /** By its place in the legs of the part. */
  readonly leg: number;
  /** Null: the line passes an end, and takes the tip that a miter leaves beyond it. */
  readonly side: 'left' | 'right' | null;
  /** The way out of the bed. */
  readonly out: Point;
  /** What it is planed to, on the face and in the direction of travel. */
  readonly line: readonly Point[];
}

/** The arcs of a run, sawn from sheet in pieces of a ring, or bent of its own boards. */
export interface SawnArcs {
  readonly stock: string;
  /** Out of what they lie on; none where the stock is no sheet. */
  readonly thickness: Mm;
  readonly bent: boolean;
  readonly arcs: readonly SawnArc[];
}

/** One arc of a run, in pieces from where its path begins to where it ends. */
export interface SawnArc {
  readonly center: Point;
  /** Counterclockwise; their arcs as chords. */
  readonly pieces: readonly Ring[];
  /** Between two joints, at the center; less than 0 where the path turns to the right. */
  readonly turn: Deg;
  /** How far the middle of all pieces leans to the left of upright, seen from the center. */
  readonly lean: Deg;
  /** Where the arc of the path begins and ends. */
  readonly near: readonly [Point, Point];
  /** The same of the arc at the far side of the stock. */
  readonly far: readonly [Point, Point];
}

/** How a part differs from the prism over its footprint. */
export interface Relief {
  /** Sawn out of its face or back, `depth` deep: grooves along it, or where others are let into it. */
  readonly sunk: Region;
  readonly side: 'face' | 'back' | 'groove';
  readonly depth: Mm;
  /** Wood that it has less, in cubic millimeters. */
  readonly lacking: number;
  /** Painted beside what is seen from the front, in square millimeters. */
  readonly beyond: number;
  readonly lean?: Lean;
}

/** How a slat leans out of the face. */
export interface Lean {
  readonly tilt: Deg;
  /** A place on the line that stands out, and the way across the slat from there. */
  readonly at: Point;
  readonly across: Point;
  /** What is seen of its edge along that line, before its face. */
  readonly edge: Mm;
  /** Nothing but that line's opposite touches what is beneath: its ends hold it. */
  readonly between: boolean;
}

/** One piece of courses whose joints are painted. */
export interface Course {
  readonly angle: Deg;
  readonly row: number;
}

/** What is told of a bought thing. */
export type Bought = Pick<Fitting, 'shape' | 'depth' | 'mass_kg' | 'price' | 'color' | 'sold'>;

type PaintSpec = Pick<Painted, 'shape'> & { readonly course?: Course };

/** Fields that every laid part has. */
interface LaidBase {
  /** The part's id, or `id[column,row]` for a member of an array. */
  readonly id: string;
  /** The part of the design it comes from. */
  readonly part: string;
  readonly name: string;
  readonly member: { readonly column: number; readonly row: number } | null;
  readonly box: Box;
  /** Footprint on the face. Runs: the band of the stock; strips: before any joint, cut where they stop at something. */
  readonly region: Region;
  readonly z0: Mm;
  readonly z1: Mm;
  /** The level or laid part it lies on. */
  readonly on: LevelId | string;
  readonly stock: string | null;
  readonly finish: string | null;
  readonly fixing: { readonly how: 'brads' | 'screws' | 'glue' | 'none'; readonly glue: boolean };
}

export type LaidPart = LaidBase &
  (
    | {
        readonly kind: 'strip';
        readonly leg: Leg;
        /** `read` only where it is cut to fit. */
        readonly spec: Pick<Strip, 'lie' | 'ends' | 'fit' | 'onEdge' | 'read'>;
        readonly stops?: Stops;
        readonly scribed?: readonly Scribe[];
        /** A brace: the corners of its box as they really are, where that is not true. */
        readonly within?: Quad;
      }
    | {
        readonly kind: 'run';
        /** In order of travel; counterclockwise when closed. */
        readonly legs: readonly Leg[];
        readonly closed: boolean;
        /** `reads` only where it is cut to fit. */
        readonly spec: Pick<Run, 'ends' | 'fit' | 'corner' | 'side' | 'path' | 'onEdge' | 'reads'>;
        readonly stops?: Stops;
        readonly sawn?: SawnArcs;
        readonly scribed?: readonly Scribe[];
        /** Its arcs of straight segments where they are struck otherwise than its path tells. */
        readonly bows?: readonly { readonly arc: Arc; readonly count: number }[];
      }
    | { readonly kind: 'panel'; readonly spec: Pick<Panel, 'shape' | 'openings' | 'grain'> }
    | {
        readonly kind: 'sign';
        readonly spec: Pick<Sign, 'shape' | 'openings' | 'grain'>;
        readonly lettering: Lettering;
      }
    | {
        readonly kind: 'fitting';
        readonly spec: Bought;
      }
    | {
        readonly kind: 'painted';
        /** Of courses with painted joints: how they lie, and in which one it is. */
        readonly spec: PaintSpec;
      }
    | { readonly kind: 'lettering'; readonly spec: PaintSpec; readonly lettering: Lettering }
    | {
        /** One piece of a fill, cut by its outline. */
        readonly kind: 'fill';
        /** The middle of the board over what is left of it. */
        readonly leg: Leg;
        /** What is sawn: what is seen, and what reaches under its neighbor. */
        readonly wood: Region;
        readonly spec: Pick<Fill, 'pattern'>;
        readonly relief?: Relief;
      }
  );

export type LaidKind = LaidPart['kind'];
export type Laid<K extends LaidKind> = Extract<LaidPart, { readonly kind: K }>;
export type LaidHardware = Laid<'fitting'>;
/** What has letters: a sign, or lettering without a board. */
export type LaidLetters = Laid<'sign' | 'lettering'>;

/** The straight lengths of stock that a part is made of; none where it is made of other things. */
export const legsOf = (laid: LaidPart): readonly Leg[] =>
  'leg' in laid ? [laid.leg] : 'legs' in laid ? laid.legs : [];

/** What the arcs of a run cover that are sawn from sheet. */
export const arcsOf = (laid: LaidPart): Region =>
  'sawn' in laid && laid.sawn
    ? laid.sawn.arcs.flatMap(({ pieces }) => pieces.map((outer) => ({ outer, holes: [] })))
    : [];

export const reliefOf = (laid: LaidPart): Relief | undefined => ('relief' in laid ? laid.relief : undefined);

/** The grooves that are seen in a face; what others are let into they fill. */
export const groovesOf = (relief: Relief | undefined): Region =>
  relief?.side === 'groove' ? relief.sunk : [];

/** Where the screws of hardware go, on the face. */
export const holesOf = ({ box, spec }: Pick<LaidHardware, 'box' | 'spec'>): Point[] =>
  (spec.sold?.holes ?? []).map(({ u, v }) => ({ x: box.x + u * box.w, y: box.y + v * box.h }));

/** Whether a part is straight lengths of stock, wherever it came from. */
export const isLong = (laid: LaidPart): boolean => 'leg' in laid || 'legs' in laid;

/** Whether a part is glued to what it lies on; fittings are screwed, and paint needs nothing. */
export const isGlued = ({ kind, fixing }: LaidPart): boolean =>
  !isBought({ kind }) &&
  !isPaint({ kind }) &&
  (fixing.how === 'glue' || (fixing.how !== 'none' && fixing.glue));

/** How a rule stands after solving. */
export interface RuleState {
  readonly id: string;
  readonly holds: boolean;
  /** Smallest set of other rules it fights, when it does not hold. */
  readonly fights: readonly string[];
  /** The gap or length that came out, where the rule has one. */
  readonly result: Mm | null;
}

/** A piece that a tape read in place. */
export interface ReadPart {
  readonly part: string;
  /** Parts that are elsewhere or of another size for it, in the order of the layout, without itself. */
  readonly followers: readonly string[];
}

export interface Layout {
  /** Solved boxes of the design's parts (arrays as a whole). */
  readonly boxes: ReadonlyMap<string, Box>;
  /** Every single part, array members one by one, supports before what lies on them. */
  readonly parts: readonly LaidPart[];
  readonly rules: readonly RuleState[];
  readonly checks: readonly Check[];
  /** Absent: nothing was measured in place. */
  readonly read?: readonly ReadPart[];
}
