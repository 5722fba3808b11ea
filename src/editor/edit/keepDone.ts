import type { Edit } from '../../design/edit/edit.ts';
import { inserting, removing, replacing } from '../../design/edit/make.ts';
import { liveFacts, takenBack } from '../../design/job/record.ts';
import { mentionsOf } from '../../design/references.ts';
import type { Joint, Part } from '../../design/schema.ts';
import type { Touched } from '../../job/touched.ts';
import type { JointFound } from '../../joinery/piece.ts';
import { partOf } from '../../layout/reference.ts';
import { type Document, tried } from '../document/document.ts';
import type { Shown } from '../document/shown.ts';
import type { Touching } from '../document/touching.ts';
import { freeId } from './ids.ts';

/** Rounds in which what else is touched, once the first is kept, is kept too. */
const MOST_ROUNDS = 4;

/**
 * A change with what is done kept, and the rest fitted to it: parts that are on stay where they are, cut wood keeps its
 * size, and of the rules that place them those that can still hold do. Null where that cannot be, as for a part that the
 * change deletes.
 */
export function keepingDone(
  doc: Document,
  edits: readonly Edit[],
  touched: readonly Touched[],
  touching: Touching,
): readonly Edit[] | null {
  let kept: readonly Edit[] = edits;
  let left = touched;
  const all = new Map<string, Touched>();
  for (let round = 0; ; round++) {
    const parts = left.filter(({ how }) => how !== 'recut');
    if (parts.length === 0) break;
    if (round === MOST_ROUNDS || parts.some(({ how }) => how === 'gone' || how === 'unused')) return null;
    // What still moves though it is held is moved by a rule that is not its own.
    if (round > 0 && parts.every(({ part, how }) => all.get(part)?.how === how)) return null;
    for (const one of parts) all.set(one.part, one);
    kept = fixed(doc, edits, [...all.values()], touching);
    left = touching.of(doc.shown, tried(doc, kept, new Set(all.keys())));
  }
  return left.length === 0 ? kept : jointsKept(doc, kept, left, new Set(all.keys()), touching);
}

/** Parts of the design that meet, whichever of their laid parts do. */
const partsJoined = ({ parts: [a, b] }: JointFound) => [partOf(a) ?? a, partOf(b) ?? b] as const;
const pairOf = (parts: readonly string[]): string => [...parts].sort().join('\n');

/** The change with joints decided so that the ends of what is made stay as they are; null where no joint does that. */
function jointsKept(
  doc: Document,
  edits: readonly Edit[],
  recut: readonly Touched[],
  held: ReadonlySet<string>,
  touching: Touching,
): readonly Edit[] | null {
  const now = tried(doc, edits, held);
  const made = new Set(recut.map(({ part }) => part));
  const before = new Map(
    touching.joined(doc.shown).joints.map((joint) => [pairOf(partsJoined(joint)), joint]),
  );
  const wanted = new Map<string, Omit<Joint, 'id'>>();
  for (const joint of touching.joined(now).joints) {
    const [a, b] = partsJoined(joint);
    const pair = pairOf([a, b]);
    const was = before.get(pair);
    if (a === b || !(made.has(a) || made.has(b))) continue;
    if (was?.kind === joint.kind && was.through === joint.through) continue;
    const kind = was?.kind ?? 'butt';
    const through = was ? was.through && (partOf(was.through) ?? was.through) : made.has(a) ? a : b;
    wanted.set(pair, { parts: [a, b], kind, ...(through ? { through } : {}) });
  }
  const decided = now.design.joints.filter(({ parts }) => wanted.has(pairOf(parts)));
  let taken: ReadonlySet<string> = new Set();
  const inserts = [...wanted.values()].map((joint): Edit => {
    const id = freeId(now.design, 'joint', taken);
    taken = new Set([...taken, id]);
    return inserting('joints', { id, ...joint });
  });
  const kept: readonly Edit[] = [...edits, ...decided.map(({ id }) => removing('joints', id)), ...inserts];
  const still = touching.of(doc.shown, tried(doc, kept, held));
  return still.length === 0 ? kept : null;
}

/** The change with some parts as they were: what it says of them is left out, and the rules that would move them. */
function fixed(
  doc: Document,
  edits: readonly Edit[],
  touched: readonly Touched[],
  touching: Touching,
): readonly Edit[] {
  const ids = new Set(touched.map(({ part }) => part));
  const after = tried(doc, edits);
  const held = touched.flatMap((one) => asItWas(doc, after, one));
  const own = after.design.rules.filter((rule) =>
    mentionsOf(rule).follow.some((of) => ids.has(partOf(of) ?? '')),
  );
  const without = (some: Iterable<string>): readonly Edit[] => [
    ...edits,
    ...[...some].map((id) => removing('rules', id)),
    ...held,
  ];
  const moves = (gone: Iterable<string>) =>
    touching
      .of(doc.shown, tried(doc, without(gone), ids))
      .some(({ part, how }) => how !== 'recut' && ids.has(part));
  // All of them go, and those come back that move none of the parts: many at once where they can, earlier ones first.
  let gone: ReadonlySet<string> = new Set(own.map(({ id }) => id));
  const bringBack = (some: readonly { readonly id: string }[]): void => {
    const back = new Set(some.map(({ id }) => id));
    const fewer = new Set([...gone].filter((id) => !back.has(id)));
    if (!moves(fewer)) {
      gone = fewer;
      return;
    }
    if (some.length < 2) return;
    const half = Math.ceil(some.length / 2);
    bringBack(some.slice(0, half));
    bringBack(some.slice(half));
  };
  if (own.length > 0) bringBack(own);
  return without(gone);
}

/** A part as it was, where it was: cut wood that is not on yet only keeps its size. */
function asItWas(doc: Document, there: Shown, { part: id, how }: Touched): Edit[] {
  const before = doc.design.parts.find((part) => part.id === id);
  const box = doc.shown.layout.boxes.get(id);
  const after = there.design.parts.find((part) => part.id === id);
  if (!before || !box || !after) return [];
  const isOn = liveFacts(doc.design.job).some(
    (fact) => fact.is === 'done' && fact.box !== null && partOf(fact.part ?? '') === id,
  );
  const now = there.layout.boxes.get(id) ?? box;
  const place = isOn ? box : { ...box, x: now.x + (now.w - box.w) / 2, y: now.y + (now.h - box.h) / 2 };
  const item = (how === 'repainted' ? { ...after, ...finishOf(before) } : { ...before, box: place }) as Part;
  return [replacing('parts', item)];
}

const finishOf = (part: Part) => ('finish' in part ? { finish: part.finish } : {});

/**
 * What is said with a change that does away with what is done: parts that move are no longer on, and what is cut and
 * painted anew is no longer painted. Cut wood is not forgotten: it is on hand.
 */
export function undoneBy(doc: Document, touched: readonly Touched[]): Edit[] {
  const { job } = doc.design;
  if (!job) return [];
  const by = new Map(touched.filter(({ how }) => how !== 'unused').map(({ part, how }) => [part, how]));
  const ids = new Set(
    liveFacts(job).flatMap((fact) => {
      const how = fact.is === 'done' && fact.part !== null ? by.get(partOf(fact.part) ?? '') : undefined;
      if (how === undefined || fact.is !== 'done') return [];
      if (how === 'moved' && fact.box === null) return [];
      return how === 'repainted' && fact.finish === null ? [] : [fact.id];
    }),
  );
  return ids.size === 0 ? [] : [{ kind: 'set', field: 'job', value: takenBack(job, ids) }];
}
