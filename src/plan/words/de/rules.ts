import { lastOf, pick } from '../../../list/at.ts';
import type { PlanWords, RuleSay } from '../words.ts';
import { list } from './steps.ts';

/** `der linken Kante von Schild`; every edge is a feminine noun behind one adjective. */
const dative = (edge: string): string => `der ${edge.replace(/^(\S+e) /, '$1n ')}`;

const to = (edge: string): string => edge.replace(/^der /, 'zur ');

const direction = { x: ['rechts', 'links'], y: ['über', 'unter'] } as const;

const names = (ids: readonly string[], say: RuleSay) =>
  ids.length > 4
    ? `${ids.length} Teile von ${say.name(pick(ids, 0))} bis ${say.name(lastOf(ids))}`
    : list(ids.map(say.name));

const inset = (mm: number, say: RuleSay) => (mm === 0 ? '' : `, um ${say.length(mm)} zurückgesetzt`);

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Rules as plain sentences; `result` is the gap or length that came out. */
export const rules: PlanWords['rules'] = {
  set: (r, _result, say) => {
    const edge = capital(say.edge(r.edge, r.axis));
    const from = dative(say.edge(r.from, r.axis));
    if (r.distance === 0) return `${edge} liegt auf ${from}`;
    const way = direction[r.axis][r.distance > 0 ? 0 : 1];
    return `${edge} liegt ${say.length(Math.abs(r.distance))} ${way}${r.axis === 'x' ? ' von' : ''} ${from}`;
  },
  gap: (r, result, say) =>
    `${capital(say.edge(r.edge, r.axis))} liegt so weit von ${dative(say.edge(r.from, r.axis))} wie ${say.edge(r.likeEdge, r.axis)} von ${dative(say.edge(r.likeFrom, r.axis))}${result === null ? '' : `, ${say.length(Math.abs(result))}`}`,
  center: (r, _result, say) =>
    `${names(r.parts, say)} mittig zwischen ${dative(say.edge(r.low, r.axis))} und ${dative(say.edge(r.high, r.axis))}`,
  between: (r, result, say) => {
    const span = result === null ? '' : ` (${say.length(result)})`;
    const low = dative(say.edge(r.low, r.axis)) + inset(r.insetLow, say);
    const high = dative(say.edge(r.high, r.axis)) + inset(r.insetHigh, say);
    return `${say.name(r.part)} reicht von ${low} bis ${to(high)}${span}`;
  },
  even: (r, result, say) => {
    const ends = `zwischen ${dative(say.edge(r.low, r.axis))} und ${dative(say.edge(r.high, r.axis))}`;
    const gap = result === null ? '' : ` von ${say.length(result)}`;
    const how = {
      gaps: `gleiche Abstände${gap}`,
      flush: `gleiche Abstände${gap}, Enden bündig`,
      half: `gleiche Abstände${gap}, halber Abstand an den Enden`,
      centers: `Mitten im Abstand von ${say.length(r.pitch ?? result ?? 0)}`,
      most: `gleiche Abstände${gap}, keiner über ${say.length(r.most ?? 0)}`,
    }[r.mode];
    return `${r.parts.length} Teile (${names(r.parts, say)}), ${how}, ${ends}`;
  },
  mirror: (r, _result, say) =>
    `${say.name(r.twin)} ist ${say.name(r.part)} gespiegelt an ${dative(say.edge(r.about, r.axis))}`,
  same: (r, result, say) =>
    `${names(r.parts, say)}: gleiche ${r.axis === 'x' ? 'Breite' : 'Höhe'}${result === null ? '' : `, ${say.length(result)}`}`,
  reveal: (r, _result, say) =>
    `${say.name(r.part)} liegt ringsum ${say.length(r.margin)} innerhalb ${say
      .edge({ of: r.inside, side: 'low', inner: r.inner }, 'x')
      .replace(/^\S+ \S+ /, '')}`,
  graded: (r, _result, say) =>
    `${names(r.parts, say)} gestuft ${r.ratio.join(' : ')} von ${dative(say.edge(r.low, r.axis))} bis ${to(dative(say.edge(r.high, r.axis)))}, ${say.length(r.gap)} dazwischen`,
};
