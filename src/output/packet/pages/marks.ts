import type { DrawItem } from '../../../drawing/drawing.ts';
import { hatch } from '../../../drawing/hatch.ts';
import { line, polyline, rectangle, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { wrapped } from '../../../drawing/text.ts';
import type { Point } from '../../../geometry/shape.ts';
import { SAME_LENGTH } from '../../../geometry/tolerance.ts';
import { lastOf } from '../../../list/at.ts';
import type { StickMark } from '../../../marks/result.ts';
import { formatLength } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Plan } from '../../../plan/types.ts';
import { checkMessage, partNames } from '../../../plan/words/words.ts';
import { type Block, heading, paragraph, space, tableOf } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { tickBox } from './shopping.ts';

/** Edges that fall on a mark, members of one array told together. */
function edgeWords(packet: Packet<Plan>, mark: StickMark, axis: 'x' | 'y'): string {
  const words = packet.words.patterns;
  return (['low', 'mid', 'high', 'hole'] as const)
    .flatMap((edge) => {
      const ids = mark.edges.filter((e) => e.edge === edge).map((e) => e.part);
      return partNames(ids, packet.say).map((name) => `${name} ${words.edge[edge][axis]}`);
    })
    .join(', ');
}

/** Height of the figure, and its width; what is written stands beside it. */
const TALL: Mm = 40;
const WIDE: Mm = 76;

/** A board across both rims with a square on it whose blade reaches the work below: a section, not to scale. */
function carried({ terms, plan }: Packet<Plan>, { x, y }: Point): DrawItem[] {
  const { carry } = terms.marks;
  const down = plan.face.levels.map(({ z }) => -z).sort((a, b) => a - b);
  const deepest = lastOf(down);
  // The rim stands at this height, the deepest level as far below it as there is room.
  const rim = y + TALL - 17;
  const drop = (z: Mm) => (z / deepest) * (TALL - 26);
  const step = 13;
  const solid = { stroke: INK.line, width: WEIGHT.middle, fill: INK.paper };
  const profile = down.flatMap((z, i) => {
    const left = x + i * step;
    const right = i === down.length - 1 ? x + WIDE : left + step;
    return [
      { x: left, y: rim - drop(z) },
      { x: right, y: rim - drop(z) },
    ];
  });
  const ground = [...profile, { x: x + WIDE, y: y + 2 }, { x, y: y + 2 }];
  const board = { x: x - 2, y: rim, w: WIDE + 2, h: 6 };
  const at = x + 52;
  const foot = rim - drop(deepest);
  const small = { size: TEXT.note };
  return [
    ...hatch([{ outer: ground, holes: [] }], { angle: 45, pitch: 2.4 }),
    polyline(profile, false, { stroke: INK.line, width: WEIGHT.bold }),
    rectangle(board, solid),
    rectangle({ x: at, y: foot, w: 3, h: rim + board.h + 5 - foot }, solid),
    rectangle({ x: at - 12, y: rim + board.h, w: 15, h: 5 }, solid),
    line({ x: at + 3, y: foot }, { x: at + 9, y: foot }, { stroke: INK.accent, width: WEIGHT.bold }),
    text({ x: x + 16, y: rim + 1.9 }, carry.board, small),
    text({ x: at + 5, y: rim + board.h + 1.6 }, carry.square, small),
    text({ x: x + 1, y: rim + board.h + 1.6 }, carry.rim, small),
    line({ x: x + 3, y: rim + board.h + 1 }, { x: x + 3, y: rim }),
  ];
}

/** How marks come down from the rim to the levels below it. Common practice, no source. */
function carryBlocks(packet: Packet<Plan>, width: Mm): Block[] {
  const { carry } = packet.terms.marks;
  const deepest = Math.min(...packet.plan.face.levels.map(({ z }) => z));
  if (deepest > -SAME_LENGTH) return [];
  const beside = width - WIDE - 8;
  const steps = carry.steps(formatLength(-deepest, packet.measure)).map((words, i) => ({
    number: `${i + 1}`,
    rows: wrapped(words, { size: TEXT.body }, beside - 6),
  }));
  const lead = TEXT.body * 1.45;
  const high = Math.max(
    TALL,
    steps.reduce((sum, { rows }) => sum + rows.length * lead + 2, 0),
  );
  const figure: Block = {
    height: high + 4,
    draw: ({ x, y }) => {
      let top = y;
      const told = steps.flatMap(({ number, rows }) => {
        const from = top;
        top -= rows.length * lead + 2;
        const left = x + WIDE + 8;
        return [
          text({ x: left, y: from - TEXT.body }, number, { size: TEXT.body, bold: true }),
          ...rows.map((row, i) =>
            text({ x: left + 6, y: from - TEXT.body - i * lead }, row, { size: TEXT.body }),
          ),
        ];
      });
      return [...carried(packet, { x: x + 2, y: y - TALL }), ...told];
    },
  };
  return [heading(carry.title), figure];
}

/** Both story sticks as tables, each mark with all edges that fall on it. */
export function marks(packet: Packet<Plan>): Content[] {
  const terms = packet.terms.marks;
  const { plan, words, say, body } = packet;
  const blocks = plan.marks.sticks.flatMap(({ axis, marks }): Block[] => {
    const rows = tableOf(
      [
        [terms.at, 1.8, ({ shown }) => formatLength(shown, packet.measure), 'figure'],
        [terms.what, 10, (mark) => edgeWords(packet, mark, axis)],
      ],
      marks,
      body.w,
      () => ({ swatch: tickBox }),
    );
    return [heading(terms.axis[axis]), ...rows, space(4)];
  });
  const lines = plan.checks
    .filter(({ code }) => code === 'bed.datum')
    .flatMap((check) => paragraph(checkMessage(check, words, say), body.w));
  return [
    {
      title: packet.terms.titles.marks,
      blocks: [...paragraph(terms.lead, body.w), ...lines, ...carryBlocks(packet, body.w), ...blocks],
    },
  ];
}
