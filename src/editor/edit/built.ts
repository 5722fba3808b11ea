import type { Check } from '../../check/check.ts';
import type { Called } from '../../design/assembly/building.ts';
import {
  answersOf,
  groundOf,
  make,
  type Naming,
  newAssembly,
  takenApart,
} from '../../design/assembly/make.ts';
import type { Answer, Kept, Supplies } from '../../design/assembly/question.ts';
import { type Remade, remade } from '../../design/assembly/remake.ts';
import { type AssemblyName, assemblyOf } from '../../design/assembly/table.ts';
import { applyEdits, type Edit } from '../../design/edit/edit.ts';
import { inserting, replacing } from '../../design/edit/make.ts';
import type { Design, Group } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { partOf } from '../../layout/reference.ts';
import { type Shown, shownFrom } from '../document/shown.ts';
import { stocksOf, tables } from '../shipped/tables.ts';
import { commit, undoStep } from '../state/commit.ts';
import type { EditorStore } from '../state/store.ts';
import { firstOf, t, type WordKey } from '../words/t.ts';
import '../words/deskWords.ts';
import type { Created } from './created.ts';
import { freeName } from './ids.ts';

/** What a design has to make assemblies of. */
export const suppliesIn = (design: Pick<Design, 'stocks' | 'finishes' | 'measure'>): Supplies => ({
  stocks: stocksOf(design),
  hardware: tables().hardware,
  finishes: design.finishes,
  unit: design.measure.unit,
});

/** Names of the parts of an assembly: what each is first, since lists cut long names short; then in what. */
const namesIn =
  (whole: string): Naming =>
  ({ noun, number, leaf }: Called) => {
    const within = leaf === undefined ? whole : `${whole}, ${t(`built.leaf.${leaf}`)}`;
    return `${t(`built.part.${noun}`)}${number === undefined ? '' : ` ${number}`} (${within})`;
  };

/** How the parts of a group are called that was made as an assembly. */
export const namingOf = ({ name }: Group): Naming => namesIn(name);

/** A design whose assemblies call their parts by the words of the language in use. */
export function assembliesNamed(design: Design): Design {
  const has = suppliesIn(design);
  const names = new Map(design.groups.flatMap((group) => namesOf(design, group, has)));
  return {
    ...design,
    parts: design.parts.map((part) => ({ ...part, name: names.get(part.id) ?? part.name })),
  };
}

/** The names of the parts of an assembly, by their ids; none where nothing remembers how it was made. */
export function namesOf(design: Design, group: Group, has: Supplies): [string, string][] {
  const { assembly } = group;
  const kind = assembly && assemblyOf(assembly.kind);
  const ground = groundOf(design, group);
  if (!kind || !ground) return [];
  const { box } = ground;
  const answers = answersOf(kind, assembly.answers, box, has);
  const made = make(kind, answers, { box, has, idOf: (role) => role, nameOf: namesIn(group.name) });
  return [...made.parts].flatMap(([role, { name }]): [string, string][] => {
    const id = assembly.parts[role];
    return id === undefined ? [] : [[id, name]];
  });
}

/** The edits that add an assembly over a box, with its group. */
export function createAssembly(design: Design, name: AssemblyName, box: Box): Created {
  const called = freeName(design.groups, t(`built.${name}`));
  const made = newAssembly(design, name, { box, has: suppliesIn(design), called, nameOf: namesIn(called) });
  const [ground] = made.parts;
  const edits: Edit[] = [
    ...made.parts.map((item) => inserting('parts', item)),
    ...made.rules.map((item) => inserting('rules', item)),
    inserting('groups', made.group),
  ];
  return { edits, id: ground.id, name: called, group: made.group.id, box: ground.box, part: ground };
}

/** An assembly that can be asked: its answers, and where it lies. */
export interface Asking {
  readonly name: AssemblyName;
  readonly answers: Kept;
  readonly box: Box;
}

