import { codeAt } from '../list/at.ts';
import { keptBy } from '../list/keptBy.ts';
import { withoutBlocks } from '../plan/patternRequests.ts';
import type { Plan, SignPlan } from '../plan/types.ts';
import { LANGUAGES } from '../plan/words/languages.ts';
import { sayFor } from '../plan/words/say.ts';
import { PLAN_WORDS } from '../plan/words/tables.ts';
import { checkMessage, stepSentence } from '../plan/words/words.ts';
import { csvOf } from './csv/csv.ts';
import { cutListRows } from './csv/cutList.ts';
import { pricesRows, shelfRows } from './csv/lists.ts';
import { paintRows } from './csv/paint.ts';
import { shoppingRows } from './csv/shopping.ts';
import { faceDrawing, faceOutlines } from './drawings.ts';
import { dxfOf } from './dxf/dxf.ts';
import { planJson } from './json/planJson.ts';
import { labelPages } from './packet/labels.ts';
import { onePage } from './packet/onePage.ts';
import { type PacketBegun, packetOf } from './packet/packet.ts';
import { patternPages } from './packet/patternPages.ts';
import { PACKET_WORDS } from './packet/words/words.ts';
import type { Letters } from './pdf/letters.ts';
import { type PdfPage, pdfOf } from './pdf/pdf.ts';
import { roomDrawing } from './room/room.ts';
import { type Scripts, unwrittenIn } from './script/scripts.ts';
import { signFile } from './signFile.ts';
import { svgOf } from './svg/svg.ts';
import { utf8 } from './utf8.ts';

/** A file of the plan: made when it is asked for, since the PDFs take their time. */
export interface PlanFile {
  readonly name: string;
  readonly type: 'application/json' | 'application/pdf' | 'text/csv' | 'image/svg+xml' | 'image/vnd.dxf';
  readonly make: () => Promise<Uint8Array>;
}

const text = (name: string, type: PlanFile['type'], make: () => string): PlanFile => ({
  name,
  type,
  make: async () => utf8(make()),
});

/**
 * Every file of the contract, in the order that a person wants them. The same plan makes the same bytes. `early` is what
 * is made of the packet.
 */
export function planFiles(plan: Plan, letters: Letters, early?: PacketBegun): PlanFile[] {
  const { name, date } = plan.design;
  const terms = PACKET_WORDS[plan.language];
  const pdf = (stem: string, title: string, pages: () => readonly PdfPage[]): PlanFile => ({
    name: `${stem}.pdf`,
    type: 'application/pdf',
    make: () => pdfOf(pages(), { title: `${name}: ${title}`, date, language: plan.language }, letters),
  });
  const say = sayFor(plan);
  const words = PLAN_WORDS[plan.language];
  const { decimalMark } = LANGUAGES[plan.language].notation;
  const signs = withoutBlocks({ parts: plan.layout.parts, signs: plan.signs });
  const stems = fileStems(signs.map((sign) => sign.id));
  const fileOf = keptBy((sign: SignPlan) => signFile(plan, sign));
  return [
    text('plan.json', 'application/json', () =>
      planJson(plan, {
        check: (check) => checkMessage(check, words, say),
        step: (step) => stepSentence(step, words, say),
      }),
    ),
    { name: 'packet.pdf', type: 'application/pdf', make: () => packetOf(plan, letters, early) },
    pdf('patterns', terms.patternsFile, () => patternPages(plan)),
    pdf('one-page', terms.onePage.title, () => [onePage(plan)]),
    pdf('labels', terms.labels.title, () => labelPages(plan)),
    text('cut-list.csv', 'text/csv', () => csvOf(cutListRows(plan), decimalMark)),
    text('paint.csv', 'text/csv', () => csvOf(paintRows(plan), decimalMark)),
    text('shopping.csv', 'text/csv', () => csvOf(shoppingRows(plan), decimalMark)),
    text('prices.csv', 'text/csv', () => csvOf(pricesRows(plan), decimalMark)),
    text('on-hand.csv', 'text/csv', () => csvOf(shelfRows(plan), decimalMark)),
    text('face.svg', 'image/svg+xml', () => svgOf(faceDrawing(plan))),
    text('room.svg', 'image/svg+xml', () => svgOf(roomDrawing(plan))),
    text('face-outlines.svg', 'image/svg+xml', () => svgOf(faceOutlines(plan))),
    text('face.dxf', 'image/vnd.dxf', () => dxfOf(faceOutlines(plan))),
    ...signs.flatMap((sign, i) => {
      return [
        text(`sign-${stems[i]}.svg`, 'image/svg+xml', () => {
          const { drawing, tolerance } = fileOf(sign);
          return svgOf(drawing, { tolerance });
        }),
        text(`sign-${stems[i]}-mm.dxf`, 'image/vnd.dxf', () => {
          const { machine, tolerance } = fileOf(sign);
          return dxfOf(machine, { tolerance });
        }),
      ];
    }),
  ];
}

/** A sentence, in the plan's language, for each text of the design that the PDFs cannot print as it was typed. */
export function unwrittenWords(plan: Plan, scripts: Scripts): string[] {
  const { fonts: _, photos: __, ...design } = plan.design;
  return unwrittenIn(design, scripts).map(({ text, characters }) =>
    PACKET_WORDS[plan.language].unwritten(characters.map(shownCharacter).join(' '), text),
  );
}

/** The character with its code, since a screen may lack it as well. */
const shownCharacter = (char: string): string =>
  `${char} (U+${codeAt(char).toString(16).toUpperCase().padStart(4, '0')})`;

/** A stem of plain characters for each id, no two alike on any disk, whatever it thinks of capitals. */
function fileStems(ids: readonly string[]): string[] {
  const taken = new Set<string>();
  return ids.map((id) => {
    const plain = id.replace(/[^A-Za-z0-9_-]+/g, '-').replace(/-+$/, '');
    let stem = plain;
    for (let n = 2; taken.has(stem.toLowerCase()); n++) stem = `${plain}-${n}`;
    taken.add(stem.toLowerCase());
    return stem;
  });
}
