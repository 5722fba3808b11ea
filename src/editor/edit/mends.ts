import type { Check } from '../../check/check.ts';
import { applyEdits, type Edit } from '../../design/edit/edit.ts';
import { inserting, removing, replacing } from '../../design/edit/make.ts';
import { aroundOf, endsOf, withEnds, withStopsAt } from '../../design/ends.ts';
import { isBars, isBoards, isMany } from '../../design/made.ts';
import { isClosed, onlyOf } from '../../design/path.ts';
import type { Axis, Design, Part, Run } from '../../design/schema.ts';
import { boxGap } from '../../geometry/box.ts';
import { asOne } from '../../geometry/clip.ts';
import type { Box } from '../../geometry/shape.ts';
import { ENDS, type End } from '../../joinery/bar.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { legsOf } from '../../layout/laid.ts';
import { carrierOf } from '../../layout/place/carrier.ts';
import { drawnPath, stretchesBeside } from '../../layout/place/stretches.ts';
import { designPart } from '../../layout/reference.ts';
import { AXES, spanOf } from '../../layout/span.ts';
import { isFixedAlong } from '../../layout/structure.ts';
import { pick } from '../../list/at.ts';
import { grouped } from '../../list/grouped.ts';
import type { Mm } from '../../measure/units.ts';
import { type Shown, shownFrom } from '../document/shown.ts';
import { freeId, numberedName } from './ids.ts';
import { carrying, editsToLay, editsToLayOn, restingOn } from './lay.ts';
import type { Mend } from './mend.ts';
import { PLAN_MENDS } from './planMends.ts';
import { endsMeant } from './stopHere.ts';
import { editsToType } from './typed.ts';

/** No more are offered of one check: more would have to be read instead of seen. */
const MOST = 4;
/** What is left of a part that stops at another, at least. */
const LEAST: Mm = 10;
/** So many parts are mended at once; each takes a layout. */
const MOST_AT_ONCE = 24;

const keyOf = ({ code, parts }: Check): string => `${code}|${parts.join()}`;

/**
 * Ways to mend checks that say the same of one thing, all at once. Only such as do it: the layout is made with each, and
 * none of the checks may be left of it, nor another come.
 */
export function mendsFor(shown: Shown, checks: readonly Check[]): Mend[] {
  const [first] = checks;
  if (!first) return [];
  const { design } = shown;
  const before = new Set(shown.layout.checks.map(keyOf));
  /** The checks that a mend leaves; null where it changes nothing or brings others. */
  const leftBy = ({ edits, parts }: Mend): ReadonlySet<string> | null => {
    const done = applyEdits(design, edits);
    if (!done.ok || done.design === design) return null;
    const left = new Set(shownFrom(done.design, new Set(parts), shown).layout.checks.map(keyOf));
    return [...left].every((key) => before.has(key)) ? left : null;
  };
  const ways = PLAN_MENDS[first.code];
  if (ways)
    return ways(shown, checks)
      .filter((mend) => leftBy(mend) !== null)
      .slice(0, MOST);
  const mended = (mend: Mend) => {
    const left = leftBy(mend);
    return left !== null && checks.every((check) => !left.has(keyOf(check)));
  };
  const common = first.parts
    .map(designPart)
    .find((id) => checks.every((c) => c.parts.map(designPart).includes(id)));
  const alone = candidates(shown, first);
  if (checks.length === 1 || common === undefined) return firstOfEach(alone.filter(mended));
  const others = ['lay', 'move', 'stop'] as const;
  return firstOfEach(
    [
      ...others.flatMap((how) => together(shown, checks, common, how) ?? []),
      ...alone.filter(({ parts }) => parts[0] === common),
    ].filter(mended),
  );
}

/** Of those that are told alike the first; one of each kind before a second of any, and no more than are offered. */
function firstOfEach(mends: readonly Mend[]): Mend[] {
  const apart = [...grouped(mends, ({ how, parts, to }) => [how, to, ...parts].join()).values()].map(
    ([first]) => first,
  );
  const nth = (mend: Mend) => apart.filter(({ how }) => how === mend.how).indexOf(mend);
  return apart.toSorted((a, b) => nth(a) - nth(b)).slice(0, MOST);
}

