import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { Design, Part } from '../../design/schema.ts';
import { followersOf } from '../../layout/follow.ts';
import { type CarrierInput, carrierOf } from '../../layout/place/carrier.ts';
import { isLevelId } from '../../layout/place/support.ts';
import { type Document, type Trial, tried } from '../document/document.ts';
import type { Shown } from '../document/shown.ts';

/**
 * The edits that lay parts on what is under them, once they and all that follows them lie where they are put;
 * mirror images that follow them too. What the person chose stays. `shown`: with them held.
 */
export function editsToLay(shown: Shown, ids: ReadonlySet<string>): Edit[] {
  const { design, layout } = shown;
  const twins = design.rules.flatMap((r) => (r.kind === 'mirror' && ids.has(r.part) ? [r.twin] : []));
  return [...new Set([...ids, ...twins])].flatMap((id): Edit[] => {
    const part = design.parts.find((p) => p.id === id);
    if (!part || part.onChosen || ids.has(part.on)) return [];
    const box = layout.boxes.get(id) ?? part.box;
    let along: ReadonlySet<string> | null = null;
    const without = (other: string): boolean => {
      if (other === id) return true;
      along ??= new Set([...restingOn(design, new Set([id])), ...followersOf(design, [id])]);
      return along.has(other);
    };
    const found = carrierOf(carrying(shown), part, box, without);
    const on = 'part' in found ? found.part : 'face';
    const same = part.on === on || (isLevelId(part.on) && !('part' in found) && found.level === part.on);
    return same ? [] : [replacing('parts', { ...part, on })];
  });
}

/** The edit that lays a part on another of the person's own choice; none where it lies there, or carries that itself. */
export function editsToLayOn(design: Design, part: Part, on: string): Edit[] {
  if (part.on === on || restingOn(design, new Set([part.id])).has(on)) return [];
  return [replacing('parts', { ...part, on, onChosen: true })];
}

/** What edits come to as they are, and with those that lay their parts; the next ones are made from these. */
export interface LaidDown extends Trial {
  /** Before the parts are laid, with them held. */
  readonly made: Shown;
}

/** Edits with those that lay their parts once they are made, and what comes of them all with the parts held. */
export function laidDown(
  doc: Document,
  edits: readonly Edit[],
  ids: ReadonlySet<string>,
  last: Pick<LaidDown, 'made' | 'shown'>,
): LaidDown {
  const made = tried(doc, edits, ids, last.made);
  const lay = editsToLay(made, ids);
  if (lay.length === 0) return { doc, edits, made, shown: made };
  const all = [...edits, ...lay];
  return { doc, edits: all, made, shown: tried(doc, all, ids, last.shown) };
}

/** Parts that lie on some, directly or on others between. */
export function restingOn(design: Design, ids: ReadonlySet<string>): ReadonlySet<string> {
  const found = new Set(ids);
  for (let grown = true; grown; ) {
    grown = false;
    for (const part of design.parts) {
      if (found.has(part.id) || !found.has(part.on)) continue;
      found.add(part.id);
      grown = true;
    }
  }
  return found;
}

/** What is there to lie on. */
export const carrying = ({ layout, face, stocks }: Shown): CarrierInput => ({
  parts: layout.parts,
  face,
  stocks,
});
