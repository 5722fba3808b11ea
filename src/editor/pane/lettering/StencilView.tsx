import { useId, useRef } from 'react';
import type { Lettering } from '../../../design/schema.ts';
import type { Point } from '../../../geometry/shape.ts';
import type { StencilSet } from '../../../lettering/stencil/layers.ts';
import type { Deg } from '../../../measure/units.ts';
import type { SignPlan } from '../../../plan/types.ts';
import { regionData } from '../../drawing/svgPath.ts';
import { useWords } from '../../words/t.ts';
import { BridgeHandle } from './BridgeHandle.tsx';
import { movableBridges, withBridgeAt } from './bridges.ts';

interface StencilViewProps {
  readonly sign: SignPlan;
  readonly made: StencilSet['layers'][number];
  readonly options: Lettering['stencil'];
  readonly onPlace: (options: Lettering['stencil'], merge: string | null) => void;
}

/** So many grips crowd each other unless they are small. */
const MANY = 24;

/** The sheet as it is after cutting, with a grip on every bridge that can be moved. */
export function StencilView({ sign, made, options, onPlace }: StencilViewProps) {
  const t = useWords();
  const id = useId();
  const plane = useRef<SVGGElement>(null);
  const sheet = sign.stencils?.sheet;
  if (!sheet) return null;
  const { stencil } = made;
  const movable = movableBridges(made, options);
  const toStencil = (client: { readonly clientX: number; readonly clientY: number }): Point | null => {
    const matrix = plane.current?.getScreenCTM();
    if (!matrix) return null;
    const p = new DOMPoint(client.clientX, client.clientY).matrixTransform(matrix.inverse());
    return { x: p.x, y: p.y };
  };
  const margin = Math.max(sheet.w, sheet.h) / 100;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing with controls in it is a group
    <svg
      className={movable.length > MANY ? 'stencil-view many' : 'stencil-view'}
      role="group"
      viewBox={`${sheet.x - margin} ${-(sheet.y + sheet.h) - margin} ${sheet.w + 2 * margin} ${sheet.h + 2 * margin}`}
      aria-labelledby={id}
    >
      <title id={id}>
        {t('letters.stencilPicture', {
          text: sign.lettered.text,
          bridges: stencil.bridges.length,
          islands: stencil.islands.length,
        })}
      </title>
      <g ref={plane} transform="scale(1 -1)" fillRule="evenodd">
        <path className="stencil-sheet" d={regionData(stencil.sheet)} />
        {stencil.bridges.map((b) => (
          <rect
            key={`${b.at.x},${b.at.y}`}
            className="stencil-bridge"
            x={-b.length / 2}
            y={-b.width / 2}
            width={b.length}
            height={b.width}
            transform={`translate(${b.at.x} ${b.at.y}) rotate(${b.angle})`}
          />
        ))}
        {movable.map((m) => {
          const center = stencil.islands[m.island]?.at;
          return center ? (
            <BridgeHandle
              key={`${m.island}|${m.index}`}
              bridge={m}
              center={center}
              toStencil={toStencil}
              onMove={(angle: Deg, merge) =>
                onPlace(
                  withBridgeAt(options, movable, m, angle),
                  merge ? `bridge:${sign.id}:${m.role}:${m.island}:${m.index}` : null,
                )
              }
            />
          ) : null;
        })}
      </g>
    </svg>
  );
}
