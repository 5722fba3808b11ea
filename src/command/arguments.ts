import { PACKET_SECTIONS, type PacketSection } from '../design/limits.ts';
import { pick } from '../list/at.ts';
import type { PrinterCorrection } from '../patterns/result.ts';
import { LANGUAGE_TAGS, type Language } from '../plan/words/languages.ts';

/** What the call asks for. */
export interface Call {
  readonly design: string;
  readonly out: string;
  readonly paper: string | null;
  readonly unit: 'in' | 'ft-in' | 'mm' | 'cm' | null;
  readonly language: Language;
  /** What the rulers of the test page read, over their true length. */
  readonly correction: PrinterCorrection;
  /** Lists of prices and of what is on hand, to plan with in place of the design's. */
  readonly prices: string | null;
  readonly onHand: string | null;
  /** Sections that the packet leaves out, in place of what the design says. */
  readonly without: readonly PacketSection[] | null;
  /** Whether a page to measure the printer by is written too. */
  readonly testPage: boolean;
}

export type ParsedCall =
  | { readonly ok: true; readonly call: Call }
  | { readonly ok: false; readonly message: string }
  | { readonly ok: 'help' };

export const USAGE = `Usage: npm run plan -- DESIGN.json --out DIR [--paper NAME] [--unit in|ft-in|mm|cm]
         [--language ${LANGUAGE_TAGS.join('|')}] [--test-page] [--correct ACROSS,UP]
         [--prices FILE.csv] [--on-hand FILE.csv] [--without SECTIONS]

Reads a design file and writes the whole plan into DIR: plan.json, packet.pdf, patterns.pdf, labels.pdf,
one-page.pdf, cut-list.csv, paint.csv, shopping.csv, prices.csv, on-hand.csv, face.svg, room.svg, face-outlines.svg, face.dxf, and one SVG and one DXF for each sign.

  --out DIR      folder to write into; made if it is not there
  --paper NAME   paper for packet and patterns instead of the design's: letter, legal, tabloid, a5 to a0,
                 ansi-c to ansi-e, roll-24in, roll-36in, roll-610, roll-914
  --unit UNIT    unit to show lengths in instead of the design's
  --language TAG language of packet, patterns, steps and messages; without it en
  --test-page    also writes printer-test.pdf: print it at 100%, and measure its two rulers
  --correct ACROSS,UP
                 what the rulers read, in percent of the length that stands beside them, such as 99.2,100.6;
                 patterns are drawn so that this printer prints them true
  --prices FILE.csv   prices in place of the design's: fill in the prices.csv that an earlier run wrote
  --on-hand FILE.csv  what is on hand, in place of what the design says: on-hand.csv in the same way
  --without SECTIONS  what the packet leaves out, in place of what the design says: names with commas between them, of
                 ${PACKET_SECTIONS.slice(0, 9).join(', ')},
                 ${PACKET_SECTIONS.slice(9).join(', ')}; or none. The cover names what is left out
  --help         this text

Exit code 0: done. 1: the design has errors that forbid a plan; each is named, nothing is written.
2: the file or the call is wrong; nothing is written.`;

const UNITS = ['in', 'ft-in', 'mm', 'cm'] as const;

/** Reads the words of the call, without the program's own name. */
export function parseCall(words: readonly string[]): ParsedCall {
  const options: { [name: string]: string } = {};
  const files: string[] = [];
  let testPage = false;
  for (let i = 0; i < words.length; i++) {
    const word = pick(words, i);
    if (word === '--help' || word === '-h') return { ok: 'help' };
    if (word === '--test-page') {
      testPage = true;
      continue;
    }
    if (!word.startsWith('--')) {
      files.push(word);
      continue;
    }
    const [name, given] = word.includes('=') ? splitOnce(word, '=') : [word, words[++i]];
    if (
      ![
        '--out',
        '--paper',
        '--unit',
        '--language',
        '--correct',
        '--prices',
        '--on-hand',
        '--without',
      ].includes(name)
    )
      return wrong(`unknown option ${name}`);
    if (given === undefined || given === '') return wrong(`${name} wants a value`);
    if (Object.hasOwn(options, name)) return wrong(`${name} is given twice`);
    options[name] = given;
  }
  const design = files[0];
  if (design === undefined) return wrong('no design file is named');
  if (files.length > 1) return wrong(`one design file at a time; found ${files.length}: ${files.join(', ')}`);
  const out = options['--out'];
  if (out === undefined) return wrong('--out DIR is missing');
  const unit = options['--unit'];
  if (unit !== undefined && !UNITS.some((u) => u === unit)) {
    return wrong(`--unit: found “${unit}”; expected one of ${UNITS.join(', ')}`);
  }
  const tag = options['--language'] ?? 'en';
  const language = LANGUAGE_TAGS.find((known) => known === tag);
  if (language === undefined) {
    return wrong(`--language: found “${tag}”; expected one of ${LANGUAGE_TAGS.join(', ')}`);
  }
  const correct = options['--correct'];
  const correction = correct === undefined ? { x: 1, y: 1 } : correctionIn(correct);
  if (correction === null) {
    return wrong(
      `--correct: found “${correct}”; expected two percentages from ${LEAST_READ} to ${MOST_READ}, such as 99.2,100.6`,
    );
  }
  const sections = options['--without'];
  const without = sections === undefined ? null : sectionsIn(sections);
  if (typeof without === 'string') {
    return wrong(`--without: found “${without}”; expected none or some of ${PACKET_SECTIONS.join(', ')}`);
  }
  const paper = options['--paper']?.toLowerCase() ?? null;
  return {
    ok: true,
    call: {
      design,
      out,
      paper,
      unit: UNITS.find((u) => u === unit) ?? null,
      language,
      correction,
      prices: options['--prices'] ?? null,
      onHand: options['--on-hand'] ?? null,
      without,
      testPage,
    },
  };
}

/** Percent of true size that a printer may be off by: beyond it the page was scaled, or measured amiss. */
const [LEAST_READ, MOST_READ] = [90, 110];

/** The correction that two readings ask for; null where they are none. */
function correctionIn(words: string): PrinterCorrection | null {
  if (!/^\d+(\.\d+)?,\d+(\.\d+)?$/.test(words)) return null;
  const [x, y] = words.split(',').map(Number);
  const isRead = (percent: number | undefined): percent is number =>
    percent !== undefined && percent >= LEAST_READ && percent <= MOST_READ;
  return isRead(x) && isRead(y) ? { x: x / 100, y: y / 100 } : null;
}

/** Sections by their names; the first that is none. */
function sectionsIn(words: string): PacketSection[] | string {
  const names = words === 'none' ? [] : words.split(',');
  const unknown = names.find((name) => !PACKET_SECTIONS.some((known) => known === name));
  return unknown ?? PACKET_SECTIONS.filter((section) => names.includes(section));
}

const wrong = (message: string): ParsedCall => ({ ok: false, message });

function splitOnce(word: string, mark: string): [string, string] {
  const at = word.indexOf(mark);
  return [word.slice(0, at), word.slice(at + 1)];
}