/** What a way of mending does to all the other parts, one after the other; null where one of them cannot. */
function together(shown: Shown, checks: readonly Check[], common: string, how: Mend['how']): Mend | null {
  const edits: Edit[] = [];
  const parts: string[] = [];
  let now = shown;
  for (const check of checks) {
    const other = check.parts.map(designPart).find((id) => id !== common);
    if (other === undefined || parts.includes(other)) continue;
    const one = candidates(now, check).find((c) => c.how === how && c.parts[0] === other);
    if (!one || parts.length === MOST_AT_ONCE) return null;
    const done = applyEdits(now.design, one.edits);
    if (!done.ok) return null;
    parts.push(other);
    edits.push(...one.edits);
    now = shownFrom(done.design, undefined, now);
  }
  return parts.length > 0 ? { how, parts, to: common, edits } : null;
}

function candidates(shown: Shown, check: Check): Mend[] {
  const { design, layout } = shown;
  const [a = '', b = ''] = check.parts;
  const free = (id: string) => design.parts.find((part) => part.id === designPart(id) && !part.locked);
  const boxOf = (id: string) => layout.parts.find((laid) => laid.id === id)?.box ?? layout.boxes.get(id);
  switch (check.code) {
    case 'part.overlap': {
      const pairs = [
        [a, b],
        [b, a],
      ] as const;
      const each = pairs.map(([one, other]) => {
        const part = free(one);
        const [box, from] = [boxOf(one), boxOf(other)];
        return part && box && from && designPart(other) !== part.id
          ? { part, box, from, to: designPart(other) }
          : null;
      });
      const some = each.flatMap((one) => one ?? []).sort(likelier(shown));
      return [
        ...some.flatMap((one) => endsTo(shown, one)),
        ...some.flatMap((one) => onto(design, one.part, one.to)),
        ...some.flatMap((one) => outOf(shown, one)),
        ...some.flatMap((one) => cutInTwo(shown, one)),
        ...some.flatMap((one) => stopAt(shown, one)),
      ];
    }
    case 'part.keep-clear': {
      const keep = design.keepClears.find(({ id }) => id === check.figures.keep_clear);
      const [part, box] = [free(a), boxOf(a)];
      return part && box && keep ? outOf(shown, { part, box, from: keep.box, to: keep.id }) : [];
    }
    case 'part.off-face': {
      const [part, box] = [free(a), boxOf(a)];
      return part && box ? ontoFace(shown, part, box) : [];
    }
    case 'end.not-met': {
      const part = free(a);
      return part ? otherEnds(shown, part, String(check.figures.at)) : [];
    }
    case 'rule.unknown-part':
      return [{ how: 'rule', parts: [], to: '', edits: [removing('rules', String(check.figures.rule))] }];
    case 'part.unknown-support':
    case 'part.support-cycle':
    case 'part.unsupported': {
      const part = free(a);
      return part ? ontoWhatIsThere(shown, part) : [];
    }
    default:
      return [];
  }
}

interface Pair {
  readonly part: Part;
  readonly box: Box;
  /** What is in the way, and the part or keep-clear that it is. */
  readonly from: Box;
  readonly to: string;
}

/**
 * Of two that overlap the one that likelier gives way comes first: pieces of a fill, then the narrower of both, and of two
 * as wide the level one, since uprights run through. Common practice, no source.
 */
const likelier = ({ layout }: Shown) => {
  const breadth = ({ part, box }: Pair): Mm => {
    const laid = layout.parts.find((one) => one.part === part.id);
    const [leg] = laid && isBars(laid) ? legsOf(laid) : [];
    return leg ? leg.width : Math.min(box.w, box.h);
  };
  const ranks = (pair: Pair) => [
    isBoards(pair.part) ? 0 : 1,
    Math.round(breadth(pair)),
    pair.box.w > pair.box.h ? 0 : 1,
  ];
  return (a: Pair, b: Pair): number => {
    const other = ranks(b);
    return ranks(a).reduce((order, rank, i) => order || rank - pick(other, i), 0);
  };
};

interface Way {
  readonly axis: Axis;
  /** The side of the part that then touches. */
  readonly side: 'low' | 'high';
  readonly by: Mm;
}

/** The ways out of a box, the shortest first. */
function waysOut(box: Box, from: Box): Way[] {
  return AXES.flatMap((axis): Way[] => {
    const [own, other] = [spanOf(box, axis), spanOf(from, axis)];
    return [
      { axis, side: 'high', by: other.low - own.high },
      { axis, side: 'low', by: other.high - own.low },
    ];
  }).sort((p, q) => Math.abs(p.by) - Math.abs(q.by));
}

const moved = (shown: Shown, part: Part, { axis, by }: Pick<Way, 'axis' | 'by'>) => {
  const box = boxIn(shown.layout.boxes, part);
  return editsToType(shown, part.id, box, axis === 'x' ? { x: box.x + by } : { y: box.y + by }).edits;
};

