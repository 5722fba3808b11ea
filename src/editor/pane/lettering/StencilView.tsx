import { useId, useRef } from 'react';
import type { Lettering } from '../../../design/schema.ts';
import type { Point } from '../../../geometry/shape.ts';
import type { StencilSet } from '../../../lettering/stencil/layers.ts';
import type { Deg } from '../../../measure/units.ts';
import type { SignPlan } from '../../../plan/types.ts';
import { regionData } from '../../control/svgPath.ts';
import { useWords } from '../../words/t.ts';
import { BridgeHandle } from './BridgeHandle.tsx';
import { angleFrom, withBridgeAt } from './bridges.ts';
import type { BridgeSetting } from './useBridges.ts';

interface StencilViewProps {
  readonly sign: SignPlan;
  readonly made: StencilSet['layers'][number];
  readonly options: Lettering['stencil'];
  readonly set: BridgeSetting;
}

/** So many grips crowd each other unless they are small. */
const MANY = 24;

/**
 * The sheet as it is after cutting, with a grip on every bridge that can be moved. A click on the border of an
 * island adds a bridge there; by keyboard the list below does.
 */
export function StencilView({ sign, made, options, set }: StencilViewProps) {
  const t = useWords();
  const id = useId();
  const plane = useRef<SVGGElement>(null);
  const sheet = sign.stencils?.sheet;
  if (!sheet) return null;
  const { stencil } = made;
  const { movable, islands, chosen } = set;
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
        {islands.map(({ island, border, at }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the list below adds bridges by keyboard
          <path
            key={island}
            className={island === chosen ? 'island-border chosen' : 'island-border'}
            d={regionData([{ outer: border, holes: [] }])}
            onClick={(e) => {
              const p = toStencil(e);
              if (p) set.add(island, angleFrom(at, p));
            }}
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
              onChoose={() => set.choose(m.island)}
              onTakeAway={() => set.takeAway(m)}
              onMove={(angle: Deg, merge) =>
                set.place(withBridgeAt(options, movable, m, angle), {
                  ...(merge ? { merge: `bridge:${sign.id}:${m.role}:${m.island}:${m.index}` } : {}),
                })
              }
            />
          ) : null;
        })}
      </g>
    </svg>
  );
}
