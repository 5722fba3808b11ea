import { Measure } from '../../control/Measure.tsx';
import { Section } from '../../control/Section.tsx';
import { useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';

/** What follows from the measures: the face, its levels, and the true lengths of the bed's own boards. */
export function BoardList() {
  const t = useWords();
  const { face } = useSettled();
  return (
    <Section title="bed.follows">
      <Figures title="bed.follows" quiet>
        <tr>
          <th scope="row">{t('title.face')}</th>
          <td>
            <Measure mm={face.width} /> × <Measure mm={face.height} />
          </td>
        </tr>
        {face.levels.map((level) => (
          <tr key={level.id}>
            <th scope="row">
              <span className="chip" style={{ background: `var(--${level.id})` }} aria-hidden="true" />
              {t(`level.${level.id}`)}
            </th>
            <td>
              <Measure mm={level.box.w} /> × <Measure mm={level.box.h} />
              {level.z < 0 ? (
                <span className="note">
                  {' '}
                  {t('bed.deep')} <Measure mm={-level.z} />
                </span>
              ) : null}
            </td>
          </tr>
        ))}
        {face.boards.map((board) => (
          <tr key={board.name}>
            <th scope="row">
              {board.count} × {t(`board.${board.name}`)}
            </th>
            <Measure as="td" mm={board.length} />
          </tr>
        ))}
        <tr>
          <th scope="row">{t('bed.proud')}</th>
          <Measure as="td" mm={face.mattressProud} />
        </tr>
      </Figures>
    </Section>
  );
}