/** Moved the shortest way until it touches. */
function outOf(shown: Shown, { part, box, from, to }: Pair): Mend[] {
  const [way] = waysOut(box, from);
  if (!way) return [];
  const { axis, by } = way;
  return [{ how: 'move', parts: [part.id], to, axis, by, edits: moved(shown, part, way) }];
}

/** Laid on the other. */
function onto(design: Design, part: Part, to: string): Mend[] {
  const edits = editsToLayOn(design, part, to);
  return edits.length > 0 ? [{ how: 'lay', parts: [part.id], to, edits }] : [];
}

/** Its ends cut to the border of the other, where a square end cannot follow that; what was drawn beyond is left out. */
function endsTo(shown: Shown, { part, box, to }: Pair): Mend[] {
  const own = endsOf(part);
  const meant = own && endsMeant(shown, part.id, Math.max(box.w, box.h));
  if (!meant) return [];
  const stops = ENDS.filter((which) => {
    const { cut } = own[which];
    const one = meant[which];
    return cut !== 'stop' && one.cut === 'stop' && designPart(one.at) === to;
  });
  const ways = stops.length > 1 ? [stops, ...stops.map((which) => [which])] : [stops];
  return ways.flatMap((which): Mend[] => {
    if (which.length === 0) return [];
    const cut = (one: End) => (which.includes(one) ? meant : own)[one];
    const item = withEnds(part, { start: cut('start'), end: cut('end') });
    return [{ how: 'stop', parts: [part.id], to, edits: [replacing('parts', item)] }];
  });
}

/** Cut in two where the other lies in its way: what was drawn beyond is kept as a part of its own, held in its place. */
function cutInTwo(shown: Shown, pair: Pair): Mend[] {
  const { part, to } = pair;
  const own = endsOf(part);
  if (!own) return [];
  if ('path' in part) return runsOf(shown, part, pair);
  const stop = { cut: 'stop', at: to } as const;
  const beyond = withEnds(part, { ...own, start: stop });
  const edits = editsToPart(shown.design, withEnds(part, { ...own, end: stop }), [beyond]);
  return [{ how: 'cut', parts: [part.id], to, edits }];
}

/** The same of a run, whatever it goes around: all that is left of it is kept, or only the longest of that. */
function runsOf({ design, layout }: Shown, part: Run, { to }: Pair): Mend[] {
  const [leg] = layout.parts.flatMap((laid) => (laid.id === part.id ? legsOf(laid) : []));
  const box = boxIn(layout.boxes, part);
  const path = drawnPath(part.path, box);
  if (!leg || !path) return [];
  const border = asOne(layout.parts.filter((laid) => laid.part === to).map(({ region }) => region));
  const stop = { cut: 'stop', at: to } as const;
  const left = stretchesBeside({ ...part, path }, box, leg.width, border)
    .map(({ only, starts, ends }): Run => {
      const { start, end } = part.ends;
      return {
        ...part,
        path: { ...path, only },
        ends: { start: starts ? stop : start, end: ends ? stop : end },
      };
    })
    .toSorted((a, b) => sidesLeft(b) - sidesLeft(a));
  const how = isClosed(part.path) && left.length === 1 ? 'open' : 'stop';
  const alone = left.map(
    (item): Mend => ({ how, parts: [part.id], to, edits: editsToPart(design, item, []) }),
  );
  const [first, ...beyond] = left;
  if (!first || beyond.length === 0) return alone;
  return [{ how: 'cut', parts: [part.id], to, edits: editsToPart(design, first, beyond) }, ...alone];
}

const sidesLeft = ({ path }: Run): number => onlyOf(path)?.count ?? 0;

/** A part as it is after a cut, and what else is left of it: parts of their own, held in line with it. */
function editsToPart(design: Design, part: Part, beyond: readonly Part[]): Edit[] {
  const taken = new Set(design.parts.map(({ name }) => name.toLowerCase()));
  const ids = new Set<string>();
  const rules = new Set<string>();
  const fresh = (kind: string, among: Set<string>): string => {
    const id = freeId(design, kind, among);
    among.add(id);
    return id;
  };
  const sides = (['x', 'y'] as const).flatMap((axis) =>
    (isFixedAlong(part, axis) ? (['low'] as const) : (['low', 'high'] as const)).map((side) => ({
      axis,
      side,
    })),
  );
  const kept = beyond.flatMap((one): Edit[] => {
    const [id, name] = [fresh(part.kind, ids), numberedName(taken, part.name, 2)];
    taken.add(name.toLowerCase());
    const held = sides.map(({ axis, side }): Edit => {
      const between = { edge: { of: id, side }, from: { of: part.id, side } };
      const item = { id: fresh('rule', rules), kind: 'set', axis, distance: 0, ...between } as const;
      return inserting('rules', item);
    });
    return [inserting('parts', { ...one, id, name }), ...held];
  });
  return [replacing('parts', part), ...kept];
}

