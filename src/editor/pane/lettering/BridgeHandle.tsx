import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import type { Point } from '../../../geometry/shape.ts';
import type { Deg } from '../../../measure/units.ts';
import { type Gesture, strayed, type Touch } from '../../gesture/gesture.ts';
import { carry } from '../../gesture/held.ts';
import { useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { angleFrom, type Movable, wrapped } from './bridges.ts';
import { takesAway } from './takesAway.ts';

interface BridgeHandleProps {
  readonly bridge: Movable;
  readonly center: Point;
  /** The point of the stencil under a pointer. */
  readonly toStencil: (client: { readonly clientX: number; readonly clientY: number }) => Point | null;
  readonly onMove: (angle: Deg, merge: boolean) => void;
  /** Focused or taken hold of. */
  readonly onChoose: () => void;
  readonly onTakeAway: () => void;
}

const TURN: Deg = 5;

/** A grip on a bridge: dragged around its island, turned by arrow keys, or taken away by the Delete key. */
export function BridgeHandle(props: BridgeHandleProps) {
  const { bridge, center, toStencil, onMove, onChoose, onTakeAway } = props;
  const t = useWords();
  const store = useStore();
  const [held, hold] = useState<Deg | null>(null);
  const angle = held ?? bridge.angle;
  const reach = Math.hypot(bridge.at.x - center.x, bridge.at.y - center.y);
  const radians = (angle * Math.PI) / 180;
  const at =
    held === null
      ? bridge.at
      : { x: center.x + reach * Math.cos(radians), y: center.y + reach * Math.sin(radians) };

  // What a drag ends with is asked for at its end: the plan may have come meanwhile.
  const latest = useRef(props);
  latest.current = props;
  const drop = useRef<(() => void) | null>(null);
  useEffect(() => () => drop.current?.(), []);

  const onPointerDown = (e: PointerEvent<SVGGElement>) => {
    if (e.button !== 0) return;
    e.currentTarget.setPointerCapture(e.pointerId);
    e.currentTarget.focus();
    const touchOf = (at: globalThis.PointerEvent): Touch => ({
      px: { x: at.clientX, y: at.clientY },
      face: toStencil(at) ?? bridge.at,
      shift: at.shiftKey,
      free: at.altKey,
      touch: at.pointerType === 'touch',
    });
    const start = touchOf(e.nativeEvent);
    let turned: Deg | null = null;
    const gesture: Gesture = {
      move: ({ px, face }) => {
        if (turned === null && !strayed(start.px, px)) return;
        turned = angleFrom(latest.current.center, face);
        hold(turned);
      },
      end: () => {
        hold(null);
        if (turned !== null && turned !== latest.current.bridge.angle) latest.current.onMove(turned, false);
      },
      cancel: () => hold(null),
    };
    drop.current = carry(store, e.nativeEvent, gesture, touchOf);
  };
  const onKeyDown = (e: KeyboardEvent<SVGGElement>) => {
    if (takesAway(e)) return onTakeAway();
    const turns: Readonly<Record<string, number>> = {
      ArrowLeft: 1,
      ArrowUp: 1,
      ArrowRight: -1,
      ArrowDown: -1,
    };
    const turn = turns[e.key];
    if (turn === undefined) return;
    e.preventDefault();
    e.stopPropagation();
    onMove(wrapped(bridge.angle + turn * TURN * (e.shiftKey ? 3 : 1)), true);
  };

  return (
    <g
      className={held === null ? 'bridge-handle' : 'bridge-handle held'}
      role="slider"
      tabIndex={0}
      aria-label={t('stencil.bridge', { number: bridge.index + 1, island: bridge.island + 1 })}
      aria-valuemin={-180}
      aria-valuemax={180}
      aria-valuenow={Math.round(wrapped(angle))}
      aria-valuetext={`${Math.round(wrapped(angle))}°`}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
      onFocus={onChoose}
    >
      {held === null ? null : <path className="bridge-lead" d={`M${center.x} ${center.y}L${at.x} ${at.y}`} />}
      <path className="bridge-target" d={`M${at.x} ${at.y}h0`} />
      <path className="bridge-dot" d={`M${at.x} ${at.y}h0`} />
    </g>
  );
}
