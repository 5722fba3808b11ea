import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openDesign } from '../../../src/design/open.ts';
import type { Design } from '../../../src/design/schema.ts';
import { preview, startState } from '../../../src/design/state.ts';
import { shownFrom } from '../../../src/editor/document/shown.ts';
import { editsToType } from '../../../src/editor/edit/typed.ts';
import type { Box } from '../../../src/geometry/shape.ts';
import { settled } from '../../../src/layout/settle.ts';
import { faceFor, layoutOf } from '../laid.ts';

/** Scenes from the bench: what a hand does, and what a person means by it (`scenes/README.md`). */
const FOLDER = fileURLToPath(new URL('scenes/', import.meta.url));

type Corners = readonly [number, number, number, number];

export interface Gesture {
  readonly tool: string;
  readonly makes?: string;
  readonly part?: string;
  readonly of_group?: string;
  readonly stock?: string;
  readonly from_mm: readonly [number, number];
  readonly to_mm: readonly [number, number];
  readonly pixels_per_mm: number;
  readonly jitter_px: Corners;
  readonly modifier: 'none' | 'free';
}

interface Members {
  readonly count: number;
  readonly gap_mm: number;
  readonly first_mm: Corners;
  readonly last_mm: Corners;
}

interface After {
  readonly part: string;
  readonly box_mm: Corners;
  readonly lies_on: string | readonly string[];
  readonly holds: readonly object[];
  readonly others_mm?: Readonly<Record<string, Corners>>;
  readonly members?: Members;
}

interface Then {
  readonly change: { readonly set: string; readonly new: string | number };
  readonly expect: {
    readonly boxes_mm: Readonly<Record<string, Corners>>;
    readonly face_mm?: readonly [number, number];
    readonly levels_mm?: Readonly<Record<string, Corners>>;
    readonly members?: Members;
  };
}

export interface Step {
  readonly gesture: Gesture;
  readonly after: After;
}

export interface Scene {
  readonly file: string;
  readonly name: string;
  readonly tolerance_mm: number;
  readonly design: Design;
  readonly steps: readonly Step[];
  readonly then: readonly Then[];
}

/** All of them, in order. */
export function scenes(): Scene[] {
  return readdirSync(FOLDER)
    .filter((name) => /^s\d+.*\.json$/.test(name))
    .sort()
    .map((file) => {
      const read = JSON.parse(readFileSync(FOLDER + file, 'utf8'));
      const opened = openDesign(JSON.stringify(read.design));
      if (!opened.ok) throw new Error(`${file}: the design does not open`);
      const steps = [...(read.earlier ?? []), { gesture: read.gesture, after: read.after }];
      return { ...read, file, design: opened.design, steps };
    });
}

const listed = (b: Box): readonly number[] => [b.x, b.y, b.w, b.h];

/** What of a design is not as a scene has it, in words: nothing where all is well. `ids`: what the scene's names became. */
export function faults(
  scene: Scene,
  design: Design,
  expected: Partial<After> & Partial<Then['expect']>,
  ids: ReadonlyMap<string, string>,
): string[] {
  const layout = layoutOf(design);
  const face = faceFor(design.bed);
  const found: string[] = [];
  const same = (what: string, got: readonly number[] | undefined, want: readonly number[]) => {
    const off = want.some((v, i) => Math.abs(v - (got?.[i] ?? Number.NaN)) > scene.tolerance_mm || !got);
    if (off) found.push(`${what}: ${got?.map((v) => Math.round(v * 1e4) / 1e4)} for ${want}`);
  };
  const idOf = (name: string) => ids.get(name) ?? name;
  const box = (name: string) => {
    const at = layout.boxes.get(idOf(name));
    return at && listed(at);
  };
  if (expected.part && expected.box_mm) same(expected.part, box(expected.part), expected.box_mm);
  for (const [name, want] of Object.entries({ ...expected.boxes_mm, ...expected.others_mm }))
    same(name, box(name), want);
  if (expected.face_mm) same('face', [face.width, face.height], expected.face_mm);
  for (const [id, want] of Object.entries(expected.levels_mm ?? {})) {
    const level = face.levels.find((one) => one.id === id);
    same(id, level && listed(level.box), want);
  }
  if (expected.part && expected.lies_on) {
    const laid = layout.parts.find((p) => p.part === idOf(expected.part ?? ''));
    const on = face.levels.some((l) => l.id === laid?.on) ? `level:${laid?.on}` : laid?.on;
    const wanted = [expected.lies_on].flat().map(idOf);
    if (!wanted.includes(on ?? '')) found.push(`${expected.part} lies on ${on}, not on ${wanted}`);
  }
  if (expected.members) {
    const [row] = design.parts.filter((p) => p.kind === 'array');
    const all = layout.parts.filter((p) => p.part === row?.id).map((p) => listed(p.box));
    const [first, second] = all;
    same('members', [all.length], [expected.members.count]);
    same('gap', [(second?.[0] ?? 0) - (first?.[0] ?? 0) - (first?.[2] ?? 0)], [expected.members.gap_mm]);
    same('first', first, expected.members.first_mm);
    same('last', all.at(-1), expected.members.last_mm);
  }
  const failing = layout.rules.filter((rule) => !rule.holds);
  if (failing.length > 0) found.push(`rules that do not hold: ${failing.map((r) => r.id)}`);
  return found;
}

/** The design after a field of it was typed anew, as the field does it. */
export function changed(design: Design, { set, new: value }: Then['change']): Design {
  const [list, id = '', field = '', side = ''] = set.split('.');
  if (list === 'bed') return put(design, set.split('.'), value) as Design;
  const part = design.parts.find((p) => p.id === id);
  const box = layoutOf(design).boxes.get(id);
  if (!part || !box) throw new Error(`no ${set}`);
  const state = startState(design);
  const edits =
    field === 'box'
      ? editsToType(shownFrom(design), id, box, { [side]: value }).edits
      : [
          {
            kind: 'replace' as const,
            list: 'parts' as const,
            id,
            item: put(part, set.split('.').slice(2), value) as typeof part,
          },
        ];
  const next = preview(state, edits);
  const boxes = new Map(settled(next, layoutOf(next, new Set([id]))).map((s) => [s.part, s.box]));
  return { ...next, parts: next.parts.map((p) => ({ ...p, box: boxes.get(p.id) ?? p.box })) };
}

function put(on: unknown, [first = '', ...rest]: readonly string[], value: unknown): unknown {
  const fields = on as Record<string, unknown>;
  return { ...fields, [first]: rest.length === 0 ? value : put(fields[first], rest, value) };
}

/** What is not as it has to be after each of the later changes. */
export const laterFaults = (scene: Scene, design: Design, ids: ReadonlyMap<string, string>): string[] =>
  scene.then.flatMap(({ change, expect }) =>
    faults(scene, changed(design, change), expect, ids).map(
      (fault) => `${change.set} ${change.new}: ${fault}`,
    ),
  );
