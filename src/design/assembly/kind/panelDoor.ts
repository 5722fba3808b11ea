import { pick } from '../../../list/at.ts';
import { inches, type Mm } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { archFramed, framed } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { knob } from '../knob.ts';
import { lockRailOf, PANEL_MOLDING, PANEL_STYLES, PANELS, type Paneling, paneled } from '../paneling.ts';
import { type Answers, choice, count, length, type Size, stock } from '../question.ts';
import { boardNear, sheetNear, thicknessOf } from '../stock.ts';

/** An arched head rises by a share of half the width at first. Common practice, no source. */
const ARCH_SHARE = 0.5;

const stileOf = ({ w }: Size): Mm => w / 7;
/** No frame takes more than half of what it stands around. */
const mostOf = ({ w }: Size): Mm => Math.max(w, 1) / 4;

/**
 * What is asked of a door whose panels are framed; pairs of doors ask the same. Stiles and top rail 1/7 of the width,
 * bottom rail 1/10 of the height and wider than those, muntins and lock rail 1/2 in less than the stiles (Building Trades
 * Pocketbook, Doors), each by the nearest board.
 */
export const DOOR_QUESTIONS = {
  // Tall doors have two panels over each other, low ones a single row.
  panels: count(1, PANELS.length, ({ w, h }) => (h > 1.2 * w ? 4 : 1)),
  style: choice(PANEL_STYLES, 'flat'),
  stile: stock('flat', (size, has) => boardNear(has, stileOf(size), mostOf(size))),
  bottom: stock('flat', (size, has) => boardNear(has, Math.max(size.h / 10, stileOf(size)), size.h / 4)),
  cross: stock('flat', (size, has) => boardNear(has, stileOf(size) - inches(1 / 2), mostOf(size))),
  molding: PANEL_MOLDING,
  ...FACING,
};

/** The panels that are asked for. */
export const panelsOf = (answers: Answers<typeof DOOR_QUESTIONS>): Paneling => ({
  ...pick(PANELS, answers.panels - 1),
  style: answers.style,
  stock: answers.cross,
  molding: answers.molding,
  sheet: answers.sheet,
  finish: answers.finish,
  fieldFinish: answers.field,
});

/** A door of stiles, rails and panels, with a square or an arched head. */
export const panelDoor = kindOf({
  usual: { w: inches(16), h: inches(40) },
  questions: {
    ...DOOR_QUESTIONS,
    knob: choice(['none', 'left', 'right'], 'right'),
    head: choice(['square', 'arched'], 'square'),
    rise: length(10, 1500, ({ w }) => (w / 2) * ARCH_SHARE, { field: 'head', is: ['arched'] }),
  },
  make: (b, answers) => {
    const panels = panelsOf(answers);
    if (answers.head === 'square') {
      facing(b, 'leaf', answers);
      paneled(b, framed(b, b.within(GROUND), answers), panels);
    } else {
      facing(b, 'leaf', answers, { form: 'arched', rise: answers.rise });
      const head = sheetNear(b.has, thicknessOf(b.has, answers.stile));
      paneled(b, archFramed(b, { ...answers, head }), { ...panels, arched: true });
    }
    if (answers.knob !== 'none') knob(b, `stile-${answers.knob}`, lockRailOf(panels.rows));
  },
});
