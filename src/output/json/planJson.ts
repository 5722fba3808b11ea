import type { Check } from '../../check/check.ts';
import type { Point, Region } from '../../geometry/shape.ts';
import type { Piece, PieceEnd } from '../../joinery/piece.ts';
import { designPart } from '../../layout/reference.ts';
import type { Plan } from '../../plan/types.ts';

/** Sentences that go into the file beside the figures. */
export interface PlanJsonWords {
  readonly check: (check: Check) => string;
  readonly step: (step: Plan['marks']['steps'][number]) => string;
}

/**
 * The plan as the file `plan.json` by contract: units in the names, lengths in full precision (a micrometer),
 * the same bytes for the same design.
 */
export function planJson(plan: Plan, words: PlanJsonWords): string {
  const groups = groupedPieces(plan.joinery.pieces);
  const data = {
    showface_plan: 1,
    design: { name: plan.design.name, date: plan.design.date },
    face: {
      width_mm: mm(plan.face.width),
      height_mm: mm(plan.face.height),
      levels: plan.face.levels.map((l) => ({
        id: l.id,
        z_mm: mm(l.z),
        ...boxFields(l.box),
        inner: l.inner && boxFields(l.inner),
      })),
      keep_clears: plan.keepClears.map((k) => ({
        id: k.id,
        name: k.name,
        why: k.why,
        ...boxFields(k.box),
        z_mm: mm(k.height),
      })),
    },
    parts: plan.layout.parts.map((p) => ({
      id: p.id,
      name: p.name,
      kind: p.kind,
      outline_mm: regionFields(p.region),
      z_mm: [mm(p.z0), mm(p.z1)],
    })),
    pieces: groups.rows.map(({ piece, quantity }) => ({
      id: piece.id,
      part: designPart(piece.part),
      label: piece.label,
      stock: piece.stock,
      length_mm: mm(piece.length),
      measured: piece.measured,
      edges_mm: { left: orNull(piece.edges.left), right: orNull(piece.edges.right) },
      overall_mm: mm(piece.overall),
      width_mm: mm(piece.width),
      thickness_mm: mm(piece.thickness),
      outline_mm: piece.outline.map(pair),
      holes_mm: piece.holes.map((ring) => ring.map(pair)),
      ends: piece.ends.map(endFields),
      notches: piece.notches.map((n) => ({
        from_mm: mm(n.from),
        to_mm: mm(n.to),
        depth_mm: mm(n.depth),
        side: n.side,
        miter_deg: deg(n.miter),
      })),
      fit: { in_place: piece.fit.inPlace, allowance_mm: mm(piece.fit.allowance) },
      quantity,
    })),
    boards: plan.cutting.boards.map((b) => ({
      stock: b.stock,
      length_mm: mm(b.length),
      owned: b.owned,
      cuts: b.cuts.map((c) => ({
        piece: groups.rowOf(c.piece),
        from_mm: mm(c.from),
        to_mm: mm(c.to),
        turned: c.flipped,
        left_deg: deg(c.left),
        right_deg: deg(c.right),
      })),
      offcut_mm: mm(b.offcut),
      cost: cents(b.cost),
    })),
    boards_bound: plan.cutting.boardsBound.map(boundFields),
    sheets: plan.cutting.sheets.map((s) => ({
      stock: s.stock,
      size_mm: [mm(s.length), mm(s.width)],
      owned: s.owned,
      placements: s.placements.map((p) => ({
        piece: groups.rowOf(p.piece),
        ...boxFields(p),
        turned: p.turned,
      })),
      sequence: s.sequence.map((c) => ({
        number: c.number,
        kind: c.kind,
        of: boxFields(c.of),
        fence_mm: mm(c.fence),
      })),
      cost: cents(s.cost),
    })),
    sheets_bound: plan.cutting.sheetsBound.map(boundFields),
    finishes: plan.finish.uses.map((u) => ({
      finish: u.finish,
      face_m2: micro(u.face),
      edge_m2: micro(u.edge),
      back_m2: micro(u.painted.back),
      painted_face_m2: micro(u.painted.face),
      painted_edge_m2: micro(u.painted.edge),
      coats: u.coats,
      volume_l: micro(u.volume),
      primer_l: micro(u.primer),
      buy: u.buy.map((b) => ({
        container: b.container,
        count: b.count,
        volume_l: micro(b.volume),
        price: cents(b.price),
      })),
      left_l: micro(u.left),
      tape_m: micro(u.tape / 1000),
    })),
    bare: plan.finish.bare.map((b) => ({
      glued: b.part,
      on: b.on,
      finish: b.finish,
      z_mm: mm(b.z),
      outline_mm: regionFields(b.region),
    })),
    load: {
      added_kg: micro(plan.load.added),
      center_mm: [mm(plan.load.center.x), mm(plan.load.center.y), mm(plan.load.center.z)],
      moment_nm: micro(plan.load.moment),
      lift_added_n: micro(plan.load.liftAdded),
      bare_kg: micro(plan.load.bare),
    },
    fold: {
      floor_clear_mm: mm(plan.fold.floorClear),
      wall_clear_mm: mm(plan.fold.wallClear),
      wall_board_clear_mm: orNull(plan.fold.wallBoardClear),
      ceiling_clear_mm: mm(plan.fold.ceilingClear),
      floor_space_mm: mm(plan.fold.floorSpace),
      hits: plan.fold.hits.map((h) => ({
        part: h.part,
        what: h.what,
        angle_deg: deg(h.angle),
        over_mm: mm(h.over),
      })),
    },
    fastening: plan.fastening.parts.map((f) => ({
      part: f.part,
      how: f.how,
      fastener: f.fastener,
      length_mm: orNull(f.length),
      at_mm: f.at.map(pair),
      depth_mm: mm(f.depth),
      glue_l: micro(f.glue),
    })),
    lettering: plan.signs.map(({ lettered, stencils }) => ({
      sign: lettered.sign,
      text: lettered.text,
      font: lettered.font,
      cap_height_mm: mm(lettered.capHeight),
      cap_heights_mm: lettered.capHeights.map(mm),
      ink_mm2: micro(lettered.ink_mm2),
      width_mm: mm(lettered.width),
      bridges: sum(stencils?.layers.map((l) => l.stencil.bridges.length) ?? []),
      islands_loose: sum(stencils?.layers.map((l) => l.stencil.loose) ?? []),
    })),
    patterns: plan.patterns.map((s) => ({
      for: s.for,
      paper: s.paper,
      rows: s.rows,
      columns: s.columns,
      pages: s.pages.map((p) => p.name),
    })),
    marks: plan.marks.marks.map((m) => ({
      datum: m.datum,
      axis: m.axis,
      at_mm: mm(m.at),
      part: m.part,
      edge: m.edge,
    })),
    steps: plan.marks.steps.map((s) => ({
      number: s.number,
      act: s.act,
      parts: s.parts,
      text: words.step(s),
      paints: s.paints.map((p) => ({
        part: p.part,
        finish: p.finish,
        of: p.of,
        face_m2: micro(p.face),
        edge_m2: micro(p.edge),
        back_m2: micro(p.back),
        coats: p.coats,
        primer_coats: p.primerCoats,
        primed_m2: micro(p.primed),
      })),
    })),
    shopping: plan.shopping.map((l) => ({
      kind: l.kind,
      item: l.item,
      name: l.name,
      ...l.size,
      count: l.count,
      each: cents(l.each),
      price: cents(l.price),
      owned: l.owned,
      priced: l.priced,
    })),
    checks: plan.checks.map((c) => ({
      code: c.code,
      severity: c.severity,
      parts: c.parts,
      at_mm: c.at ? pair(c.at) : null,
      message: words.check(c),
    })),
  };
  return `${JSON.stringify(data, null, 1)}\n`;
}