/** Made shorter until it touches, and held there. */
function stopAt(shown: Shown, { part, box, from, to }: Pair): Mend[] {
  const { design, layout } = shown;
  const own = layout.boxes.get(part.id);
  if (isBoards(part)) {
    const item = aroundOf(part, [...(part.around ?? []), to]);
    return [{ how: 'stop', parts: [part.id], to, edits: [replacing('parts', item)] }];
  }
  if (!own || isMany(part)) return [];
  return waysOut(box, from)
    .slice(0, 2)
    .flatMap(({ axis, side, by }): Mend[] => {
      const size = (axis === 'x' ? own.w : own.h) - Math.abs(by);
      if (size < LEAST) return [];
      const start = axis === 'x' ? own.x : own.y;
      const low = side === 'low' ? start + by : start;
      const sides = axis === 'x' ? { x: low, w: size } : { y: low, h: size };
      const { edits } = editsToType(shown, part.id, own, sides);
      const done = applyEdits(design, edits);
      if (!done.ok) return [];
      const edge = { of: part.id, side };
      const from = { of: to, side: side === 'low' ? 'high' : 'low' } as const;
      const id = freeId(done.design, 'rule');
      const rule = inserting('rules', { id, kind: 'set', axis, edge, from, distance: 0 });
      return [{ how: 'stop', parts: [part.id], to, edits: [...edits, rule] }];
    })
    .slice(0, 1);
}

/** Moved in from past the edge of the face. */
function ontoFace(shown: Shown, part: Part, box: Box): Mend[] {
  const face = shown.face.box;
  const over = (axis: Axis): Mm => {
    const [own, whole] = [spanOf(box, axis), spanOf(face, axis)];
    if (own.low < whole.low) return whole.low - own.low;
    return own.high > whole.high ? whole.high - own.high : 0;
  };
  const [x, y] = [over('x'), over('y')];
  const axis = Math.abs(x) >= Math.abs(y) ? 'x' : 'y';
  const by = axis === 'x' ? x : y;
  return [{ how: 'move', parts: [part.id], to: 'face', axis, by, edits: moved(shown, part, { axis, by }) }];
}

/** So many of the nearest parts are tried for ends that do not meet what they are to stop at; each takes a layout. */
const MOST_TRIED = 4;

/** Ends that do not meet what they are to stop at: cut square, or to what lies near and ahead of them. */
function otherEnds({ layout, design }: Shown, part: Part, at: string): Mend[] {
  const box = layout.boxes.get(part.id) ?? part.box;
  const near = layout.parts
    .filter((other) => other.id === other.part && other.id !== part.id && other.id !== at)
    .map(({ id, box: other }) => ({ id, off: boxGap(box, other) }))
    .sort((p, q) => p.off - q.off)
    .slice(0, MOST_TRIED);
  const cutTo = (to: string | null): Edit[] => {
    const item = withStopsAt(part, (of) => (of === at ? to : of));
    return design.parts.includes(item) ? [] : [replacing('parts', item)];
  };
  return [
    { how: 'square', parts: [part.id], to: '', edits: cutTo(null) },
    ...near.map(({ id }): Mend => ({ how: 'stop', parts: [part.id], to: id, edits: cutTo(id) })),
  ];
}

/** Laid on what is under it, whatever was chosen. */
function ontoWhatIsThere(shown: Shown, part: Part): Mend[] {
  const { design, layout } = shown;
  const item: Part = { ...part, onChosen: undefined };
  const start: Edit = replacing('parts', item);
  const done = applyEdits(design, [start]);
  if (!done.ok) return [];
  const ids = new Set([part.id]);
  const without = restingOn(design, ids);
  const ground = carrierOf(carrying(shown), part, boxIn(layout.boxes, part), (id) => without.has(id));
  const to = 'part' in ground ? ground.part : 'face';
  const lay = editsToLay(shownFrom(done.design, ids, shown), ids);
  return [{ how: 'lay', parts: [part.id], to, edits: [start, ...lay] }];
}
