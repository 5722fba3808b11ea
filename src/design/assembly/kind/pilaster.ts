import { inches } from '../../../measure/units.ts';
import { type Building, GROUND, type Space } from '../building.ts';
import { FACING, facing } from '../facing.ts';
import { railAt } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { upTo } from '../paneling.ts';
import { type Answers, choice, count, stock } from '../question.ts';
import { row } from '../row.ts';
import { boardNear, moldingOf } from '../stock.ts';

const questions = {
  flutes: count(0, 7, ({ w }) => (w < inches(5) ? 1 : 3)),
  base: stock('flat', ({ w, h }, has) => boardNear(has, w / 2, h / 5)),
  capital: stock('flat', ({ w, h }, has) => boardNear(has, w / 2, h / 5)),
  cap: stock('shaped', (_, has) => moldingOf(has, 'base-cap', 'half-round-20')),
  fluting: choice(['reeds', 'painted'], 'reeds'),
  flute: stock('shaped', (_, has) => moldingOf(has, 'half-round-half', 'half-round-20'), {
    field: 'fluting',
    is: ['reeds'],
  }),
  ...FACING,
};

/**
 * A flat column: a shaft with reeds between a base and a capital, each half as high as the shaft is wide (Doric: base and
 * capital 1/2 of a diameter; Ware, American Vignola). Flutes, which no saw cuts, are painted, or reeds stand for them.
 */
export const pilaster = kindOf({
  usual: { w: inches(6), h: inches(44) },
  questions,
  make: (b, answers) => {
    const { finish } = answers;
    facing(b, 'shaft', answers);
    const all = b.within(GROUND);
    railAt(b, 'base', 'base', all, { stock: answers.base, finish }, 'low');
    railAt(b, 'cap', 'cap', all, { stock: answers.cap, finish }, 'high');
    railAt(b, 'capital', 'capital', all, { stock: answers.capital, finish }, 'high', b.edge('cap', 'low'));
    if (answers.flutes === 0) return;
    const shaft = { ...all, bottom: b.edge('base', 'high'), top: b.edge('capital', 'low') };
    if (answers.fluting === 'painted') {
      painted(b, answers, shaft);
      return;
    }
    row(b, 'flutes', 'reeds', 'up', {
      stock: answers.flute,
      finish,
      spacing: { mode: 'gaps', count: answers.flutes },
    });
    b.fill('flutes', shaft);
  },
});

/** A fillet between two flutes is 1/4 to 1/3 as wide as they are (Rudiments of Ancient Architecture, 1810). */
const FLUTE = 3;
/** Left of the shaft below and above its flutes. Common practice, no source. */
const PLAIN = inches(1);

/** Flutes with a fillet at each side of each: one more of those. */
function painted(b: Building, { flutes, finish, field }: Answers<typeof questions>, shaft: Space): void {
  const roles = upTo(2 * flutes + 1).map((at) => {
    const isFlute = at % 2 === 0;
    const number = Math.ceil(at / 2);
    const role = isFlute ? `flute-${number}` : `fillet-${number}`;
    b.part(
      'painted',
      role,
      { noun: isFlute ? 'flute' : 'fillet', number },
      {
        finish: isFlute ? finish : field,
        // As round at its ends as it is wide.
        ...(isFlute ? { shape: { form: 'corners', cut: 'rounded', size: ROUND } } : {}),
      },
    );
    b.between(role, 'y', shaft.bottom, shaft.top, PLAIN);
    return role;
  });
  b.shared(
    roles,
    roles.map((_, i) => (i % 2 === 0 ? 1 : FLUTE)),
    'x',
    shaft.left,
    shaft.right,
    0,
  );
}

/** More than half of any flute: corners are rounded by half of their side at most. */
const ROUND = inches(12);