/** To the micrometer; -0 is 0, so that bytes do not depend on the sign of nothing. */
const mm = (value: number): number => Math.round(value * 1000) / 1000 + 0;
const orNull = (value: number | null): number | null => (value === null ? null : mm(value));
const deg = (value: number): number => Math.round(value * 10_000) / 10_000 + 0;
const micro = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const cents = (value: number): number => Math.round(value * 100) / 100 + 0;
const pair = (p: Point): [number, number] => [mm(p.x), mm(p.y)];

function boxFields(b: { x: number; y: number; w: number; h: number }) {
  return { x_mm: mm(b.x), y_mm: mm(b.y), width_mm: mm(b.w), height_mm: mm(b.h) };
}

function regionFields(region: Region) {
  return region.map((p) => ({ outer: p.outer.map(pair), holes: p.holes.map((h) => h.map(pair)) }));
}

function endFields(end: PieceEnd) {
  return {
    cut: end.cut,
    miter_deg: deg(end.miter),
    bevel_deg: deg(end.bevel),
    long: end.long,
    with: end.with,
    second: end.second && { miter_deg: deg(end.second.miter), bevel_deg: deg(end.second.bevel) },
    nested: end.nested && { miter_deg: deg(end.nested.miter), bevel_deg: deg(end.nested.bevel) },
  };
}

function boundFields(b: Plan['cutting']['boardsBound'][number]) {
  return {
    stock: b.stock,
    used: b.used,
    lower_bound: b.lowerBound,
    cost: cents(b.cost),
    lower_cost: cents(b.lowerCost),
    proved: b.proved,
  };
}

/** Identical pieces of one part of the design share a row; cuts name the row. */
function groupedPieces(pieces: readonly Piece[]) {
  const rows = new Map<string, { piece: Piece; quantity: number }>();
  const rowOfPiece = new Map<string, string>();
  for (const piece of pieces) {
    const key = `${designPart(piece.part)}|${piece.label}`;
    const row = rows.get(key);
    rows.set(key, row ? { ...row, quantity: row.quantity + 1 } : { piece, quantity: 1 });
    rowOfPiece.set(piece.id, rows.get(key)?.piece.id ?? piece.id);
  }
  return { rows: [...rows.values()], rowOf: (id: string) => rowOfPiece.get(id) ?? id };
}