/** What may be asked of a group; null where nothing remembers how it was made, or its ground is gone. */
export function askingOf({ design, layout }: Shown, group: Group): Asking | null {
  const { assembly } = group;
  const kind = assembly && assemblyOf(assembly.kind);
  const ground = groundOf(design, group);
  if (!assembly || !kind || !ground) return null;
  const box = boxIn(layout.boxes, ground);
  const name = assembly.kind as AssemblyName;
  return { name, answers: answersOf(kind, assembly.answers, box, suppliesIn(design)), box };
}

/** Checks by which something of a whole has no room. */
const CRAMPED: ReadonlySet<Check['code']> = new Set([
  'part.no-size',
  'part.overlap',
  'rule.gap-negative',
  'rule.impossible',
  'array.count',
]);

function crampedIn({ design, layout }: Shown, id: string): number {
  const own = new Set(design.groups.find((group) => group.id === id)?.parts);
  return layout.checks.filter(
    ({ code, parts }) => CRAMPED.has(code) && parts.some((part) => own.has(partOf(part) ?? part)),
  ).length;
}

/**
 * An answer as the space has room for it: of a greater count the most by which nothing new is cramped, null where that
 * is as many as there are. `full` tells of a count that was cut down.
 */
function withRoom(
  shown: Shown,
  group: Group,
  answers: Kept,
  by: (answers: Kept) => Remade | null,
): { readonly roomy: Kept | null; readonly full?: { readonly asked: number; readonly count: number } } {
  const asking = askingOf(shown, group);
  const [one, ...more] = Object.entries(answers);
  if (!asking || !one || more.length > 0) return { roomy: answers };
  const [name, asked] = one;
  const was = asking.answers[name];
  const is = assemblyOf(asking.name)?.questions[name]?.is;
  if (is !== 'count' || typeof asked !== 'number' || typeof was !== 'number') return { roomy: answers };
  const before = crampedIn(shown, group.id);
  for (let count = asked; count > was; count--) {
    const roomy = { [name]: count };
    const done = applyEdits(shown.design, by(roomy)?.edits ?? []);
    if (!done.ok || crampedIn(shownFrom(done.design), group.id) > before) continue;
    return count === asked ? { roomy } : { roomy, full: { asked, count } };
  }
  return asked > was ? { roomy: null, full: { asked, count: was } } : { roomy: answers };
}

/** Makes an assembly once more by another answer; a count that the space has no room for is cut down, and told. What of the person's is lost is told, with a way back. */
export function answer(
  store: EditorStore,
  group: Group,
  box: Box,
  answers: Readonly<Record<string, Answer>>,
): void {
  const { design, shown } = store.getState().edit;
  const has = suppliesIn(design);
  const by = (some: Kept) => remade(design, group, some, { box, has, nameOf: namesIn(group.name) });
  const { roomy, full } = withRoom(shown, group, answers, by);
  if (full) store.setState({ notice: { tone: 'warn', text: t('built.noRoom', full) } });
  const made = roomy && by(roomy);
  if (!made) return;
  commit(store, made.edits, t('did.answer', { name: group.name }), { selection: [group.id] });
  if (made.lost.length === 0) return;
  store.setState({
    notice: {
      tone: 'warn',
      text: t('built.lost', { count: made.lost.length }),
      lines: made.lost,
      offer: { label: t('act.undo'), take: () => undoStep(store) },
    },
  });
}

/** Leaves the parts of an assembly as they are, a plain group. */
export function takeApart(store: EditorStore, group: Group): void {
  const item = takenApart(group);
  commit(store, [replacing('groups', item)], t('did.takeApart', { name: group.name }), {
    selection: [group.id],
  });
}

/** Words of a question, or of one of its choices: about a part or an outline it is called as that, if not otherwise. */
export const askWords = (name: string): WordKey => firstOf(`built.ask.${name}`, `built.part.${name}`);
export const choiceWords = (value: string): WordKey =>
  firstOf(`built.choice.${value}`, `shape.${value}`, `built.part.${value}`);
