/**
 * Rows of a file of comma-separated values (RFC 4180), as any spreadsheet writes it: where cells are parted by
 * semicolons, as in languages whose decimal mark is the comma, `decimalMark` says so. An apostrophe before what would be
 * run as a formula is taken off again (`csvOf`).
 */
export function csvRows(text: string): { readonly rows: string[][]; readonly decimalMark: '.' | ',' } {
  const plain = text.replace(/^\uFEFF/, '');
  const [head = ''] = plain.split(/\r?\n/, 1);
  const separator = head.includes(';') ? ';' : ',';
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = () => {
    row.push(/^'[=+\-@＝＋－＠]/.test(cell) ? cell.slice(1) : cell);
    cell = '';
  };
  const endRow = () => {
    endCell();
    rows.push(row);
    row = [];
  };
  for (let i = 0; i < plain.length; i++) {
    const char = plain.charAt(i);
    if (quoted) {
      if (char !== '"') cell += char;
      else if (plain.charAt(i + 1) === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (char === '"' && cell === '') quoted = true;
    else if (char === separator) endCell();
    else if (char === '\n') endRow();
    else if (char !== '\r') cell += char;
  }
  if (cell !== '' || row.length > 0) endRow();
  return { rows, decimalMark: separator === ';' ? ',' : '.' };
}
