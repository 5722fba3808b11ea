import type { Face } from '../../bed/face.ts';
import { isBoards } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import { boxAround } from '../../geometry/box.ts';
import { pointsOf } from '../../geometry/loop.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import type { Layout } from '../../layout/laid.ts';
import { regionOfFill } from '../../layout/place/shape.ts';
import type { Mm } from '../../measure/units.ts';
import type { Shown } from '../document/shown.ts';
import { cornersOf, letterWay, sidesOfCorners } from '../edit/corners.ts';
import { itemsOf } from '../edit/movable.ts';
import { openingIn } from '../edit/openings.ts';
import type { EditorState, View } from '../state/store.ts';
import { boxesOf, movableAround } from './boxes.ts';
import { clearOfOverall } from './clear.ts';
import { type Dimension, dimensionsOf, dimensionsOfOpening, faceDimensions } from './dimensions.ts';
import { type Handle, handlesAround, handlesOf } from './handles.ts';
import { memberMarks } from './members.ts';

/** A face narrower than this on the screen, in pixels, would be covered by the dimensions of a part. */
const ROOM_FOR_DIMENSIONS = 150;

/** Everything that lies over the parts: what is selected, with its dimensions. */
export interface Scene {
  readonly layout: Layout;
  readonly face: Face;
  /** The selection, outlined as it is laid; of a fill its border, not that of each of its pieces. */
  readonly outlined: readonly Region[];
  /** Boxes that are dashed. */
  readonly boxes: readonly Box[];
  readonly handles: readonly Handle[];
  /** The way that the words of the one selected part run along, while it may be drawn by hand. */
  readonly way: readonly Point[];
  /** Around several that are sized together, by the handles on it. */
  readonly around: Box | null;
  readonly dimensions: readonly Dimension[];
  /** The face's own. */
  readonly overall: readonly Dimension[];
  /** Around the selection, for the rulers. */
  readonly marked: Box | null;
}

type Chosen = Pick<EditorState, 'corner' | 'opening' | 'member'> & {
  readonly selection: readonly string[];
  readonly view: View;
  /** While something is carried its handles are away. */
  readonly carrying: boolean;
};

export function sceneOf(shown: Shown, chosen: Chosen): Scene {
  const { selection, view, corner, opening, member, carrying } = chosen;
  const { design, layout, face } = shown;
  const boxes = boxesOf(design, layout, selection);
  const items = new Set(itemsOf(design, selection));
  const [only] = selection;
  const marks = selection.length === 1 && only ? memberMarks(design, layout, only, member) : null;
  const one = marks?.chosen ?? null;
  const onlyBox = selection.length === 1 ? boxes[0] : undefined;
  const single = only !== undefined && onlyBox !== undefined && !design.groups.some((g) => g.id === only);
  const many = single ? null : movableAround(design, layout, selection);
  const part = single && opening !== null ? design.parts.find(({ id }) => id === only) : undefined;
  const inner = part && onlyBox && opening !== null ? openingIn(part, onlyBox, opening) : null;
  const handles = carrying
    ? []
    : single
      ? handlesOf(design, only, onlyBox, view, corner, opening)
      : many
        ? handlesAround(many, view)
        : [];
  const roomy = face.width * view.scale > ROOM_FOR_DIMENSIONS;
  return {
    layout,
    face,
    outlined: items.size === 0 ? [] : outlinedOf(shown, items, one),
    boxes: inner ? [inner.hole] : single ? (marks?.boxes ?? []) : boxes,
    around: carrying ? null : many,
    way: onlyBox && single ? wayOf(design, only, onlyBox) : [],
    handles,
    dimensions:
      single && roomy
        ? clearOfOverall(
            inner ? dimensionsOfOpening(inner) : dimensionsOf(shown, only, onlyBox),
            inner?.hole ?? onlyBox,
            face,
            view,
            handles,
          )
        : [],
    overall: faceDimensions(face),
    marked: boxAround(boxes),
  };
}

/** Strays no farther from the way itself. */
const FLAT: Mm = 0.5;

function wayOf({ parts }: Design, id: string, box: Box): Point[] {
  const part = parts.find((one) => one.id === id);
  const way = part && letterWay(part) ? cornersOf(part, box) : null;
  return way ? sidesOfCorners(way).flatMap((side) => pointsOf(side, FLAT)) : [];
}

/** @param one the member that is chosen; null: all of them */
function outlinedOf(
  { design, layout }: Shown,
  items: ReadonlySet<string>,
  one: string | null,
): readonly Region[] {
  const fills = one === null ? design.parts.filter((part) => items.has(part.id)).filter(isBoards) : [];
  const whole = new Set(fills.map(({ id }) => id));
  return [
    ...layout.parts
      .filter((p) => items.has(p.part) && !whole.has(p.part) && (one === null || p.id === one))
      .map(({ region }) => region),
    ...fills.map((fill) => regionOfFill(fill, boxIn(layout.boxes, fill))),
  ];
}
