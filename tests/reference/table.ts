/** One published check: what its source says and what the product's own functions come to. */
export interface Row {
  readonly check: string;
  readonly source: string;
  readonly expected: number | string;
  readonly found: number | string;
  /** Largest difference of numbers; none given: the last binary digits of the arithmetic only. */
  readonly tolerance?: number;
}

/** A section of the check values, with its rows computed when asked for. */
export interface Section {
  readonly number: number;
  readonly title: string;
  readonly rows: () => readonly Row[] | Promise<readonly Row[]>;
}

/** Said of what was not confirmed on any page that was read. */
export const FROM_MEMORY = 'from memory, not confirmed';
/** Said of what follows from a formula by hand or from other values read. */
export const WORKED = 'worked by hand from the formula';

const BINARY = 1e-9;

/** Half of the last of so many printed decimals, and room for the last binary one. */
export const printed = (decimals: number): number => 0.5 * 10 ** -decimals + BINARY;

/** Whether what was found is what the source says. */
export function agrees({ expected, found, tolerance }: Row): boolean {
  if (typeof expected === 'string' || typeof found === 'string') return expected === found;
  return Math.abs(found - expected) <= (tolerance ?? BINARY * Math.max(1, Math.abs(expected)));
}

/** Seven figures, and nothing for binary dust, so that two machines read the same. */
function shown(value: number | string): string {
  if (typeof value === 'string') return value;
  return String(Math.abs(value) < BINARY ? 0 : Number(value.toPrecision(7)));
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

/** A section as it stands on the page. */
export function textOf(section: Section, rows: readonly Row[]): string {
  const head = `## ${section.number}. ${section.title}\n\n`;
  const lines = rows.map(
    (row) => `| ${[row.check, row.source, shown(row.expected), shown(row.found)].map(cell).join(' | ')} |`,
  );
  return `${head}| check | source | expected | found |\n|---|---|---|---|\n${lines.join('\n')}\n`;
}

export const PAGE_HEAD = `# Published values, and what the tool finds

Written by \`npm run references\`; the test run fails where this page is not what the code finds. Every figure
under “found” comes out of the product's own functions. Values that no page was read for are named “${FROM_MEMORY}”;
values worked out from a formula name it. Tests of the same kind that are too long for a table
stand beside this page: every glyph and pair of every font, every stencil.
`;
