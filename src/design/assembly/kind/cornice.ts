import { inches } from '../../../measure/units.ts';
import { type Building, GLUED, GROUND } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { railAt } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { type Answers, length, stock, yes } from '../question.ts';
import { row } from '../row.ts';
import { boardNear, lathNear, moldingOf, sheetNear } from '../stock.ts';

const DENTILS = { field: 'dentils', is: [true] };
const BRACKETS = { field: 'brackets', is: [true] };

const questions = {
  dentils: yes(true),
  brackets: yes(false),
  crown: stock('shaped', (_, has) => moldingOf(has, 'base-cap', 'half-round-20')),
  architrave: stock('flat', ({ h }, has) => boardNear(has, h / 4, h / 3)),
  dentil: stock('flat', (_, has) => lathNear(has, inches(3 / 4), inches(3 / 4)), DENTILS),
  bracket: stock('sheet', (_, has) => sheetNear(has, inches(3 / 4)), BRACKETS),
  bracketWidth: length(10, 300, ({ h }) => BRACKET.width * h, BRACKETS),
  ...FACING,
};

type Cornice = Answers<typeof questions>;

/**
 * Blocks under a cornice stand half a diameter apart from middle to middle, with 1/24 of a diameter more between two than
 * they are wide (Ware, American Vignola, of Palladio's), and the architrave is 1/4 of the whole and half a diameter. Brought
 * down over the frieze they are brackets; that their foot is round is our own choice.
 */
const DIAMETER = 1 / 2;
const BRACKET = { width: (DIAMETER * 11) / 48, between: 13 / 11 };

/**
 * A frieze between an architrave and a crown with dentils under it. Architrave 1/4 of the whole (Doric: 1/2, 3/4 and
 * 3/4 of a diameter; Fenn, Design and Tradition). Dentils half as far apart as they are wide, and half as high again
 * (Ware, American Vignola); they and brackets are spread evenly, so that the gap is that or a little less.
 */
export const cornice = kindOf({
  usual: { w: inches(34), h: inches(9) },
  questions,
  make: (b, answers) => {
    const { finish } = answers;
    facing(b, 'frieze', answers);
    const all = b.within(GROUND);
    railAt(b, 'architrave', 'architrave', all, { stock: answers.architrave, finish }, 'low');
    railAt(b, 'crown', 'crown', all, { stock: answers.crown, finish }, 'high');
    if (answers.brackets) brackets(b, answers);
    if (!answers.dentils) return;
    const width = b.widthOf(answers.dentil);
    row(b, 'dentils', 'dentils', 'up', { stock: answers.dentil, finish, most: width / 2 });
    b.between('dentils', 'x', all.left, all.right);
    b.set('dentils', 'y', 'high', b.edge('crown', 'low'));
    b.size('dentils', 'y', width * 1.5);
  },
});

/** A row of them over the frieze, sawn of sheet, up to what is under the crown. */
function brackets(b: Building, { bracket, bracketWidth: width, finish, dentils }: Cornice): void {
  b.part('array', 'brackets', 'brackets', {
    finish,
    fixing: GLUED,
    member: {
      ...{ kind: 'panel', finish, stock: bracket, openings: [], grain: 'up' },
      shape: { form: 'arched', rise: width / 2, toward: 'down' },
    },
    memberSize: { w: width, h: width },
    across: { mode: 'most', count: 1, most: BRACKET.between * width },
    up: null,
  });
  const all = b.within(GROUND);
  b.between('brackets', 'x', all.left, all.right);
  b.between('brackets', 'y', b.edge('architrave', 'high'), b.edge(dentils ? 'dentils' : 'crown', 'low'));
}
