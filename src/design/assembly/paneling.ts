import { inches } from '../../measure/units.ts';
import { SQUARE } from '../ends.ts';
import type { Strip } from '../schema.ts';
import { type Building, GROUND, type Space } from './building.ts';
import { HEAD, rail } from './framing.ts';
import { stock } from './question.ts';
import { moldingOf } from './stock.ts';

export const PANEL_STYLES = ['flat', 'molded', 'raised'] as const;
type Style = (typeof PANEL_STYLES)[number];

/** What goes around panels in the style that has it. */
export const PANEL_MOLDING = stock(
  'shaped',
  (_, has) => moldingOf(has, 'panel-molding-small', 'half-round-20'),
  { field: 'style', is: ['molded'] },
);

export interface Paneling {
  readonly columns: number;
  /** Heights of the rows against each other, from the foot up. */
  readonly rows: readonly number[];
  readonly style: Style;
  readonly stock: string;
  readonly molding: string;
  readonly sheet: string;
  readonly finish: string | null;
  readonly fieldFinish: string | null;
  /** The uppermost row goes up under an arched head: its muntins are cut to that, and it has no molding. */
  readonly arched?: boolean;
}

/** Left around a raised panel. Common practice, no source. */
const AROUND_RAISED = inches(1 / 2);

/**
 * Divides a space into panels: rows in a ratio, of equal columns, with rails that run through and muntins between
 * them, and in each panel the color of the field with molding around it or a raised board.
 */
export function paneled(b: Building, space: Space, p: Paneling): void {
  const fields = p.rows.map((_, row) => `field-${row + 1}`);
  fields.forEach((field, row) => {
    b.part('painted', field, { noun: 'field', number: row + 1 }, { finish: p.fieldFinish });
    b.between(field, 'x', space.left, space.right);
    const below = fields[row - 1];
    if (below === undefined) return;
    rail(b, `rail-${row}`, 'cross-rail', space, p, row);
    b.set(`rail-${row}`, 'y', 'low', b.edge(below, 'high'));
  });
  b.shared(fields, p.rows, 'y', space.bottom, space.top, b.widthOf(p.stock));
  fields.forEach((field, row) => {
    const underArch = p.arched === true && row === p.rows.length - 1;
    const muntins = upTo(p.columns - 1).map((column) => muntin(b, p, { field, row, column, underArch }));
    if (row === 0) b.even(muntins, 'x', space.left, space.right);
    if (underArch) return;
    for (const column of upTo(p.columns)) {
      const before = muntins[column - 2];
      const after = muntins[column - 1];
      ornament(b, p, row * p.columns + column, {
        left: before === undefined ? space.left : b.edge(before, 'high'),
        right: after === undefined ? space.right : b.edge(after, 'low'),
        bottom: b.edge(field, 'low'),
        top: b.edge(field, 'high'),
      });
    }
  });
}

/** 1 to a number. */
export const upTo = (count: number): number[] => Array.from({ length: Math.max(0, count) }, (_, i) => i + 1);

/** A muntin between two rails; those of the rows above stand over those of the lowest. */
function muntin(
  b: Building,
  p: Paneling,
  { field, row, column, underArch }: { field: string; row: number; column: number; underArch: boolean },
): string {
  const role = `muntin-${row + 1}-${column}`;
  const ends = underArch ? { ends: stopping(b, 'end') } : {};
  b.strip(role, { noun: 'muntin', number: row * (p.columns - 1) + column }, 'up', {
    stock: p.stock,
    finish: p.finish,
    ...ends,
  });
  b.between(role, 'y', b.edge(field, 'low'), underArch ? b.edge(GROUND, 'high') : b.edge(field, 'high'));
  if (row > 0) b.set(role, 'x', 'low', b.edge(`muntin-1-${column}`, 'low'));
  return role;
}

/** Ends of which one, or both, are cut to the head. */
export const stopping = (b: Building, which: 'start' | 'end' | 'both', at = HEAD): Strip['ends'] => {
  const stop = { cut: 'stop', at: b.id(at) } as const;
  return { start: which === 'end' ? SQUARE : stop, end: which === 'start' ? SQUARE : stop };
};

/** What stands in a panel: molding along its sides, or a board with room around it. */
function ornament(b: Building, p: Paneling, number: number, cell: Space): void {
  if (p.style === 'molded') {
    const role = `molding-${number}`;
    b.part('run', role, { noun: 'panel-molding', number }, { stock: p.molding, finish: p.finish });
    b.fill(role, cell);
  } else if (p.style === 'raised') {
    const role = `raised-${number}`;
    b.part('panel', role, { noun: 'raised-panel', number }, { stock: p.sheet, finish: p.fieldFinish });
    b.fill(role, cell, AROUND_RAISED);
  }
}

/**
 * How panels are divided: columns, and heights of the rows from the foot up. Rows below the lock rail against those
 * above it follow from a lock 3 ft from the floor in a door of 6 ft 8 in with rails by `doorStocks` (0.325 to
 * 0.468 of the height); the small panels at the head of six are common practice, no source.
 */
export const PANELS: readonly { readonly columns: number; readonly rows: readonly number[] }[] = [
  { columns: 1, rows: [1] },
  { columns: 1, rows: [9, 13] },
  { columns: 1, rows: [1, 1, 1] },
  { columns: 2, rows: [9, 13] },
  { columns: 1, rows: [1, 1, 1, 1, 1] },
  { columns: 2, rows: [11, 10, 4] },
];

/** A lock stands 3 ft from the floor in a door of 6 ft 8 in (Building Trades Pocketbook, Doors). */
const LOCK = 36 / 80;

/** The rail between rows that is nearest to where a lock stands; null where all panels are in one row. */
export function lockRailOf(rows: readonly number[]): string | null {
  const all = rows.reduce((sum, row) => sum + row, 0);
  let low = 0;
  const off = rows.slice(0, -1).map((row) => {
    low += row / all;
    return Math.abs(low - LOCK);
  });
  return off.length > 0 ? `rail-${off.indexOf(Math.min(...off)) + 1}` : null;
}
