import { pick } from '../../../list/at.ts';
import { inches, type Mm } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { FACING, facing, firstFacing } from '../facing.ts';
import { archFramed, framed } from '../framing.ts';
import { kindOf, type Size } from '../kind.ts';
import { knob } from '../knob.ts';
import { lockRailOf, PANEL_STYLES, PANELS, type Paneling, paneled } from '../paneling.ts';
import type { Answers, Supplies } from '../question.ts';
import { boardNear, moldingOf, sheetNear, thicknessOf } from '../stock.ts';

const HEADS = ['square', 'arched'] as const;

/** What is asked of a door whose panels are framed; pairs of doors ask the same. */
export const DOOR_QUESTIONS = {
  panels: { is: 'count', least: 1, most: PANELS.length },
  style: { is: 'choice', of: PANEL_STYLES },
  stile: { is: 'stock', form: 'flat' },
  bottom: { is: 'stock', form: 'flat' },
  cross: { is: 'stock', form: 'flat' },
  molding: { is: 'stock', form: 'shaped', where: { field: 'style', is: ['molded'] } },
  ...FACING,
} as const;

/** An arched head rises by a share of half the width at first. Common practice, no source. */
export const ARCH_SHARE = 0.5;

/**
 * Stiles and top rail 1/7 of the width, bottom rail 1/10 of the height and wider than those, muntins and lock rail
 * 1/2 in less than the stiles (Building Trades Pocketbook, Doors), each by the nearest board.
 */
export function doorStocks({ w, h }: Size, has: Supplies) {
  const stile: Mm = w / 7;
  // No frame takes more than half of what it stands around.
  const most = Math.max(w, 1) / 4;
  const frame = boardNear(has, stile, most);
  return {
    stile: frame,
    bottom: boardNear(has, Math.max(h / 10, stile), h / 4),
    cross: boardNear(has, stile - inches(1 / 2), most),
  };
}

/** The answers by rule for a door of this size. */
export function firstDoor(size: Size, has: Supplies) {
  // Tall doors have two panels over each other, low ones a single row.
  return {
    panels: size.h > 1.2 * size.w ? 4 : 1,
    style: 'flat' as const,
    ...doorStocks(size, has),
    molding: moldingOf(has, 'panel-molding-small', 'half-round-20'),
    ...firstFacing(has),
  };
}

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

const questions = {
  ...DOOR_QUESTIONS,
  knob: { is: 'choice', of: ['none', 'left', 'right'] },
  head: { is: 'choice', of: HEADS },
  rise: { is: 'length', least: 10, most: 1500, where: { field: 'head', is: ['arched'] } },
} as const;

/** A door of stiles, rails and panels, with a square or an arched head. */
export const panelDoor = kindOf<typeof questions>({
  usual: { w: inches(16), h: inches(40) },
  questions,
  first: (size, has) => ({
    ...firstDoor(size, has),
    knob: 'right',
    head: 'square',
    rise: Math.max(10, (size.w / 2) * ARCH_SHARE),
  }),
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
