import type { Piece, PieceEnd } from '../../joinery/piece.ts';
import type { Deg } from '../../measure/units.ts';
import { endName } from '../control/stepName.ts';
import type { PaneSay } from '../control/useSay.ts';
import { useWords } from '../words/t.ts';

/** Both ends side by side, each as the saw is set for it. */
export function EndCards({ piece, say }: { piece: Piece; say: PaneSay }) {
  const t = useWords();
  const [start, end] = piece.ends;
  return (
    <div className="saw-ends">
      <EndCard title={t('wood.startEnd')} name={endName(piece, 'start', t)} end={start} say={say} />
      <EndCard title={t('wood.endEnd')} name={endName(piece, 'end', t)} end={end} say={say} />
    </div>
  );
}

interface EndCardProps {
  readonly title: string;
  readonly name: string;
  readonly end: PieceEnd;
  readonly say: PaneSay;
}

function EndCard({ title, name, end, say }: EndCardProps) {
  const t = useWords();
  const angle = (deg: Deg) => say.angle(Math.abs(deg));
  const turned = end.miter !== 0 || end.bevel !== 0;
  return (
    <section className="saw-end">
      <h3>{title}</h3>
      <p className="saw-cut">{name}</p>
      <dl>
        <div>
          <dt>{t('end.angle')}</dt>
          <dd>{angle(end.miter)}</dd>
        </div>
        <div className={end.bevel === 0 ? 'zero' : undefined}>
          <dt>{t('bench.bevel')}</dt>
          <dd>{angle(end.bevel)}</dd>
        </div>
      </dl>
      {turned ? <p className="note">{t(`bench.long.${end.long}`)}</p> : null}
      {end.second ? (
        <p className="note">
          {t('bench.second', { miter: angle(end.second.miter), bevel: angle(end.second.bevel) })}
        </p>
      ) : null}
      {end.nested ? (
        <p className="note">
          {t('bench.nested', { miter: angle(end.nested.miter), bevel: angle(end.nested.bevel) })}
        </p>
      ) : null}
    </section>
  );
}
