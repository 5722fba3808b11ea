import type { PacketSection } from '../../design/limits.ts';
import type { Joined, Pictured, Plan } from '../../plan/types.ts';
import type { Content, Packet } from './leaf.ts';
import { bench } from './pages/bench.ts';
import { boards } from './pages/boards.ts';
import { checks } from './pages/checks.ts';
import { cover } from './pages/cover.ts';
import { cutList } from './pages/cutList.ts';
import { elevation } from './pages/elevation.ts';
import { fastening } from './pages/fastening.ts';
import { joints } from './pages/joints.ts';
import { layers } from './pages/layers.ts';
import { lettering } from './pages/lettering.ts';
import { load } from './pages/load.ts';
import { maps } from './pages/maps.ts';
import { marks } from './pages/marks.ts';
import { paint } from './pages/paint.ts';
import { pieceMarks } from './pages/pieceMarks.ts';
import { places } from './pages/places.ts';
import { saw } from './pages/saw.ts';
import { sheets } from './pages/sheets.ts';
import { shopping } from './pages/shopping.ts';
import { steps } from './pages/steps.ts';
import { swing } from './pages/swing.ts';

/** The kinds of pages in the order of the work: what it is, what to mind, what to get, then what is done with it. */
export const PAGE_KINDS = {
  cover,
  checks,
  steps,
  elevation,
  layers,
  pieceMarks,
  shopping,
  cutList,
  boards,
  sheets,
  saw,
  joints,
  bench,
  paint,
  lettering,
  marks,
  places,
  maps,
  fastening,
  swing,
  load,
} as const satisfies Readonly<
  Record<'cover' | 'checks' | PacketSection, (packet: Packet<Plan>) => Content[]>
>;

export type KindsFrom<P> = Partial<
  Readonly<Record<keyof typeof PAGE_KINDS, (packet: Packet<P>) => Content[]>>
>;

/** Those that can be made once all is joined, and once it is painted: while the plan goes on. */
export const JOINED_KINDS = { layers } as const satisfies KindsFrom<Joined>;
export const PAINTED_KINDS = {
  ...{ pieceMarks, bench, elevation, steps, cutList, saw, joints, paint, lettering, maps, swing, load },
} as const satisfies KindsFrom<Pictured>;

export type PageKind = keyof typeof PAGE_KINDS;
