import type { Face } from '../../src/bed/face.ts';
import type { Axis, Edge, Rule } from '../../src/design/schema.ts';
import type { Box } from '../../src/geometry/shape.ts';

/**
 * Signed distances from where a rule wants things, worked out from boxes alone: zero where it holds. `inners`
 * are the boxes inside of closed runs.
 */
export function deviations(
  rule: Rule,
  face: Face,
  boxes: ReadonlyMap<string, Box>,
  inners: ReadonlyMap<string, Box> = new Map(),
): number[] {
  const boxOf = (of: string, inner = false): Box => {
    if (of === 'face') return face.box;
    if (of.startsWith('level:')) {
      const level = face.levels.find((l) => `level:${l.id}` === of);
      return (inner ? level?.inner : null) ?? level?.box ?? face.box;
    }
    const box = (inner ? inners.get(of) : undefined) ?? boxes.get(of);
    if (!box) throw new Error(`no ${of}`);
    return box;
  };
  const span = (axis: Axis, of: string, inner = false) => {
    const b = boxOf(of, inner);
    return axis === 'x' ? { low: b.x, size: b.w, high: b.x + b.w } : { low: b.y, size: b.h, high: b.y + b.h };
  };
  const edge = (axis: Axis, e: Edge): number => {
    const s = span(axis, e.of, e.inner);
    return e.side === 'low' ? s.low : e.side === 'high' ? s.high : s.low + s.size / 2;
  };
  const margins = (axis: Axis, part: string, inside: string, inner: boolean, margin: number) => [
    span(axis, part).low - span(axis, inside, inner).low - margin,
    span(axis, inside, inner).high - span(axis, part).high - margin,
  ];
  switch (rule.kind) {
    case 'set':
      return [edge(rule.axis, rule.edge) - edge(rule.axis, rule.from) - rule.distance];
    case 'gap':
      return [
        edge(rule.axis, rule.edge) -
          edge(rule.axis, rule.from) -
          (edge(rule.axis, rule.likeEdge) - edge(rule.axis, rule.likeFrom)),
      ];
    case 'between': {
      const s = span(rule.axis, rule.part);
      return [
        s.low - edge(rule.axis, rule.low) - rule.insetLow,
        edge(rule.axis, rule.high) - s.high - rule.insetHigh,
      ];
    }
    case 'center': {
      const all = rule.parts.map((p) => span(rule.axis, p));
      const lowest = Math.min(...all.map((s) => s.low));
      const highest = Math.max(...all.map((s) => s.high));
      return [lowest + highest - edge(rule.axis, rule.low) - edge(rule.axis, rule.high)];
    }
    case 'same':
      return rule.parts.map((p) => span(rule.axis, p).size - span(rule.axis, rule.parts[0] ?? p).size);
    case 'mirror': {
      const other = rule.axis === 'x' ? 'y' : 'x';
      const c = edge(rule.axis, rule.about);
      const a = span(rule.axis, rule.part);
      const b = span(rule.axis, rule.twin);
      const along = span(other, rule.part);
      const twin = span(other, rule.twin);
      return [a.low + b.high - 2 * c, a.high + b.low - 2 * c, along.low - twin.low, along.high - twin.high];
    }
    case 'reveal':
      return [
        ...margins('x', rule.part, rule.inside, rule.inner, rule.margin),
        ...margins('y', rule.part, rule.inside, rule.inner, rule.margin),
      ];
    case 'even': {
      const low = edge(rule.axis, rule.low);
      const high = edge(rule.axis, rule.high);
      const all = rule.parts.map((p) => span(rule.axis, p));
      const gaps = all.slice(1).map((s, i) => s.low - (all[i]?.high ?? 0));
      const first = (all[0]?.low ?? 0) - low;
      const last = high - (all.at(-1)?.high ?? 0);
      const n = all.length;
      const room = high - low - all.reduce((sum, s) => sum + s.size, 0);
      switch (rule.mode) {
        case 'gaps':
        case 'most':
          return [first, ...gaps, last].map((g) => g - room / (n + 1));
        case 'flush':
          return n === 1 ? [first - last] : [first, last, ...gaps.map((g) => g - room / (n - 1))];
        case 'half':
          return [2 * first - room / n, 2 * last - room / n, ...gaps.map((g) => g - room / n)];
        case 'centers': {
          const centers = all.map((s) => s.low + s.size / 2);
          if (rule.pitch === undefined)
            return centers.map((c, i) => c - low - ((high - low) * (2 * i + 1)) / (2 * n));
          const pitch = rule.pitch;
          return [first - last, ...centers.slice(1).map((c, i) => c - (centers[i] ?? 0) - pitch)];
        }
      }
      break;
    }
    case 'graded': {
      const all = rule.parts.map((p) => span(rule.axis, p));
      const unit = (all[0]?.size ?? 0) / (rule.ratio[0] ?? 1);
      return [
        (all[0]?.low ?? 0) - edge(rule.axis, rule.low),
        edge(rule.axis, rule.high) - (all.at(-1)?.high ?? 0),
        ...all.slice(1).map((s, i) => s.low - (all[i]?.high ?? 0) - rule.gap),
        ...all.map((s, i) => s.size - unit * (rule.ratio[i] ?? 1)),
      ];
    }
  }
}
