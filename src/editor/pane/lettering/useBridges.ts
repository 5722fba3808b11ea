import { useRef, useState } from 'react';
import type { Lettering } from '../../../design/schema.ts';
import type { LayerStencil } from '../../../lettering/stencil/layers.ts';
import type { Deg } from '../../../measure/units.ts';
import { useWords } from '../../words/t.ts';
import {
  type Movable,
  movableBridges,
  type Settable,
  settableIslands,
  withBridge,
  withoutBridge,
} from './bridges.ts';

type Options = Lettering['stencil'];

/** How a change of bridges is kept: what it is called, and with which earlier one it is undone. */
export interface Kept {
  readonly label?: string;
  readonly merge?: string;
}

export type PlaceBridges = (options: Options, kept: Kept) => void;

/** Setting the bridges of one color's stencil, on the drawing and in the list below it. */
export interface BridgeSetting {
  readonly islands: readonly Settable[];
  readonly movable: readonly Movable[];
  /** Island whose bridges are listed. */
  readonly chosen: number | undefined;
  readonly choose: (island: number) => void;
  readonly place: PlaceBridges;
  /** Adds a bridge, in the widest gap where no direction is given. */
  readonly add: (island: number, angle?: Deg) => void;
  readonly takeAway: (bridge: Movable) => void;
  /** The list: keeps the focus when the bridge that had it is gone. */
  readonly list: React.RefObject<HTMLFieldSetElement | null>;
}

export function useBridges(
  made: LayerStencil | undefined,
  options: Options,
  place: PlaceBridges,
): BridgeSetting {
  const t = useWords();
  const [wanted, choose] = useState(0);
  const list = useRef<HTMLFieldSetElement>(null);
  const islands = made ? settableIslands(made) : [];
  const movable = made ? movableBridges(made, options) : [];
  const chosen = (islands.find((i) => i.island === wanted) ?? islands[0])?.island;
  return {
    islands,
    movable,
    chosen,
    choose,
    place,
    list,
    add: (island, angle) => {
      const next = made && withBridge(options, movable, made.role, island, angle);
      choose(island);
      if (next) place(next, { label: t('did.addBridge', { island: island + 1 }) });
    },
    takeAway: (bridge) => {
      const next = withoutBridge(options, movable, bridge);
      if (!next) return;
      place(next, { label: t('did.removeBridge', { island: bridge.island + 1 }) });
      list.current?.focus();
    },
  };
}
