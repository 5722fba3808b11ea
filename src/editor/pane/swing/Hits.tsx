import type { FoldPlan, Hit } from '../../../fold/result.ts';
import type { Deg } from '../../../measure/units.ts';
import { Button } from '../../control/Button.tsx';
import { Measure } from '../../control/Measure.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';

const WHAT: Readonly<Record<Hit['what'], WordKey>> = {
  floor: 'swing.floor',
  wall: 'swing.wall',
  'wall-board': 'swing.wallBoard',
  ceiling: 'bed.ceiling',
  legs: 'bed.legs',
  'side-left': 'swing.left',
  'side-right': 'swing.right',
};

/** What touches on the way, by how much, and from which angle on; what to do about it stands in the checks. */
export function Hits({ fold, onShow }: { fold: FoldPlan; onShow: (angle: Deg) => void }) {
  const t = useWords();
  const say = useSay();
  return (
    <Figures
      title="swing.hits"
      bad
      columns={['swing.by', 'swing.over', 'marks.at']}
      quietHeads="all"
      className="clearances"
    >
      {fold.hits.map((hit) => (
        <tr key={`${hit.part}|${hit.what}`}>
          <th scope="row">
            {say.name(hit.part)}
            <span className="note">{t(WHAT[hit.what])}</span>
          </th>
          <Measure as="td" className="bad-text" mm={hit.over} />
          <td>
            <Button
              look="small"
              label={t('swing.showAt', { angle: say.angle(hit.angle) })}
              onClick={() => onShow(hit.angle)}
            >
              {say.angle(hit.angle)}
            </Button>
          </td>
        </tr>
      ))}
    </Figures>
  );
}
