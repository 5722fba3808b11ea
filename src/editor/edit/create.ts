import type { OwnAssembly } from '../../design/assembly/own.ts';
import { ASSEMBLIES } from '../../design/assembly/table.ts';
import { newPart, usualStock } from '../../design/defaults.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { inserting } from '../../design/edit/make.ts';
import { hardwareNear } from '../../design/hardware.ts';
import { isLettered, isMany, isSheet } from '../../design/made.ts';
import type { Design, Part, PartKind } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { under } from '../../list/at.ts';
import type { Stock } from '../../materials/types.ts';
import { inches, type Mm } from '../../measure/units.ts';
import { stocksOf, tables } from '../shipped/tables.ts';
import { builtBy, type DrawnKind, type DrawTool, isBuilt, isOwn, ownBy } from '../state/tools.ts';
import { t } from '../words/t.ts';
import { createAssembly } from './built.ts';
import type { Created } from './created.ts';
import { freeId, freeName } from './ids.ts';
import { createOwn } from './own.ts';

interface Size {
  readonly w: Mm;
  readonly h: Mm;
}

/** Assemblies of the person's own, by their ids on the shelf. */
export type Owned = ReadonlyMap<string, OwnAssembly>;

/** Size of what a plain click places. */
export function usualSize(tool: DrawTool, owned: Owned): Size {
  if (isBuilt(tool)) return ASSEMBLIES[builtBy(tool)].usual;
  if (!isOwn(tool)) return DEFAULT_SIZE[tool];
  const { across, up } = under(owned, ownBy(tool));
  return { w: across.size, h: up.size };
}

const DEFAULT_SIZE: Readonly<Record<DrawnKind, Size>> = {
  strip: { w: inches(20), h: inches(2.5) },
  run: { w: inches(16), h: inches(20) },
  panel: { w: inches(16), h: inches(20) },
  sign: { w: inches(24), h: inches(7) },
  fitting: { w: inches(4), h: inches(2) },
  painted: { w: inches(12), h: inches(12) },
  lettering: { w: inches(24), h: inches(7) },
  array: { w: inches(24), h: inches(24) },
  fill: { w: inches(24), h: inches(24) },
  'keep-clear': { w: inches(4), h: inches(6) },
};

/** Forms of stock that each kind of part is made of. */
const MADE_OF: Readonly<Partial<Record<DrawnKind, readonly Stock['form'][]>>> = {
  strip: ['flat', 'shaped'],
  run: ['flat', 'shaped'],
  array: ['flat', 'shaped'],
  fill: ['flat'],
  panel: ['sheet'],
  sign: ['sheet'],
};

/** The stock in hand, where a part of this kind can be made of it. */
export function stockFor(design: Design, kind: DrawTool, chosen: string | null): string | undefined {
  if (isBuilt(kind) || isOwn(kind)) return undefined;
  const form = chosen === null ? undefined : stocksOf(design).get(chosen)?.form;
  return chosen !== null && form && MADE_OF[kind]?.includes(form) ? chosen : undefined;
}

/** The edit that adds a part (or keep-clear) over a box, with an id, a name and a finish that make sense. */
export function createItem(design: Design, kind: DrawTool, box: Box, owned: Owned, stock?: string): Created {
  if (isBuilt(kind)) return createAssembly(design, builtBy(kind), atLeast(box));
  if (isOwn(kind)) return createOwn(design, under(owned, ownBy(kind)), atLeast(box));
  const id = freeId(design, kind);
  if (kind === 'keep-clear') {
    const name = freeName(design.keepClears, t('kind.keep-clear'));
    const item = { id, name, why: 'other', box: atLeast(box), height: 0 } as const;
    return { edits: [inserting('keepClears', item)], id, name, box: item.box, part: null };
  }
  // What is made is named once it lies where it is let go.
  const name = t(`kind.${kind}`);
  const finish = finishFor(design, kind);
  const of = stock ?? usualStock(kind, design.measure.unit);
  const part = shapedToBox(
    newPart(kind, { id, name, box: atLeast(box), finish, ...(of ? { stock: of } : {}) }),
    design,
  );
  return { edits: [inserting('parts', part)], id, name, box: part.box, part };
}

/** The same item in another box: which way it runs was decided when it was made. */
export function madeAt(made: Created, box: Box): Created {
  const edits = made.edits.map((edit): Edit => {
    if (edit.kind !== 'insert') return edit;
    if (edit.list === 'keepClears') return { ...edit, item: { ...edit.item, box } };
    // What lies in an assembly is carried by its rules.
    if (edit.list !== 'parts' || (made.group !== undefined && edit.item.id !== made.id)) return edit;
    const { item } = edit;
    return item.kind === 'strip'
      ? { ...edit, item: { ...item, box, length: item.lie === 'across' ? box.w : box.h } }
      : { ...edit, item: { ...item, box } };
  });
  return { ...made, edits, box };
}

const atLeast = (box: Box): Box => ({ ...box, w: Math.max(1, box.w), h: Math.max(1, box.h) });

function finishFor(design: Design, kind: PartKind): string | null {
  if (kind === 'fitting') return null;
  const [first, second] = design.finishes;
  return (kind === 'panel' || kind === 'painted' || kind === 'sign' ? first : (second ?? first))?.id ?? null;
}

/** What the box decides: which way a strip or an array of strips runs, and which hardware of the table is meant. */
function shapedToBox(part: Part, design: Design): Part {
  const { box } = part;
  if (part.kind === 'strip') {
    const stock = stocksOf(design).get(part.stock);
    const width =
      stock && stock.form !== 'sheet'
        ? part.onEdge
          ? stock.thickness
          : stock.width
        : Math.min(box.w, box.h);
    return box.w >= box.h
      ? { ...part, lie: 'across', length: box.w, box: { ...box, y: box.y + (box.h - width) / 2, h: width } }
      : { ...part, lie: 'up', length: box.h, box: { ...box, x: box.x + (box.w - width) / 2, w: width } };
  }
  if (isMany(part) && part.member.kind === 'strip' && box.h > box.w * 1.5) {
    return { ...part, member: { ...part.member, lie: 'across' }, across: null, up: part.across };
  }
  if (part.kind === 'fitting') return { ...part, ...hardwareNear(tables().hardware, box) };
  if (isLettered(part)) {
    const capHeight = Math.max(5, Math.min(inches(3), box.h * 0.45));
    // Letters in the color of their board could not be seen; with a single color the board stays bare.
    const other = design.finishes.find((f) => f.id !== part.finish)?.id;
    const { finish } = part.lettering;
    // What has no board is painted as it was told; a sign's own board is not to hide its letters.
    const own = isSheet(part)
      ? { finish: other === undefined ? null : part.finish, letters: other ?? finish }
      : { finish: null, letters: finish };
    return {
      ...part,
      finish: own.finish,
      lettering: { ...part.lettering, capHeight, finish: own.letters },
    };
  }
  return part;
}
