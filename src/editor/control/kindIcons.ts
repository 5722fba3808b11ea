import {
  BrickWall,
  Columns4,
  Frame,
  Lamp,
  type LucideIcon,
  OctagonMinus,
  PaintBucket,
  PanelTop,
  RectangleHorizontal,
  Signpost,
  Type,
} from 'lucide-react';
import type { DrawnKind } from '../state/tools.ts';

export const KIND_ICONS: Readonly<Record<DrawnKind, LucideIcon>> = {
  strip: RectangleHorizontal,
  run: Frame,
  panel: PanelTop,
  sign: Signpost,
  fitting: Lamp,
  painted: PaintBucket,
  lettering: Type,
  array: Columns4,
  fill: BrickWall,
  'keep-clear': OctagonMinus,
};
