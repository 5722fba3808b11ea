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

const loaded = (load: () => Promise<{ readonly default: ComponentType }>) =>
  lazyPart(() => load().then((file) => file.default));

/** One pane for each step of the job. */
export const PANES: Readonly<Record<StepId, PaneEntry>> = {
  bed: { icon: BedSingle, Pane: loaded(() => import('./bed/BedPane.tsx')) },
  layout: { icon: LayoutPanelTop, Pane: loaded(() => import('./layout/LayoutPane.tsx')) },
  checks: { icon: ClipboardCheck, Pane: loaded(() => import('./checks/ChecksPane.tsx')) },
  wood: { icon: Ruler, Pane: loaded(() => import('./wood/WoodPane.tsx')) },
  paint: { icon: PaintRoller, Pane: loaded(() => import('./paint/PaintPane.tsx')) },
  lettering: { icon: Type, Pane: loaded(() => import('./lettering/LetteringPane.tsx')) },
  fixing: { icon: Hammer, Pane: loaded(() => import('./fixing/FixingPane.tsx')) },
  pages: { icon: Printer, Pane: loaded(() => import('./pages/PagesPane.tsx')) },
};
