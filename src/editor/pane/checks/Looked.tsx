import { Check as Done } from 'lucide-react';
import { pick } from '../../../list/at.ts';
import type { Plan } from '../../../plan/types.ts';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords, type Values, type WordKey } from '../../words/t.ts';

/** What was checked, with the figures that came out: an empty list of troubles says nothing by itself. */
export function Looked({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const { design, layout, joinery, fold, load, fastening, signs, finish } = plan;
  const driven = fastening.use.reduce((sum, use) => sum + use.count, 0);
  // What stands above as wrong or doubtful gets no tick below.
  const isSound = (...kinds: readonly string[]) =>
    !plan.checks.some((c) => c.severity !== 'note' && kinds.includes(pick(c.code.split('.'), 0)));
  const lines: readonly (readonly [WordKey, Values, boolean])[] = [
    ['checks.did.parts', { count: layout.parts.length, keeps: design.keepClears.length }, isSound('part')],
    [
      'checks.did.rules',
      { count: layout.rules.filter((r) => r.holds).length },
      layout.rules.some((r) => r.holds),
    ],
    [
      'checks.did.pieces',
      { count: joinery.pieces.length },
      joinery.pieces.length > 0 && isSound('piece', 'joint'),
    ],
    [
      'checks.did.swing',
      {
        floor: say.short(fold.floorClear),
        wall: say.short(fold.wallClear),
        ceiling: say.short(fold.ceilingClear),
      },
      fold.hits.length === 0 && isSound('fold'),
    ],
    ['checks.did.load', { added: say.mass(load.added), lift: say.force(load.liftAdded) }, isSound('load')],
    ['checks.did.brads', { count: driven }, driven > 0 && isSound('fastening')],
    ['checks.did.letters', { count: signs.length }, signs.length > 0 && isSound('lettering', 'stencil')],
    ['checks.did.paint', { count: finish.uses.length }, finish.uses.length > 0 && isSound('finish')],
  ];
  return (
    <ul className="looked">
      {lines
        .filter(([, , said]) => said)
        .map(([key, values]) => (
          <li key={key}>
            <Done aria-hidden="true" />
            <Typeset as="span" text={t(key, values)} />
          </li>
        ))}
    </ul>
  );
}
