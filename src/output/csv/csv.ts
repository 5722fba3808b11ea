/** A figure with a fixed number of decimals, such as a price. */
export interface Amount {
  readonly value: number;
  readonly digits: number;
}

export type Cell = string | number | Amount | null;

/** What a column is called, and what each entry has in it. */
export type Column<T> = readonly [head: string, cell: (entry: T) => Cell];

/** Entries as rows under the heads of their columns. */
export const rowsOf = <T>(columns: readonly Column<T>[], entries: readonly T[]): Cell[][] => [
  columns.map(([head]) => head),
  ...entries.map((entry) => columns.map(([, cell]) => cell(entry))),
];

/** A spreadsheet takes text that starts like this for a formula and runs it. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** Says to a spreadsheet that the file is UTF-8; one that parts cells by semicolons takes it for its own code page else. */
const BYTE_ORDER_MARK = '\uFEFF';

function cell(value: Cell, decimalMark: string): string {
  if (value === null) return '';
  if (typeof value === 'object') return value.value.toFixed(value.digits).replace('.', decimalMark);
  if (typeof value === 'number') return Number.isFinite(value) ? String(value).replace('.', decimalMark) : '';
  const safe = FORMULA.test(value) && !NUMBER.test(value) ? `'${value}` : value;
  return /[",;\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Rows as comma-separated values (RFC 4180: CRLF line ends, quotes doubled). Text that a spreadsheet would
 * run as a formula gets an apostrophe in front, as spreadsheets mark plain text.
 *
 * @param decimalMark of the language: where it is a comma, cells are parted by semicolons and a byte order mark
 *   comes first, as spreadsheets of such languages read and write such files
 */
export function csvOf(rows: readonly (readonly Cell[])[], decimalMark = '.'): string {
  const [mark, separator] = decimalMark === ',' ? [BYTE_ORDER_MARK, ';'] : ['', ','];
  return (
    mark + rows.map((row) => `${row.map((value) => cell(value, decimalMark)).join(separator)}\r\n`).join('')
  );
}
