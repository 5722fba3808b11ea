export type Cell = string | number | null;

/** A spreadsheet takes text that starts like this for a formula and runs it. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

function cell(value: Cell): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const safe = FORMULA.test(value) && !NUMBER.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Rows as comma-separated values (RFC 4180: CRLF line ends, quotes doubled). Text that a spreadsheet would
 * run as a formula gets an apostrophe in front, as spreadsheets mark plain text.
 */
export function csvOf(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}
