import type { Fastened } from '../../../fastening/result.ts';
import { designPart } from '../../../layout/reference.ts';
import type { Plan } from '../../../plan/types.ts';
import { FaceMap } from '../../control/FaceMap.tsx';
import { Measure } from '../../control/Measure.tsx';
import { Section } from '../../control/Section.tsx';
import { regionData } from '../../control/svgPath.ts';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';
import { showParts } from '../facts/showPlace.ts';

/** Every brad and screw: on a map, counted, and part by part. */
export function Fasteners({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const { fastening, tables } = plan;
  if (fastening.parts.length === 0) return <p className="note">{t('brads.none')}</p>;
  const names = new Map([...tables.brads, ...tables.screws].map((f) => [f.id, f.name]));
  return (
    <>
      <Section id="brads-map" title="brads.map">
        <div className="map-pair">
          <BradMap plan={plan} />
          <div className="pane-stack">
            <Figures title="brads.use">
              {fastening.use.map((use) => (
                <tr key={`${use.fastener}|${use.length}`}>
                  <th scope="row">
                    <Typeset text={names.get(use.fastener) ?? use.fastener} />
                    <Measure as="span" className="note block" mm={use.length} />
                  </th>
                  <td>{use.count}</td>
                </tr>
              ))}
            </Figures>
            {fastening.glue > 0 ? (
              <p className="note">{t('brads.glue', { volume: say.volume(fastening.glue) })}</p>
            ) : null}
            <ul className="legend column">
              <li>
                <span className="dot" aria-hidden="true" /> {t('brads.front')}
              </li>
              <li>
                <span className="dot back" aria-hidden="true" /> {t('brads.back')}
              </li>
            </ul>
          </div>
        </div>
      </Section>
      <PartTable plan={plan} />
    </>
  );
}

function BradMap({ plan }: { plan: Plan }) {
  const t = useWords();
  const { face, layout, fastening } = plan;
  const size = Math.max(face.width, face.height) / 150;
  const count = fastening.parts.reduce((sum, p) => sum + p.at.length, 0);
  return (
    <FaceMap face={face} label={t('brads.mapPicture', { count })}>
      {layout.parts.map((p) => (
        <path key={p.id} className="map-part" d={regionData(p.region)} />
      ))}
      {fastening.parts.map((p) => (
        <g key={`${p.part}|${p.how}`} className={p.from === 'back' ? 'map-brads back' : 'map-brads'}>
          {p.at.map(({ x, y }) => (
            <circle key={`${x},${y}`} cx={x} cy={y} r={p.how === 'screws' ? size * 1.5 : size} />
          ))}
        </g>
      ))}
    </FaceMap>
  );
}

interface Row {
  readonly first: Fastened;
  readonly ids: readonly string[];
  readonly count: number;
}

/** Members of a row that are fixed alike are one line. */
function rowsOf(parts: readonly Fastened[]): Row[] {
  const rows = new Map<string, Row>();
  for (const part of parts) {
    const base = designPart(part.part);
    const key = `${base}|${part.how}|${part.fastener}|${part.length}|${part.from}`;
    const known = rows.get(key);
    rows.set(key, {
      first: known?.first ?? part,
      ids: [...(known?.ids ?? []), part.part],
      count: (known?.count ?? 0) + part.at.length,
    });
  }
  return [...rows.values()];
}

function PartTable({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const store = useStore();
  return (
    <Section id="brads-table" title="brads.table">
      <Figures
        title="brads.table"
        quiet
        columns={['brads.part', 'part.fixing', 'size.length', 'shop.count', 'brads.biteOf', 'brads.from']}
        scrolls
        className="brads"
      >
        {rowsOf(plan.fastening.parts).map(({ first, ids, count }) => {
          const base = designPart(first.part);
          const driven = first.length !== null;
          return (
            <tr key={`${first.part}|${first.how}`}>
              <th scope="row">
                <button type="button" className="link" onClick={() => showParts(store, [first.part])}>
                  {ids.length > 1 ? `${ids.length} × ${say.name(base)}` : say.name(first.part)}
                </button>
              </th>
              <td>{t(`fixing.${first.how}`)}</td>
              <td>{driven ? <Measure mm={first.length ?? 0} /> : '–'}</td>
              <td>{count > 0 ? count : '–'}</td>
              <td>{driven ? <Measure mm={first.bite} /> : '–'}</td>
              <td>{count > 0 ? t(first.from === 'back' ? 'brads.back' : 'brads.front') : '–'}</td>
            </tr>
          );
        })}
      </Figures>
    </Section>
  );
}
