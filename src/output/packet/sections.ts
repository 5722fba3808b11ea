import type { DrawItem } from '../../drawing/drawing.ts';
import { hatch } from '../../drawing/hatch.ts';
import { line, polyline, rectangle, text } from '../../drawing/items.ts';
import { scaleFor, scaleWords } from '../../drawing/scaleBar.ts';
import { spreadOut } from '../../drawing/spread.ts';
import { DASH, INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { shortened, textWidth } from '../../drawing/text.ts';
import { clipPolyline } from '../../geometry/clip.ts';
import { boxOf, regionOfBox } from '../../geometry/region.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { Solid } from '../../joinery/piece.ts';
import { designPart } from '../../layout/reference.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { partNames } from '../../plan/words/words.ts';
import { solidsInOrder } from './faceView.ts';
import { type Block, space } from './flow.ts';
import type { Packet } from './leaf.ts';

/** A cut through the face: across it at a height, or up it at a distance from its left edge. */
interface Cut {
  readonly way: 'across' | 'up';
  readonly at: Mm;
}

/** From where to where along the cut it goes through a region. */
interface Span {
  readonly from: Mm;
  readonly to: Mm;
}

const MOST_CUTS = 2;
const NOTE: Mm = TEXT.note;
const PITCH: Mm = 3.1;
/** Names are cut short where they would take more than the page has. */
const LONGEST: Mm = 60;
/** From the wood to the names below it. */
const DROP: Mm = 6;

function spansOf({ way, at }: Cut, region: Region): Span[] {
  const far = 1e6;
  const cut =
    way === 'across'
      ? [
          { x: -far, y: at },
          { x: far, y: at },
        ]
      : [
          { x: at, y: -far },
          { x: at, y: far },
        ];
  const axis = way === 'across' ? 'x' : 'y';
  return clipPolyline(cut, region).flatMap((part) => {
    const [from, to] = [part.at(0), part.at(-1)];
    return from && to ? [{ from: from[axis], to: to[axis] }] : [];
  });
}

const isThick = ({ z0, z1 }: Solid): boolean => z1 > z0;

/** The cuts one way that go through the most parts, the second through most that the first leaves out. */
function cutsOf({ plan }: Packet, way: Cut['way']): Cut[] {
  const solids = plan.joinery.solids.filter(isThick).flatMap((solid) => {
    const box = boxOf(solid.region);
    const [low, size] = way === 'across' ? [box?.y, box?.h] : [box?.x, box?.w];
    return low === undefined || size === undefined
      ? []
      : [{ id: designPart(solid.part), low, high: low + size }];
  });
  const edges = [...new Set(solids.flatMap(({ low, high }) => [low, high]))].sort((a, b) => a - b);
  const places = edges.slice(1).map((high, i) => (pick(edges, i) + high) / 2);
  const shown = new Set<string>();
  const cuts: Cut[] = [];
  while (cuts.length < MOST_CUTS) {
    let best: { at: Mm; ids: Set<string> } | null = null;
    for (const at of places) {
      const through = solids.filter(({ low, high }) => low < at && at < high).map(({ id }) => id);
      const ids = new Set(through.filter((id) => !shown.has(id)));
      if (ids.size > (best?.ids.size ?? 0)) best = { at, ids };
    }
    if (!best) break;
    for (const id of best.ids) shown.add(id);
    cuts.push({ way, at: best.at });
  }
  return cuts;
}

/** Levels and parts cut through, what is cut hatched, from the wood behind up to the highest part; each named below. */
function sectionBlock(packet: Packet, cut: Cut, letter: string, width: Mm): Block {
  const { plan, say, unit, terms } = packet;
  const { face } = plan;
  const long = cut.way === 'across' ? face.width : face.height;
  const solids = solidsInOrder(plan).filter(isThick);
  const top = Math.max(0, ...solids.map((s) => s.z1));
  const low = Math.min(...face.levels.map((level) => level.z - level.behind));
  const scale = scaleFor({ w: long, h: 1 }, { w: width, h: width }, unit);
  const named = new Map<string, { at: Mm; words: string }>();
  for (const solid of solids) {
    const [first] = spansOf(cut, solid.region);
    const id = designPart(solid.part);
    if (!first || named.has(id)) continue;
    const name = shortened(partNames([solid.part], say).join(''), { size: NOTE }, LONGEST);
    named.set(id, { at: (first.from + first.to) / 2, words: `${name}, ${say.fromRim(solid.z1)}` });
  }
  const labels = [...named.values()].sort((a, b) => a.at - b.at);
  const tall = (top - low) / scale;
  const below = DROP + Math.max(0, ...labels.map(({ words }) => textWidth(words, { size: NOTE })));
  const title = `${terms.elevation[cut.way](letter, say.length(cut.at))}; ${scaleWords(scale, unit)}`;
  return {
    height: 8 + tall + below + 4,
    draw: (at: Point) => {
      const base = at.y - 8 - top / scale;
      const left = at.x + 4;
      const box = ({ from, to }: Span, z0: Mm, z1: Mm): Box => ({
        x: left + from / scale,
        y: base + z0 / scale,
        w: (to - from) / scale,
        h: (z1 - z0) / scale,
      });
      const wood = face.levels.flatMap((level) =>
        spansOf(cut, level.region).flatMap((span): DrawItem[] => {
          const own = box(span, level.z - level.behind, level.z);
          return [
            rectangle(own, { stroke: INK.line, width: WEIGHT.fine, fill: INK.tint }),
            ...hatch(regionOfBox(own), { angle: 45, pitch: 1.6 }),
          ];
        }),
      );
      const parts = solids.flatMap((solid) =>
        spansOf(cut, solid.region).map((span) =>
          rectangle(box(span, solid.z0, solid.z1), {
            stroke: INK.line,
            width: WEIGHT.middle,
            fill: INK.paper,
          }),
        ),
      );
      const foot = base + low / scale;
      const places = labels.map((label) => left + label.at / scale);
      const rows = spreadOut(places, PITCH, at.x + NOTE, at.x + width - NOTE);
      const names = labels.flatMap(({ words }, i): DrawItem[] => {
        const [place, row] = [pick(places, i), pick(rows, i)];
        const look = { stroke: INK.soft, width: WEIGHT.hair };
        const way = [
          { x: place, y: foot - 0.5 },
          { x: place, y: foot - 1.5 },
          { x: row, y: foot - DROP + 1.5 },
          { x: row, y: foot - DROP + 0.6 },
        ];
        const end = { x: row + NOTE * 0.36, y: foot - DROP };
        return [polyline(way, false, look), text(end, words, { size: NOTE, angle: 90, anchor: 'end' })];
      });
      const rim = line(
        { x: at.x, y: base },
        { x: left + long / scale + 4, y: base },
        { stroke: INK.soft, width: WEIGHT.hair, dash: DASH.center },
      );
      return [
        text({ x: at.x, y: at.y - 4 }, title, { size: TEXT.small, bold: true }),
        ...wood,
        ...parts,
        rim,
        ...names,
      ];
    },
  };
}

/** Sections through the face where most happens, across it and up it, each part named with its height over the rim. */
export function sectionBlocks(packet: Packet, width: Mm): Block[] {
  const cuts = (['across', 'up'] as const).flatMap((way) => cutsOf(packet, way));
  return cuts.flatMap((cut, i) => {
    const letter = String.fromCharCode(65 + i);
    return [sectionBlock(packet, cut, `${letter}–${letter}`, width - 8), space(4)];
  });
}
