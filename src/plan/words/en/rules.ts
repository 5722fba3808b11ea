import { lastOf, pick } from '../../../list/at.ts';
import type { PlanWords, RuleSay } from '../words.ts';
import { list } from './steps.ts';

const direction = { x: ['right of', 'left of'], y: ['above', 'below'] } as const;

const names = (ids: readonly string[], say: RuleSay) =>
  ids.length > 4
    ? `${ids.length} parts from ${say.name(pick(ids, 0))} to ${say.name(lastOf(ids))}`
    : list(ids.map(say.name));

const inset = (mm: number, say: RuleSay) => (mm === 0 ? '' : `, held back ${say.length(mm)}`);

/** Rules as plain sentences; `result` is the gap or length that came out. */
export const rules: PlanWords['rules'] = {
  set: (r, _result, say) => {
    const [beyond, before] = direction[r.axis];
    const edge = say.edge(r.edge, r.axis);
    const from = say.edge(r.from, r.axis);
    if (r.distance === 0) return `The ${edge} is on the ${from}`;
    return `The ${edge} is ${say.length(Math.abs(r.distance))} ${r.distance > 0 ? beyond : before} the ${from}`;
  },
  gap: (r, result, say) =>
    `The ${say.edge(r.edge, r.axis)} is as far from the ${say.edge(r.from, r.axis)} as the ${say.edge(r.likeEdge, r.axis)} from the ${say.edge(r.likeFrom, r.axis)}${result === null ? '' : `, ${say.length(Math.abs(result))}`}`,
  center: (r, _result, say) =>
    `${names(r.parts, say)} centered between the ${say.edge(r.low, r.axis)} and the ${say.edge(r.high, r.axis)}`,
  between: (r, result, say) => {
    const span = result === null ? '' : ` (${say.length(result)})`;
    const low = say.edge(r.low, r.axis) + inset(r.insetLow, say);
    const high = say.edge(r.high, r.axis) + inset(r.insetHigh, say);
    return `${say.name(r.part)} runs from the ${low} to the ${high}${span}`;
  },
  even: (r, result, say) => {
    const ends = `between the ${say.edge(r.low, r.axis)} and the ${say.edge(r.high, r.axis)}`;
    const gap = result === null ? '' : ` of ${say.length(result)}`;
    const how = {
      gaps: `equal gaps${gap}`,
      flush: `equal gaps${gap}, ends flush`,
      half: `equal gaps${gap}, half a gap at the ends`,
      centers: `${say.length(r.pitch ?? result ?? 0)} on center`,
      most: `equal gaps${gap}, none over ${say.length(r.most ?? 0)}`,
    }[r.mode];
    return `${r.parts.length} parts (${names(r.parts, say)}), ${how}, ${ends}`;
  },
  mirror: (r, _result, say) =>
    `${say.name(r.twin)} mirrors ${say.name(r.part)} about the ${say.edge(r.about, r.axis)}`,
  same: (r, result, say) =>
    `${names(r.parts, say)} share one ${r.axis === 'x' ? 'width' : 'height'}${result === null ? '' : `, ${say.length(result)}`}`,
  reveal: (r, _result, say) =>
    `${say.name(r.part)} keeps the same margin all around, ${say.length(r.margin)}, inside ${say.edge({ of: r.inside, side: 'mid', inner: r.inner }, 'x').replace(/^[^,]*? of /, '')}`,
  graded: (r, _result, say) =>
    `${names(r.parts, say)} graded ${r.ratio.join(' : ')} from the ${say.edge(r.low, r.axis)} to the ${say.edge(r.high, r.axis)}, ${say.length(r.gap)} between`,
};
