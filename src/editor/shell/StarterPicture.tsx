import { useMemo } from 'react';
import type { Design } from '../../design/schema.ts';
import { PartShapes, pathOf } from '../control/PartShapes.tsx';
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
          <path key={level.id} d={pathOf(level.region)} fillRule="evenodd" fill={`var(--${level.id})`} />
        ))}
        <PartShapes
          parts={layout.parts}
          finishes={design.finishes}
          over={(part) =>
            letters?.get(part.id)?.map(({ finish, region }, i) => (
              <path
                // A sign may show one color twice; its layers have no names.
                // biome-ignore lint/suspicious/noArrayIndexKey: see above
                key={i}
                d={pathOf(region)}
                transform={`translate(${part.box.x} ${part.box.y})`}
                fillRule="evenodd"
                fill={colors.get(finish) ?? 'var(--ink)'}
              />
            ))
          }
        />
      </g>
    </svg>
  );
}
