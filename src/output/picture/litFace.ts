import { isLettered, isPaint } from '../../design/made.ts';
import type { Color, DrawItem, PathItem } from '../../drawing/drawing.ts';
import { rectangle, shape } from '../../drawing/items.ts';
import { INK, WEIGHT } from '../../drawing/style.ts';
import { appearanceOf } from '../../finish/lit/appearance.ts';
import { arrisesOf, EASED } from '../../finish/lit/arris.ts';
import { grainOf } from '../../finish/lit/grain.ts';
import { dimmed, litColor } from '../../finish/lit/lambert.ts';
import { bandsOf } from '../../finish/lit/molding.ts';
import { letterLook } from '../../finish/look.ts';
import { SHADE } from '../../finish/shadow.ts';
import { gleamOf } from '../../finish/sheen.ts';
import { pathOfRegion, pathOfRings } from '../../geometry/path.ts';
import { translateRegion } from '../../geometry/region.ts';
import type { Path, Region } from '../../geometry/shape.ts';
import type { Solid } from '../../joinery/piece.ts';
import { groovesOf, type LaidPart } from '../../layout/laid.ts';
import { photoItems } from '../../lettering/photo/drawn.ts';
import { under } from '../../list/at.ts';
import { grouped, groupOf } from '../../list/grouped.ts';
import { keptBy } from '../../list/keptBy.ts';
import { byId } from '../../materials/lookup.ts';
import type { Mm } from '../../measure/units.ts';
import type { Pictured } from '../../plan/types.ts';
import { solidsInOrder } from '../packet/faceView.ts';
import { shadowsOn } from './shadows.ts';

/** The bed's own wood, whatever it is. */
const BARE: Color = '#e6d6b8';
/** Lines of joints and around what lies apart: how wide, and in how much light. */
const LINE: Mm = 0.4;
const LINED = 0.35;
/** Strokes of the grain. */
const GRAIN = 0.8;

const filled = (region: Region, fill: Color): PathItem =>
  shape(pathOfRegion(region), { fill, fillRule: 'evenodd' });

const within = (clip: Path, items: readonly DrawItem[]): DrawItem[] =>
  items.length > 0 && clip.length > 0 ? [{ kind: 'group', clip, items }] : [];

/**
 * The face as a person sees it, on the coordinates of the face: every part in the color of its finish over its wood, in
 * the design's light, which cover and files share. Edges are eased, moldings shaped, wood has its grain, sheens gleam, and all of it throws shadows.
 */
export const litFace = keptBy((plan: Pictured): readonly DrawItem[] => {
  const { face, layout, joinery, looks, design } = plan;
  const laid = new Map(layout.parts.map((part) => [part.id, part]));
  const appearance = appearanceOf({
    ...{ looks, finishes: design.finishes, stocks: plan.stocks },
    materials: byId(plan.tables.materials),
  });
  const joints = grouped(joinery.pieces, ({ part }) => part);
  const letters = lettersOf(plan);

  const surface = (solid: Solid, part: LaidPart): DrawItem[] => {
    const { fill, grained, molding } = appearance(part);
    const line = dimmed(fill, LINED);
    const own = pathOfRegion(solid.region);
    const bands = molding
      ? (solid.lengths ?? []).flatMap((length) =>
          within(
            pathOfRegion(length.region),
            bandsOf(length, molding).map(({ ring, normal }) =>
              shape(pathOfRings([ring]), { fill: litColor(fill, normal, design.light) }),
            ),
          ),
        )
      : [];
    const grain = grained ? grainOf(part) : [];
    const strokes: DrawItem[] = [
      ...(grain.length > 0 ? [shape(grain, { stroke: dimmed(fill, GRAIN), width: 0.8 })] : []),
      ...(bands.length > 0 || isPaint(part)
        ? []
        : arrisesOf(solid.region).map(({ normal, path }) =>
            shape(path, { stroke: litColor(fill, normal, design.light), width: 2 * EASED }),
          )),
    ];
    const between = groupOf(joints, solid.part).flatMap(({ placed }) => placed);
    return [
      shape(own, { fill, fillRule: 'evenodd' }),
      ...bands,
      ...within(own, strokes),
      ...groovesOf(solid.relief).map((groove) => filled([groove], line)),
      ...(isPaint(part)
        ? []
        : [shape(between.length > 0 ? pathOfRegion(between) : own, { stroke: line, width: LINE })]),
    ];
  };

  return [
    ...face.levels.map(({ region }) =>
      shape(pathOfRegion(region), { ...filled(region, BARE), stroke: dimmed(BARE, LINED), width: LINE }),
    ),
    ...solidsInOrder(plan).flatMap((solid) => {
      const part = laid.get(solid.part);
      if (!part || (isLettered(solid) && isPaint(solid))) return [];
      return [...surface(solid, part), ...groupOf(letters, solid.part)];
    }),
    ...freeLetters(plan),
    ...freePrints(plan, letters),
    ...gleams(plan),
    ...shadowsOn(plan).map(({ region }) =>
      shape(pathOfRegion(region), { fill: SHADE.color, fillOpacity: SHADE.opacity }),
    ),
    rectangle(face.box, { stroke: INK.line, width: WEIGHT.bold }),
  ];
});

/** What is on each sign: photos, and its lettering over them. */
function lettersOf({ signs, layout, looks, design }: Pictured): ReadonlyMap<string, readonly DrawItem[]> {
  const boards = new Map(layout.parts.map(({ id, region }) => [id, region]));
  return new Map(
    signs.map(({ id, at, lettered, photos }) => [
      id,
      [
        ...photoItems(photos, under(boards, id), at),
        ...lettered.layers.map(({ region, finish }) =>
          filled(translateRegion(region, at.x, at.y), letterLook(looks, design.finishes, id, finish) ?? BARE),
        ),
      ],
    ]),
  );
}

/** Prints without a board, each on its paper. */
function freePrints({ signs, layout, looks }: Pictured, letters: ReturnType<typeof lettersOf>): DrawItem[] {
  const printed = new Set(signs.flatMap((sign) => (sign.printed ? sign.id : [])));
  return layout.parts
    .filter((part) => isPaint(part) && printed.has(part.id))
    .flatMap(({ id, region }) => [filled(region, looks.parts.get(id) ?? BARE), ...groupOf(letters, id)]);
}

/** Letters without a board lie on wood of any height: what is seen of them is told. */
function freeLetters({ joinery, finish }: Pictured): DrawItem[] {
  const free = new Set(joinery.solids.filter((s) => isLettered(s) && isPaint(s)).map(({ part }) => part));
  return finish.shown
    .filter((area) => free.has(area.part) && area.finish !== null)
    .toReversed()
    .map(({ region, look }) => filled(region, look ?? BARE));
}

/** The gleam of each sheen over all that has it. */
function gleams({ face, finish, design }: Pictured): DrawItem[] {
  const sheens = new Map(design.finishes.map(({ id, sheen }) => [id, sheen]));
  const painted = finish.shown.flatMap(({ finish: own, region }) => (own === null ? [] : { own, region }));
  const alike = grouped(painted, ({ own }) => under(sheens, own));
  return [...alike].flatMap(([sheen, areas]) => {
    const gleam = gleamOf(sheen, design.light, face.box);
    return gleam
      ? within(
          areas.flatMap(({ region }) => pathOfRegion(region)),
          [rectangle(face.box, { fade: gleam })],
        )
      : [];
  });
}
