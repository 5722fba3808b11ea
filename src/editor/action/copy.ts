import { z } from 'zod';
import type { Edit } from '../../design/edit/edit.ts';
import { partOfReference, partsOfRule } from '../../design/references.ts';
import {
  type Design,
  groupSchema,
  type KeepClear,
  keepClearSchema,
  type Part,
  partSchema,
  type Rule,
  ruleSchema,
} from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { freeId, freeName } from './ids.ts';
import { itemsOf } from './movable.ts';

/** Parts on the clipboard, with the rules and groups that are wholly among them. */
const clipSchema = z.strictObject({
  showfaceParts: z.literal(1),
  parts: z.array(partSchema).max(2000),
  keepClears: z.array(keepClearSchema).max(200),
  rules: z.array(ruleSchema).max(5000),
  groups: z.array(groupSchema).max(500),
});

export interface Clip {
  readonly parts: readonly Part[];
  readonly keepClears: readonly KeepClear[];
  readonly rules: readonly Rule[];
  readonly groups: Design['groups'];
}

export function copyOf(design: Design, boxes: ReadonlyMap<string, Box>, selection: readonly string[]): Clip {
  const ids = new Set(itemsOf(design, selection));
  const within = (named: readonly string[]) => named.length > 0 && named.every((id) => ids.has(id));
  return {
    parts: design.parts.filter((p) => ids.has(p.id)).map((p) => ({ ...p, box: boxes.get(p.id) ?? p.box })),
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

/** The edits that put a clip into a design, moved by an offset, under ids of its own. */
export function editsToPaste(
  design: Design,
  clip: Clip,
  dx: number,
  dy: number,
): { edits: Edit[]; ids: string[] } {
  const fresh = new Map<string, string>();
  const taken = new Set<string>();
  const take = (id: string) => {
    const next = freeId(design, id.replace(/-\d+$/, ''), taken);
    taken.add(next);
    fresh.set(id, next);
    return next;
  };
  const moved = (box: Box) => ({ ...box, x: box.x + dx, y: box.y + dy });
  const names = design.parts.map((p) => p.name);
  for (const item of [...clip.parts, ...clip.keepClears, ...clip.groups]) take(item.id);
  const idOf = (id: string) => fresh.get(id) ?? id;
  const reference = (of: string) => {
    const id = partOfReference(of)[0];
    return id === undefined ? of : of.replace(id, idOf(id));
  };

  const edits: Edit[] = [];
  for (const part of clip.parts) {
    const name = freeName(names, part.name.replace(/ \d+$/, ''));
    names.push(name);
    const on = fresh.has(part.on)
      ? idOf(part.on)
      : design.parts.some((p) => p.id === part.on)
        ? part.on
        : 'face';
    edits.push({
      kind: 'insert',
      list: 'parts',
      item: { ...part, id: idOf(part.id), name, on, box: moved(part.box), locked: false },
    });
  }
  for (const keep of clip.keepClears) {
    edits.push({
      kind: 'insert',
      list: 'keepClears',
      item: { ...keep, id: idOf(keep.id), box: moved(keep.box) },
    });
  }
  for (const rule of clip.rules)
    edits.push({ kind: 'insert', list: 'rules', item: renamed(rule, take(rule.id), idOf, reference) });
  for (const group of clip.groups) {
    edits.push({
      kind: 'insert',
      list: 'groups',
      item: { ...group, id: idOf(group.id), parts: group.parts.map(idOf) },
    });
  }
  const grouped = new Set(clip.groups.flatMap((g) => g.parts));
  const ids = [
    ...clip.groups.map((g) => idOf(g.id)),
    ...[...clip.parts, ...clip.keepClears].filter((p) => !grouped.has(p.id)).map((p) => idOf(p.id)),
  ];
  return { edits, ids };
}

/** A rule with every name in it replaced. */
function renamed(
  rule: Rule,
  id: string,
  idOf: (id: string) => string,
  reference: (of: string) => string,
): Rule {
  const edge = <E extends { readonly of: string }>(e: E): E => ({ ...e, of: reference(e.of) });
  switch (rule.kind) {
    case 'set':
      return { ...rule, id, edge: edge(rule.edge), from: edge(rule.from) };
    case 'between':
      return { ...rule, id, part: idOf(rule.part), low: edge(rule.low), high: edge(rule.high) };
    case 'center':
    case 'even':
    case 'graded':
      return { ...rule, id, parts: rule.parts.map(idOf), low: edge(rule.low), high: edge(rule.high) };
    case 'mirror':
      return { ...rule, id, part: idOf(rule.part), twin: idOf(rule.twin), about: edge(rule.about) };
    case 'same':
      return { ...rule, id, parts: rule.parts.map(idOf) };
    case 'reveal':
      return { ...rule, id, part: idOf(rule.part), inside: reference(rule.inside) };
  }
}
