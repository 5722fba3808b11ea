import { lastOf, pick } from '../../../list/at.ts';
import type { PlanWords, RuleSay } from '../words.ts';
import { list } from './steps.ts';

/** `del canto izquierdo`, `de la línea de centro`: an edge comes with its article. */
const of = (edge: string): string => (edge.startsWith('el ') ? `del ${edge.slice(3)}` : `de ${edge}`);

const to = (edge: string): string => (edge.startsWith('el ') ? `al ${edge.slice(3)}` : `a ${edge}`);

const direction = { x: ['a la derecha', 'a la izquierda'], y: ['por encima', 'por debajo'] } as const;

const names = (ids: readonly string[], say: RuleSay) =>
  ids.length > 4
    ? `${ids.length} piezas de ${say.name(pick(ids, 0))} a ${say.name(lastOf(ids))}`
    : list(ids.map(say.name));

const inset = (mm: number, say: RuleSay) => (mm === 0 ? '' : `, retirado ${say.length(mm)}`);

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Rules as plain sentences; `result` is the gap or length that came out. */
export const rules: PlanWords['rules'] = {
  set: (r, _result, say) => {
    const edge = capital(say.edge(r.edge, r.axis));
    const from = say.edge(r.from, r.axis);
    if (r.distance === 0) return `${edge} coincide con ${from}`;
    const way = direction[r.axis][r.distance > 0 ? 0 : 1];
    return `${edge} está ${say.length(Math.abs(r.distance))} ${way} ${of(from)}`;
  },
  gap: (r, result, say) =>
    `${capital(say.edge(r.edge, r.axis))} está tan lejos ${of(say.edge(r.from, r.axis))} como ${say.edge(r.likeEdge, r.axis)} ${of(say.edge(r.likeFrom, r.axis))}${result === null ? '' : `, ${say.length(Math.abs(result))}`}`,
  center: (r, _result, say) =>
    `${names(r.parts, say)}: centrado entre ${say.edge(r.low, r.axis)} y ${say.edge(r.high, r.axis)}`,
  between: (r, result, say) => {
    const span = result === null ? '' : ` (${say.length(result)})`;
    const low = of(say.edge(r.low, r.axis)) + inset(r.insetLow, say);
    const high = to(say.edge(r.high, r.axis)) + inset(r.insetHigh, say);
    return `${say.name(r.part)} va ${low} ${high}${span}`;
  },
  even: (r, result, say) => {
    const ends = `entre ${say.edge(r.low, r.axis)} y ${say.edge(r.high, r.axis)}`;
    const gap = result === null ? '' : ` de ${say.length(result)}`;
    const how = {
      gaps: `huecos iguales${gap}`,
      flush: `huecos iguales${gap}, extremos a ras`,
      half: `huecos iguales${gap}, medio hueco en los extremos`,
      centers: `${say.length(r.pitch ?? result ?? 0)} entre ejes`,
      most: `huecos iguales${gap}, ninguno de más de ${say.length(r.most ?? 0)}`,
    }[r.mode];
    return `${r.parts.length} piezas (${names(r.parts, say)}), ${how}, ${ends}`;
  },
  mirror: (r, _result, say) =>
    `${say.name(r.twin)} es la imagen de ${say.name(r.part)} en el espejo ${of(say.edge(r.about, r.axis))}`,
  same: (r, result, say) =>
    `${names(r.parts, say)}: ${r.axis === 'x' ? 'el mismo ancho' : 'la misma altura'}${result === null ? '' : `, ${say.length(result)}`}`,
  reveal: (r, _result, say) =>
    `${say.name(r.part)} guarda el mismo margen alrededor, ${say.length(r.margin)}, dentro ${say
      .edge({ of: r.inside, side: 'mid', inner: r.inner }, 'x')
      .replace(/^.*? (del? )/, '$1')}`,
  graded: (r, _result, say) =>
    `${names(r.parts, say)}: escalonado ${r.ratio.join(' : ')} ${of(say.edge(r.low, r.axis))} ${to(say.edge(r.high, r.axis))}, ${say.length(r.gap)} entre medias`,
};
