import {
  BedSingle,
  ClipboardCheck,
  Hammer,
  LayoutPanelTop,
  type LucideIcon,
  PaintRoller,
  Printer,
  Ruler,
  Type,
} from 'lucide-react';
import type { ComponentType } from 'react';
import { lazyPart } from '../control/lazyPart.tsx';
import type { StepId } from '../state/steps.ts';

export interface PaneEntry {
  readonly icon: LucideIcon;
  /** Loaded when it is first opened. */
  readonly Pane: ComponentType;
}

/** One pane for each step of the job. */
export const PANES: Readonly<Record<StepId, PaneEntry>> = {
  bed: { icon: BedSingle, Pane: lazyPart(() => import('./bed/BedPane.tsx').then((m) => m.default)) },
  layout: {
    icon: LayoutPanelTop,
    Pane: lazyPart(() => import('./layout/LayoutPane.tsx').then((m) => m.default)),
  },
  checks: {
    icon: ClipboardCheck,
    Pane: lazyPart(() => import('./checks/ChecksPane.tsx').then((m) => m.default)),
  },
  wood: { icon: Ruler, Pane: lazyPart(() => import('./wood/WoodPane.tsx').then((m) => m.default)) },
  paint: { icon: PaintRoller, Pane: lazyPart(() => import('./paint/PaintPane.tsx').then((m) => m.default)) },
  lettering: {
    icon: Type,
    Pane: lazyPart(() => import('./lettering/LetteringPane.tsx').then((m) => m.default)),
  },
  fixing: { icon: Hammer, Pane: lazyPart(() => import('./fixing/FixingPane.tsx').then((m) => m.default)) },
  pages: { icon: Printer, Pane: lazyPart(() => import('./pages/PagesPane.tsx').then((m) => m.default)) },
};
