import { readFileSync } from 'node:fs';
import { openDesign } from '../design/open.ts';
import { problemMessage } from '../design/problem.ts';
import type { Design } from '../design/schema.ts';
import type { Tables } from '../materials/types.ts';
import { withPrices, withShelf } from '../output/csv/readLists.ts';
import { planFiles, unwrittenWords } from '../output/files.ts';
import { PACKET_WORDS } from '../output/packet/words/words.ts';
import { testPageFile } from '../output/testPageFile.ts';
import { pageSetup } from '../plan/pageSetup.ts';
import { plan } from '../plan/plan.ts';
import type { Supplies } from '../plan/types.ts';
import { sayFor } from '../plan/words/say.ts';
import { PLAN_WORDS } from '../plan/words/tables.ts';
import { checkMessage } from '../plan/words/words.ts';
import { type Call, parseCall, USAGE } from './arguments.ts';
import { type Hands, oneThread } from './beside.ts';
import { readLetters, readSupplies } from './supplies.ts';
import { writeWhole } from './write.ts';

/** Where the command speaks: results on `out`, problems on `err`. */
export interface Voice {
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
}

/** Gives who makes the plan of a design and its files; asked before, so that they can get ready. */
type HandsFor = (design: Design) => Hands;

/** Runs the command; gives its exit code. A fault of the tool is told in a sentence, like one of the file. */
export async function run(
  words: readonly string[],
  voice: Voice,
  handsFor: HandsFor = () => oneThread,
): Promise<0 | 1 | 2> {
  try {
    return await carryOut(words, voice, handsFor);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    voice.err(
      `This design stopped the tool: ${why}. That is a fault of the tool, not of the design; nothing was written.`,
    );
    return 2;
  }
}

async function carryOut(words: readonly string[], voice: Voice, handsFor: HandsFor): Promise<0 | 1 | 2> {
  const parsed = parseCall(words);
  if (parsed.ok === 'help') {
    voice.out(USAGE);
    return 0;
  }
  if (!parsed.ok) {
    voice.err(`${parsed.message}\n\n${USAGE}`);
    return 2;
  }
  const { call } = parsed;
  const text = readText(call.design, voice);
  if (text === null) return 2;
  const opened = openDesign(text);
  if (!opened.ok) {
    voice.err(`${call.design} cannot be opened:`);
    for (const problem of opened.problems) voice.err(`  ${problemMessage(problem)}`);
    return 2;
  }
  for (const repair of opened.repairs) voice.err(`repaired: ${repair}`);
  const supplies = readSupplies(opened.design, call.language, call.correction);
  if (call.paper !== null && !supplies.tables.papers.some((p) => p.id === call.paper)) {
    const known = supplies.tables.papers.map((p) => p.id).join(', ');
    voice.err(`--paper: found “${call.paper}”; expected one of ${known}`);
    return 2;
  }
  const design = withLists(withOverrides(opened.design, call), supplies.tables, call, voice);
  return design ? planAndWrite(design, supplies, call, voice, handsFor(design)) : 2;
}

/** The design with the lists of the call; null where one cannot be read, which is told. */
function withLists(design: Design, tables: Tables, { prices, onHand }: Call, voice: Voice): Design | null {
  const lists = [
    [prices, withPrices],
    [onHand, withShelf],
  ] as const;
  return lists.reduce<Design | null>((before, [path, read]) => {
    if (before === null || path === null) return before;
    const text = readText(path, voice);
    if (text === null) return null;
    const found = read({ design: before, tables }, text);
    if (found.ok) return found.design;
    voice.err(`${path} cannot be read:`);
    for (const { line, column, found: cell } of found.problems) {
      voice.err(`  line ${line}, ${column}: found “${cell}”`);
    }
    return null;
  }, design);
}

function readText(path: string, voice: Voice): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    voice.err(`${path} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
    return null;
  }
}

function withOverrides(design: Design, call: Call): Design {
  return {
    ...design,
    pages: {
      ...design.pages,
      paper: call.paper ?? design.pages.paper,
      ...(call.without === null ? {} : { without: [...call.without] }),
    },
    ...(call.unit === null ? {} : { measure: { ...design.measure, unit: call.unit } }),
  };
}

async function planAndWrite(
  design: Design,
  supplies: Supplies,
  { out, testPage }: Pick<Call, 'out' | 'testPage'>,
  voice: Voice,
  { beside, make }: Hands,
): Promise<0 | 1 | 2> {
  const result = plan(design, supplies, { beside });
  const say = sayFor(result);
  const errors = result.checks.filter((c) => c.severity === 'error');
  for (const check of result.checks) {
    const tell = check.severity === 'error' ? voice.err : voice.out;
    tell(`${check.severity}: ${check.code}: ${checkMessage(check, PLAN_WORDS[result.language], say)}`);
  }
  if (errors.length > 0) {
    voice.err(
      `${errors.length === 1 ? 'One error forbids' : `${errors.length} errors forbid`} a plan; nothing was written.`,
    );
    return 1;
  }
  const letters = readLetters(design);
  for (const sentence of unwrittenWords(result, letters.scripts)) voice.out(`warning: letters: ${sentence}`);
  const files = await make(planFiles(result, letters));
  if (testPage) {
    const { tables, language, correction } = supplies;
    const setup = pageSetup({ ...design, papers: tables.papers, language, correction });
    const page = await testPageFile(setup, { date: design.date, language }, letters);
    if (page) files.set('printer-test.pdf', page);
    else
      voice.out('warning: printer-test.pdf is not written: the margins leave no room for it on this paper.');
  }
  try {
    writeWhole(out, files);
  } catch (error) {
    voice.err(`${out} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
    return 2;
  }
  voice.out(PACKET_WORDS[result.language].cover.caution);
  voice.out(`${files.size} files written to ${out}:`);
  for (const [name, bytes] of files) voice.out(`  ${name}  ${bytes.length} bytes`);
  return 0;
}
