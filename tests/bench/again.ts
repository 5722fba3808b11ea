import { readSupplies } from '../../src/command/supplies.ts';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { practiceOf } from '../../src/editor/planning/practice.ts';
import { union } from '../../src/geometry/clip.ts';
import { layOut } from '../../src/layout/layout.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { chanceOf } from '../chance.ts';
import { lettering } from '../lettering/lettering.ts';
import { starter } from '../plan/starters.ts';
import type { BenchRow } from './row.ts';

const BED = { ...DEFAULT_BED, mattress: { width: 3000, length: 4000, thickness: 127 }, ceiling: 6000 };
const RUNS = 5;

type Edit = (part: Part, run: number) => Part;

/** Every third a panel, else strips, of unlike sizes in rows. */
function mixed(count: number): Design {
  const chance = chanceOf(3);
  const parts = Array.from({ length: count }, (_, i): Part => {
    const at = { x: 10 + 140 * (i % 20), y: 10 + 79 * Math.floor(i / 20), w: 60 + 70 * chance() };
    return i % 3 === 0
      ? newPart('panel', { id: `p${i}`, name: '', box: { ...at, h: 70 } })
      : newPart('strip', { id: `p${i}`, name: '', box: { ...at, h: 35 }, stock: 'lath-quarter' });
  });
  return { ...newDesign(BED), parts };
}

/** Ten lines of ten kinds of letters on one stencil. */
function lettered(count: number): Design {
  const kinds = 'ABDOPQRSEG';
  const lines = Array.from({ length: 10 }, (_, k) =>
    Array.from({ length: count / 10 }, (_, i) => kinds[(i + k) % kinds.length]).join(''),
  );
  const sign = newPart('sign', { id: 'p1', name: 'Sign', box: { x: 100, y: 100, w: 2700, h: 1500 } });
  return { ...newDesign(BED), parts: [{ ...sign, lettering: lettering(lines, { capHeight: 60 }) }] };
}

const moved: Edit = (part, run) => ({ ...part, box: { ...part.box, x: part.box.x + run + 1 } });
const reworded: Edit = (part, run) =>
  part.kind === 'sign'
    ? {
        ...part,
        lettering: {
          ...part.lettering,
          lines: part.lettering.lines.map((line, i) =>
            i === 0 ? { ...line, text: `${'BDOPQ'[run]}${line.text.slice(1)}` } : line,
          ),
        },
      }
    : part;

/** The middle of the processor times of some runs, in milliseconds. */
function middleOf(work: (run: number) => void): number {
  const times = Array.from({ length: RUNS }, (_, run) => {
    const before = process.cpuUsage();
    work(run);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return times.sort((a, b) => a - b)[Math.floor(RUNS / 2)] ?? 0;
}

function row(
  name: string,
  size: number,
  design: Design,
  id: string,
  edit: Edit,
  floor: { name: string; work: (plan: Plan) => void },
): BenchRow {
  const supplies = readSupplies(design);
  const planner = createPlanner();
  // As the worker of the editor practices after its first plan, while the person looks at it.
  for (const edited of [design, ...practiceOf(design)]) planner(edited, supplies);
  let plan = planner(design, supplies);
  let now = design;
  const again = middleOf((run) => {
    now = { ...now, parts: now.parts.map((part) => (part.id === id ? edit(part, run) : part)) };
    plan = planner(now, supplies);
  });
  const least = middleOf(() => floor.work(plan));
  const note = `${Math.round(again)} ms of processor time, the floor ${least.toFixed(1)}`;
  return { name, size, ratio: again / least, against: floor.name, note };
}

const LAYOUT = {
  name: 'layOut alone, from nothing',
  work: ({ design, face, keepClears, stocks }: Plan) => {
    layOut({ design, face, keepClears, stocks });
  },
};

const LETTERS = {
  name: 'one union of all letters by the polygon library',
  work: ({ signs }: Plan) => {
    union(signs.flatMap((sign) => sign.lettered.glyphs.map((glyph) => glyph.region)));
  },
};

/** Fresh numbers after an edit: a planner that knows the plan before, and has practiced as that of the editor has. */
export async function bench(): Promise<BenchRow[]> {
  const kiosk = starter('harbor-ticket-kiosk');
  const strip = kiosk.parts.find(({ kind }) => kind === 'strip')?.id ?? '';
  const sign = kiosk.parts.find(({ kind }) => kind === 'sign')?.id ?? '';
  return [
    row('a strip of a starter moved', kiosk.parts.length, kiosk, strip, moved, LAYOUT),
    row('a letter of a starter changed', kiosk.parts.length, kiosk, sign, reworded, LETTERS),
    row('one of many parts moved', 300, mixed(300), 'p1', moved, LAYOUT),
    row('a letter of many changed', 400, lettered(400), 'p1', reworded, LETTERS),
  ];
}
