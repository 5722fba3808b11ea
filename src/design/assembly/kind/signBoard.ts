import { inches, type Mm } from '../../../measure/units.ts';
import { newLettering } from '../../defaults.ts';
import type { PanelShape, Run } from '../../schema.ts';
import { type Building, GROUND } from '../building.ts';
import { FACING } from '../facing.ts';
import { kindOf } from '../kind.ts';
import { type Answers, choice, FIELD, FINISH, length, type Supplies, stock } from '../question.ts';
import { bandNear, moldingOf, sheetAsThick } from '../stock.ts';

const questions = {
  shape: choice(['rectangle', 'arched', 'ribbon', 'shield', 'coved'], 'rectangle'),
  rise: length(5, 1500, ({ w, h }) => Math.min(w / 2, h) / 3, { field: 'shape', is: ['arched'] }),
  ends: length(5, 1500, ({ w, h }) => Math.min(w, h) / 5, { field: 'shape', is: ['ribbon', 'coved'] }),
  point: length(5, 1500, ({ w, h }) => Math.min(w / 4, 0.6 * h), { field: 'shape', is: ['shield'] }),
  framing: choice(['molding', 'band', 'none'], 'molding'),
  frame: stock('shaped', (_, has) => moldingOf(has, 'panel-molding-small', 'half-round-20'), {
    field: 'framing',
    is: ['molding'],
  }),
  band: stock('flat', ({ w, h }, has) => bandNear(has, Math.min(w, h) / BAND), {
    field: 'framing',
    is: ['band'],
  }),
  sheet: FACING.sheet,
  finish: FINISH,
  field: {
    ...FIELD,
    // Letters in the color of their board could not be seen; with a single color the board stays bare.
    first: (...space: Parameters<typeof FIELD.first>) => {
      const field = FIELD.first(...space);
      return field === FINISH.first(...space) ? null : field;
    },
  },
};

type Board = Answers<typeof questions>;

/** A band is as wide as the shorter side of its board over this. Common practice, no source. */
const BAND = 8;
/** Free room between letters and frame. Common practice, no source. */
const AROUND = inches(1 / 2);

/** What letters are painted with: the color of the frame, or else any that the board does not have. */
function inkOf({ finishes }: Supplies, { finish, field }: Board): string {
  const all = [finish, ...finishes.map(({ id }) => id)].filter((id) => id !== null);
  return all.find((id) => id !== field) ?? all[0] ?? 'trim';
}

/** A lettered board in a frame; its letters are as high as that leaves room for. */
export const signBoard = kindOf({
  usual: { w: inches(28), h: inches(8) },
  questions,
  make: (b, answers) => {
    const frame = frameOf(b, answers);
    // Letters fill what is seen between a frame; between molding its width stays free once more. By eye.
    const beside = frame && answers.framing === 'molding' ? b.widthOf(frame.stock) : 0;
    // Below an arch, the outer letters stand half way up it.
    const under = answers.shape === 'arched' ? answers.rise / 2 : 0;
    b.part('sign', GROUND, 'board', {
      shape: shapeOf(answers),
      stock: answers.sheet,
      finish: answers.field,
      lettering: {
        ...newLettering('SIGN', inkOf(b.has, answers)),
        fit: 'both',
        margin: beside + Math.max(AROUND, cutOf(answers)) + under,
      },
    });
    if (!frame) return;
    b.part('run', 'frame', 'frame', { ...frame, finish: answers.finish });
    b.fill('frame', b.within(GROUND));
  },
});

/** How far what is cut off the ends keeps letters from them: into a point they reach to where they are as high as it is. */
function cutOf({ shape, point, ends }: Board): Mm {
  if (shape === 'shield') return point / 3;
  return shape === 'ribbon' || shape === 'coved' ? ends : 0;
}

/**
 * The frame on a board; null where it has none. Molding goes around corners and along one wide arc: of the short and tight
 * arcs of other ends it would be many small pieces, and no saw miters the tails of a ribbon. A flat band follows all: its arcs
 * are sawn from sheet as thick, the tails of a ribbon butted.
 */
function frameOf(b: Building, answers: Board): Pick<Run, 'stock' | 'path' | 'corner'> | null {
  const { shape, framing, frame, band, rise } = answers;
  const corner = 'miter';
  if (framing === 'molding' && shape === 'rectangle')
    return { stock: frame, path: { form: 'frame' }, corner };
  if (framing === 'molding' && shape === 'arched')
    return { stock: frame, path: { form: 'arched', rise }, corner };
  if (framing !== 'band') return null;
  if (shape === 'rectangle') return { stock: band, path: { form: 'frame' }, corner };
  const sheet = sheetAsThick(b.has, band);
  return {
    stock: band,
    path: {
      ...{ form: 'shape', shape: shapeOf(answers) },
      ...(sheet === null ? {} : { band: { stock: sheet, pieces: 1 } }),
    },
    corner: shape === 'ribbon' ? 'butt-up' : corner,
  };
}

function shapeOf({ shape, rise, ends, point }: Board): PanelShape {
  switch (shape) {
    case 'rectangle':
      return { form: shape };
    case 'arched':
      return { form: shape, rise };
    case 'ribbon':
      return { form: shape, notch: ends };
    case 'shield':
      return { form: shape, point };
    case 'coved':
      return { form: 'corners', cut: shape, size: ends };
  }
}
