import { z } from 'zod';
import { copiedGroup } from '../../design/assembly/copied.ts';
import { copiedJoints } from '../../design/copied.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { inserting } from '../../design/edit/make.ts';
import { withStopsAt } from '../../design/ends.ts';
import { MOST_PHOTOS } from '../../design/limits.ts';
import { unread } from '../../design/reading.ts';
import { partOfReference, partsOfRule } from '../../design/references.ts';
import { type Resources, resourcesOf, withResources } from '../../design/resources.ts';
import { inSlot, slotsOf, withFields } from '../../design/rule/table.ts';
import {
  type Design,
  designSchema,
  groupSchema,
  type Joint,
  type KeepClear,
  keepClearSchema,
  type Part,
  partSchema,
  photoSchema,
  pictureSchema,
  type Rule,
  ruleSchema,
} from '../../design/schema.ts';
import { boxesMeet } from '../../geometry/region.ts';
import type { Box } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { type Shown, shownFrom } from '../document/shown.ts';
import { named } from './arrange.ts';
import { freeId } from './ids.ts';
import { itemsOf } from './movable.ts';

/** Parts on the clipboard, with the rules and groups that are wholly among them, and what they are made of. */
const clipSchema = z.strictObject({
  showfaceParts: z.literal(1),
  parts: z.array(partSchema).max(2000),
  keepClears: z.array(keepClearSchema).max(200),
  rules: z.array(ruleSchema).max(5000),
  groups: z.array(groupSchema).max(500),
  joints: designSchema.shape.joints.default([]),
  finishes: designSchema.shape.finishes.default([]),
  stocks: designSchema.shape.stocks.default([]),
  fonts: designSchema.shape.fonts.default([]),
  pictures: pictureSchema.array().max(60).default([]),
  photos: photoSchema.array().max(MOST_PHOTOS).default([]),
  /** The design that it was copied in. */
  from: z.string().max(80).nullable().default(null),
});

export interface Clip extends Resources {
  readonly parts: readonly Part[];
  readonly keepClears: readonly KeepClear[];
  readonly rules: readonly Rule[];
  readonly groups: Design['groups'];
  /** Chosen joints that any of the parts has. */
  readonly joints: readonly Joint[];
  readonly from: string | null;
}

export function copyOf(
  design: Design,
  boxes: ReadonlyMap<string, Box>,
  selection: readonly string[],
  from: string | null = null,
): Clip {
  const ids = new Set(itemsOf(design, selection));
  const within = (named: readonly string[]) => named.length > 0 && named.every((id) => ids.has(id));
  const parts = design.parts.filter((p) => ids.has(p.id));
  return {
    parts: parts.map((p) => ({ ...unread(p), box: boxIn(boxes, p) })),
    ...resourcesOf(design, parts),
    joints: design.joints.filter((j) => j.parts.some((p) => partOfReference(p).some((id) => ids.has(id)))),
    from,
    keepClears: design.keepClears.filter((k) => ids.has(k.id)),
    rules: design.rules.filter((r) => within(partsOfRule(r))),
    groups: design.groups.filter((g) => within(g.parts)),
  };
}

export const clipText = (clip: Clip): string => JSON.stringify({ showfaceParts: 1, ...clip });

