import { useId } from 'react';
import type { LoadPlan } from '../../../load/result.ts';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';

const WIDTH = 400;
const HEIGHT = 190;
const PLOT = { left: 8, right: 104, top: 16, bottom: 28 };
const ANGLES = [0, 15, 30, 45, 60, 75, 90];

/** The moment about the pivot from stowed to lowered: what the face adds beside the bare bed. */
export function MomentCurve({ load }: { load: LoadPlan }) {
  const t = useWords();
  const say = useSay();
  const id = useId();
  const { curve } = load;
  const values = curve.flatMap((c) => [c.added, c.bare]);
  const low = Math.min(0, ...values);
  const high = Math.max(1, ...values);
  const x = (angle: number) => PLOT.left + (angle / 90) * (WIDTH - PLOT.left - PLOT.right);
  const y = (moment: number) =>
    PLOT.top + ((high - moment) / (high - low)) * (HEIGHT - PLOT.top - PLOT.bottom);
  const line = (of: 'added' | 'bare') =>
    `M${curve.map((c) => `${x(c.angle).toFixed(1)} ${y(c[of]).toFixed(1)}`).join('L')}`;
  const first = curve[0];
  const last = curve.at(-1);
  if (!first || !last) return null;
  const label = (of: 'added' | 'bare') => {
    const at = y(last[of]);
    // The two labels stand apart where the curves end close together.
    const other = y(last[of === 'added' ? 'bare' : 'added']);
    return Math.abs(at - other) < 34 ? at + (at >= other ? 17 : -17) : at;
  };
  return (
    <figure className="moment">
      <figcaption className="section-sub">{t('load.curve')}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-labelledby={id}>
        <title id={id}>
          {t('load.curvePicture', {
            bareStowed: say.moment(first.bare),
            bareLowered: say.moment(last.bare),
            addedStowed: say.moment(first.added),
            addedLowered: say.moment(last.added),
          })}
        </title>
        {ANGLES.map((angle) => (
          <g key={angle}>
            <line
              className="moment-grid"
              x1={x(angle)}
              x2={x(angle)}
              y1={PLOT.top}
              y2={HEIGHT - PLOT.bottom}
            />
            <text
              className="moment-text"
              x={x(angle)}
              y={HEIGHT - 8}
              textAnchor={angle === 0 ? 'start' : 'middle'}
            >
              {angle}°
            </text>
          </g>
        ))}
        <line className="moment-zero" x1={x(0)} x2={x(90)} y1={y(0)} y2={y(0)} />
        <path className="moment-bare" d={line('bare')} />
        <path className="moment-added" d={line('added')} />
        {(['bare', 'added'] as const).map((of) => (
          <text key={of} className={`moment-label ${of}`} x={x(90) + 8} y={label(of)}>
            <tspan>{t(of === 'added' ? 'load.seriesAdded' : 'load.seriesBare')}</tspan>
            <tspan x={x(90) + 8} dy="1.25em">
              {say.moment(last[of])}
            </tspan>
          </text>
        ))}
      </svg>
      <details className="more">
        <summary>{t('load.table')}</summary>
        <Figures
          title="load.curve"
          quiet
          columns={['load.angle', 'load.seriesAdded', 'load.seriesBare', 'load.liftAdded']}
        >
          {curve
            .filter((c) => ANGLES.includes(c.angle))
            .map((c) => (
              <tr key={c.angle}>
                <th scope="row">{say.angle(c.angle)}</th>
                <td>{say.moment(c.added)}</td>
                <td>{say.moment(c.bare)}</td>
                <td>{say.force(c.liftAdded)}</td>
              </tr>
            ))}
        </Figures>
      </details>
    </figure>
  );
}
