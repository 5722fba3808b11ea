import { Fragment, useMemo } from 'react';
import { isBought, isPaint } from '../../design/made.ts';
import type { Design } from '../../design/schema.ts';
import type { Region } from '../../geometry/shape.ts';
import { shownFrom } from '../document/shown.ts';
import type { Letters } from './useLetterPictures.ts';

interface StarterPictureProps {
  readonly design: Design;
  /** The lettering of its signs, once it is drawn. */
  readonly letters: Letters | undefined;
}

/** The face of a design as a small picture, drawn from its own layout. */
export function StarterPicture({ design, letters }: StarterPictureProps) {
  const { face, layout } = useMemo(() => shownFrom(design), [design]);
  const colors = new Map(design.finishes.map((f) => [f.id, f.color]));
  return (
    <svg
      className="first-picture"
      viewBox={`-20 -20 ${face.width + 40} ${face.height + 40}`}
      preserveAspectRatio="xMidYMid meet"
      aria-hidden="true"
    >
      <g transform={`translate(0 ${face.height}) scale(1 -1)`}>
        {face.levels.map((level) => (
          <path key={level.id} d={dOf(level.region)} fillRule="evenodd" fill={`var(--${level.id})`} />
        ))}
        {layout.parts.map((part) => (
          <Fragment key={part.id}>
            <path
              d={dOf(part.region)}
              fillRule="evenodd"
              fill={isBought(part) ? part.spec.color : (colors.get(part.finish ?? '') ?? 'var(--rim)')}
              stroke="var(--outline)"
              strokeWidth={isPaint(part) ? 0 : 3}
            />
            {letters?.get(part.id)?.map(({ finish, region }, i) => (
              <path
                // A sign may show one color twice; its layers have no names.
                // biome-ignore lint/suspicious/noArrayIndexKey: see above
                key={i}
                d={dOf(region)}
                transform={`translate(${part.box.x} ${part.box.y})`}
                fillRule="evenodd"
                fill={colors.get(finish) ?? 'var(--ink)'}
              />
            ))}
          </Fragment>
        ))}
      </g>
    </svg>
  );
}

const dOf = (region: Region): string =>
  region
    .flatMap((p) => [p.outer, ...p.holes])
    .map((ring) => `M${ring.map((q) => `${q.x.toFixed(1)} ${q.y.toFixed(1)}`).join('L')}Z`)
    .join('');