/** Reads what another design or another window copied; null for anything else. */
export function readClip(text: string): Clip | null {
  if (!text.includes('showfaceParts') || text.length > 8_000_000) return null;
  try {
    const read = clipSchema.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

interface Home {
  /** The design laid out, where that is known. */
  readonly shown?: Shown;
  /** The design's own id, to know it again. */
  readonly id?: string | null;
}

/** The edits that put a clip into a design, moved by an offset, each part named by where it comes to lie. */
export function editsToPaste(
  design: Design,
  clip: Clip,
  dx: number,
  dy: number,
  home: Home = {},
): { edits: Edit[]; ids: string[] } {
  const { edits, ids, idOf } = copiesOf(design, clip, dx, dy, home);
  const made = clip.parts.map((part) => ({ id: idOf(part.id) }));
  return { edits: named(home.shown ?? shownFrom(design), edits, made), ids };
}

/**
 * The edits that put a clip into a design, moved by an offset, under ids of its own. Chosen joints go along
 * between its parts, and, in the design that it was copied in, with parts that stay and that it still meets.
 * Into another design go the finishes, stocks, fonts, pictures and photos that its parts name.
 */
export function copiesOf(
  design: Design,
  clip: Clip,
  dx: number,
  dy: number,
  { shown, id: home }: Home = {},
): { edits: Edit[]; ids: string[]; idOf: (id: string) => string } {
  const fresh = new Map<string, string>();
  // Rules have ids of their own, which may be those of parts too.
  const freshRules = new Map<string, string>();
  const taken = new Set<string>();
  const take = (id: string, of = fresh) => {
    const next = freeId(design, id.replace(/-\d+$/, ''), taken);
    taken.add(next);
    of.set(id, next);
    return next;
  };
  const moved = (box: Box) => ({ ...box, x: box.x + dx, y: box.y + dy });
  for (const item of [...clip.parts, ...clip.keepClears, ...clip.groups]) take(item.id);
  const idOf = (id: string) => fresh.get(id) ?? id;
  const reference = (of: string) => {
    const id = partOfReference(of)[0];
    return id === undefined ? of : of.replace(id, idOf(id));
  };

  /** What an end stops at in the design; nothing where that did not come along and is not there. */
  const stopOf = (at: string): string | null => {
    const [id] = partOfReference(at);
    return id === undefined || fresh.has(id) || design.parts.some((p) => p.id === id) ? reference(at) : null;
  };

  const isHome = clip.from !== null && clip.from === home;
  const brought = isHome
    ? { edits: [], rename: (_: keyof Resources, id: string) => id }
    : bring(design, clip, taken);
  const edits: Edit[] = [...brought.edits];
  for (const part of clip.parts) {
    const on = fresh.has(part.on)
      ? idOf(part.on)
      : design.parts.some((p) => p.id === part.on)
        ? part.on
        : 'face';
    edits.push(
      inserting('parts', {
        ...withStopsAt(withResources(part, brought.rename), stopOf),
        id: idOf(part.id),
        on,
        box: moved(part.box),
        locked: false,
      }),
    );
  }
  for (const keep of clip.keepClears) {
    edits.push(inserting('keepClears', { ...keep, id: idOf(keep.id), box: moved(keep.box) }));
  }
  for (const rule of clip.rules)
    edits.push(inserting('rules', renamed(rule, take(rule.id, freshRules), idOf, reference)));
  const joints = copiedJoints(clip.joints, {
    copyOf: (part) => fresh.get(part),
    meets: (copy, stays) => {
      const own = clip.parts.find((p) => fresh.get(p.id) === copy);
      const other = isHome ? design.parts.find((p) => p.id === stays) : undefined;
      return (
        own !== undefined &&
        other !== undefined &&
        boxesMeet(moved(own.box), shown?.layout.boxes.get(stays) ?? other.box)
      );
    },
    nextId: () => {
      const next = freeId(design, 'joint', taken);
      taken.add(next);
      return next;
    },
  });
  edits.push(...joints.map((item) => inserting('joints', item)));
  for (const group of clip.groups) {
    edits.push(
      inserting(
        'groups',
        copiedGroup(
          group,
          idOf,
          (id) => freshRules.get(id) ?? id,
          (list, id) => brought.rename(list, id),
        ),
      ),
    );
  }
  const grouped = new Set(clip.groups.flatMap((g) => g.parts));
  const ids = [
    ...clip.groups.map((g) => idOf(g.id)),
    ...[...clip.parts, ...clip.keepClears].filter((p) => !grouped.has(p.id)).map((p) => idOf(p.id)),
  ];
  return { edits, ids, idOf };
}

/**
 * What a clip's parts are made of, brought into another design: what the design has alike is used as it is,
 * what has the same id and is another thing gets an id of its own.
 */
function bring(design: Design, clip: Resources, taken: Set<string>) {
  const edits: Edit[] = [];
  const ids: Record<keyof Resources, Map<string, string>> = {
    finishes: new Map(),
    stocks: new Map(),
    fonts: new Map(),
    pictures: new Map(),
    photos: new Map(),
  };
  const put = <L extends keyof Resources>(list: L, item: Resources[L][number]): void => {
    const there = design[list]?.find(({ id }) => id === item.id);
    if (there && JSON.stringify(there) === JSON.stringify(item)) return;
    const id = there ? freeId(design, item.id.replace(/-\d+$/, ''), taken) : item.id;
    taken.add(id);
    ids[list].set(item.id, id);
    edits.push(inserting(list, { ...item, id }));
  };
  for (const list of ['finishes', 'stocks', 'fonts', 'photos'] as const)
    for (const item of clip[list]) put(list, item);
  const rename = (list: keyof Resources, id: string) => ids[list].get(id) ?? id;
  // The finishes of their colors may have other ids here.
  for (const picture of clip.pictures) put('pictures', withResources(picture, rename));
  return { edits, rename };
}

/** A rule with every name in it replaced. */
function renamed(
  rule: Rule,
  id: string,
  idOf: (id: string) => string,
  reference: (of: string) => string,
): Rule {
  const named = slotsOf(rule).flatMap((slot): [string, unknown][] => {
    if (slot.is === 'edge') {
      const edge = inSlot(rule, slot);
      return [[slot.field, { ...edge, of: reference(edge.of) }]];
    }
    if (slot.is === 'part') return [[slot.field, idOf(inSlot(rule, slot))]];
    if (slot.is === 'parts') return [[slot.field, inSlot(rule, slot).map(idOf)]];
    return slot.is === 'thing' ? [[slot.field, reference(inSlot(rule, slot))]] : [];
  });
  return withFields(rule, { id, ...Object.fromEntries(named) });
}
