import { inches } from '../../../measure/units.ts';
import { type Building, GROUND, type Space } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { framed, rail } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { PANEL_MOLDING, PANEL_STYLES, paneled } from '../paneling.ts';
import { type Answers, choice, stock, yes } from '../question.ts';
import { row } from '../row.ts';
import { boardNear, lathNear } from '../stock.ts';

const questions = {
  style: choice(['louvers', ...PANEL_STYLES], 'louvers'),
  cutOut: choice(['none', 'quatrefoil', 'star', 'round'], 'none'),
  middle: yes(({ w, h }) => h > 2 * w),
  stile: stock('flat', ({ w }, has) => boardNear(has, inches(1.5), w / 5)),
  bottom: stock('flat', ({ h }, has) => boardNear(has, inches(2.5), h / 8)),
  slat: stock('flat', (_, has) => lathNear(has, inches(1.375), inches(1 / 4)), {
    field: 'style',
    is: ['louvers'],
  }),
  molding: PANEL_MOLDING,
  ...FACING,
};

/** Between two louvers (shutter makers' figures for slats of 3/8 by 2 in). */
const GAP = inches(3 / 8);

/** A frame with louvers or panels, in one field or two, and with a figure cut out of the upper one. */
export const shutter = kindOf({
  usual: { w: inches(10), h: inches(28) },
  questions,
  make: (b, answers) => {
    facing(b, 'leaf', answers);
    const inner = framed(b, b.within(GROUND), answers);
    const { style } = answers;
    if (style === 'louvers') louvers(b, answers, inner);
    else {
      const rows = answers.middle ? [1, 1] : [1];
      const made = { ...answers, style, columns: 1, rows, stock: answers.stile, fieldFinish: answers.field };
      paneled(b, inner, made);
    }
    if (answers.cutOut === 'none') return;
    b.part('painted', 'cut-out', 'cut-out', { finish: answers.finish, shape: FIGURES[answers.cutOut] });
    const low = answers.middle
      ? b.edge(style === 'louvers' ? 'rail-middle' : 'rail-1', 'high')
      : inner.bottom;
    b.center('cut-out', 'x', inner.left, inner.right);
    b.center('cut-out', 'y', low, inner.top);
    for (const axis of ['x', 'y'] as const) b.size('cut-out', axis, CUT_OUT);
  },
});

/** Small enough for the narrowest shutter of usual stock. Our own choice. */
const CUT_OUT = inches(2);
const FIGURES = {
  quatrefoil: { form: 'quatrefoil' },
  star: { form: 'star', points: 5, waist: 0.4 },
  round: { form: 'round' },
} as const;

function louvers(b: Building, answers: Answers<typeof questions>, inner: Space): void {
  const slats = { stock: answers.slat, finish: answers.finish, most: GAP };
  row(b, 'slats', 'louvers', 'across', slats);
  if (!answers.middle) {
    b.fill('slats', inner);
    return;
  }
  rail(b, 'rail-middle', 'cross-rail', inner, { stock: answers.stile, finish: answers.finish });
  b.center('rail-middle', 'y', inner.bottom, inner.top);
  b.fill('slats', { ...inner, top: b.edge('rail-middle', 'low') });
  row(b, 'slats-2', { noun: 'louvers', number: 2 }, 'across', slats);
  b.fill('slats-2', { ...inner, bottom: b.edge('rail-middle', 'high') });
}
