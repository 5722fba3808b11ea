import type { FoldPlan } from '../../../fold/result.ts';
import type { Deg, Mm } from '../../../measure/units.ts';
import { Button } from '../../control/Button.tsx';
import { Measure } from '../../control/Measure.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';

interface Row {
  readonly words: WordKey;
  readonly room: Mm;
  readonly at: Deg | null;
  readonly by: string | null;
}

/** The least room to everything around, at which angle, and what comes that close. */
export function Clearances({ fold, onShow }: { fold: FoldPlan; onShow: (angle: Deg) => void }) {
  const t = useWords();
  const say = useSay();
  const rows: Row[] = [
    { words: 'swing.floor', room: fold.floorClear, at: fold.at.floor, by: fold.closest.floor },
    { words: 'swing.wall', room: fold.wallClear, at: fold.at.wall, by: fold.closest.wall },
    ...(fold.wallBoardClear === null
      ? []
      : [
          {
            words: 'swing.wallBoard' as const,
            room: fold.wallBoardClear,
            at: fold.at.wallBoard,
            by: fold.closest.wallBoard,
          },
        ]),
    { words: 'bed.ceiling', room: fold.ceilingClear, at: fold.at.ceiling, by: fold.closest.ceiling },
    { words: 'swing.space', room: fold.floorSpace, at: fold.at.space, by: fold.closest.space },
  ];
  return (
    <Figures
      title="swing.clear"
      columns={['swing.to', 'swing.room', 'marks.at']}
      quietHeads="all"
      className="clearances"
    >
      {rows.map(({ words, room, at, by }) => (
        <tr key={words}>
          <th scope="row">
            {t(words)}
            {by ? <span className="note">{say.name(by)}</span> : null}
          </th>
          <td className={room < 0 ? 'bad-text' : undefined}>
            <Measure mm={room} />
          </td>
          <td>
            {at === null ? null : (
              <Button
                look="small"
                label={t('swing.showAt', { angle: say.angle(at) })}
                onClick={() => onShow(at)}
              >
                {say.angle(at)}
              </Button>
            )}
          </td>
        </tr>
      ))}
    </Figures>
  );
}
