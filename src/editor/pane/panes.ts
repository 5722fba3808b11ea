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
import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { StepId } from './steps.ts';

export interface PaneEntry {
  readonly icon: LucideIcon;
  /** Loaded when it is first opened. */
  readonly Pane: LazyExoticComponent<ComponentType>;
}

/** One pane for each step of the job. */
export const PANES: Readonly<Record<StepId, PaneEntry>> = {
  bed: { icon: BedSingle, Pane: lazy(() => import('./bed/BedPane.tsx')) },
  layout: { icon: LayoutPanelTop, Pane: lazy(() => import('./layout/LayoutPane.tsx')) },
  checks: { icon: ClipboardCheck, Pane: lazy(() => import('./checks/ChecksPane.tsx')) },
  wood: { icon: Ruler, Pane: lazy(() => import('./wood/WoodPane.tsx')) },
  paint: { icon: PaintRoller, Pane: lazy(() => import('./paint/PaintPane.tsx')) },
  lettering: { icon: Type, Pane: lazy(() => import('./lettering/LetteringPane.tsx')) },
  fixing: { icon: Hammer, Pane: lazy(() => import('./fixing/FixingPane.tsx')) },
  pages: { icon: Printer, Pane: lazy(() => import('./pages/PagesPane.tsx')) },
};
