import { awning } from './kind/awning.ts';
import { benchSlats } from './kind/benchSlats.ts';
import { clockFace } from './kind/clockFace.ts';
import { cornice } from './kind/cornice.ts';
import { doorPair } from './kind/doorPair.ts';
import { window } from './kind/glazed.ts';
import { hatch } from './kind/hatch.ts';
import { ledgedDoor } from './kind/ledgedDoor.ts';
import { letterPlate } from './kind/letterPlate.ts';
import { panelDoor } from './kind/panelDoor.ts';
import { pilaster } from './kind/pilaster.ts';
import { porthole } from './kind/porthole.ts';
import { shelves } from './kind/shelves.ts';
import { shutter } from './kind/shutter.ts';
import { signBoard } from './kind/signBoard.ts';
import { slidingDoor } from './kind/slidingDoor.ts';
import { stallRiser } from './kind/stallRiser.ts';
import { wainscot } from './kind/wainscot.ts';
import type { AssemblyKind } from './kind.ts';

/** Every kind of assembly, by the name that a design keeps it under; in the order in which they are offered. */
export const ASSEMBLIES = {
  'panel-door': panelDoor,
  'door-pair': doorPair,
  'ledged-door': ledgedDoor,
  'sliding-door': slidingDoor,
  window,
  porthole,
  'clock-face': clockFace,
  hatch,
  shutter,
  shelves,
  wainscot,
  'stall-riser': stallRiser,
  'bench-slats': benchSlats,
  cornice,
  pilaster,
  awning,
  'sign-board': signBoard,
  'letter-plate': letterPlate,
} as const satisfies Readonly<Record<string, AssemblyKind>>;

export type AssemblyName = keyof typeof ASSEMBLIES;

export const ASSEMBLY_NAMES = Object.keys(ASSEMBLIES) as AssemblyName[];

/** The kind of a name; undefined where a later version wrote it. */
export const assemblyOf = (name: string): AssemblyKind | undefined =>
  Object.hasOwn(ASSEMBLIES, name) ? ASSEMBLIES[name as AssemblyName] : undefined;
