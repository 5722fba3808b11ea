import qrcode from 'qrcode-generator';

/** The quiet border that readers need, in modules. */
const QUIET = 4;

/** Dark modules row by row, runs as one rectangle. */
export function codePath(text: string, digits: string): { d: string; size: number } {
  const code = qrcode(0, 'L');
  code.addData(text, 'Byte');
  if (digits !== '') code.addData(digits, 'Numeric');
  code.make();
  const count = code.getModuleCount();
  let d = '';
  for (let row = 0; row < count; row++) {
    for (let from = 0; from < count; from++) {
      if (!code.isDark(row, from)) continue;
      let to = from;
      while (to < count && code.isDark(row, to)) to++;
      d += `M${from + QUIET} ${row + QUIET}h${to - from}v1h${from - to}z`;
      from = to;
    }
  }
  return { d, size: count + 2 * QUIET };
}
