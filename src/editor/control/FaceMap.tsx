import { type CSSProperties, type ReactNode, useId } from 'react';
import type { Face } from '../../bed/face.ts';
import { regionData } from './svgPath.ts';

interface FaceMapProps {
  readonly face: Face;
  readonly label: string;
  readonly description?: string | undefined;
  /** Levels of the bare face drawn in the tones of its wood. */
  readonly wood?: boolean | undefined;
  /** In face coordinates, y up. */
  readonly children: ReactNode;
}

/** The whole face small, for a map of something on it. */
export function FaceMap({ face, label, description, wood, children }: FaceMapProps) {
  const id = useId();
  const margin = Math.max(face.width, face.height) / 80;
  const [width, height] = [face.width + 2 * margin, face.height + 2 * margin];
  return (
    <svg
      className="face-map"
      viewBox={`${-margin} ${-margin} ${width} ${height}`}
      style={{ '--aspect': width / height } as CSSProperties}
      role="img"
      aria-labelledby={`${id}-label`}
      aria-describedby={description ? `${id}-text` : undefined}
    >
      <title id={`${id}-label`}>{label}</title>
      {description ? <desc id={`${id}-text`}>{description}</desc> : null}
      <g transform={`matrix(1 0 0 -1 0 ${face.height})`} fillRule="evenodd">
        {face.levels.map((level) => (
          <path
            key={level.id}
            d={regionData(level.region)}
            className="map-level"
            fill={wood ? `var(--${level.id})` : 'none'}
          />
        ))}
        {children}
      </g>
    </svg>
  );
}
