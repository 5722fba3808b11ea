import type { ReactNode } from 'react';
import { placeInMiddle } from '../../gesture/draw.ts';
import { startPlacing } from '../../gesture/place.ts';
import { useEditor, useStore } from '../../state/hooks.ts';
import type { BuiltTool, OwnTool } from '../../state/tools.ts';

interface BuiltCardProps {
  readonly tool: BuiltTool | OwnTool;
  readonly name: string;
  /** Its picture. */
  readonly children: ReactNode;
}

/** One of the shelf: a pointer carries it onto the face or takes it in hand, a key places one of usual size. */
export function BuiltCard({ tool, name, children }: BuiltCardProps) {
  const store = useStore();
  const inHand = useEditor((s) => s.tool);
  return (
    <button
      type="button"
      data-stop=""
      className="kind built"
      aria-pressed={inHand === tool}
      onPointerDown={(e) => startPlacing(store, tool, undefined, e.nativeEvent)}
      onClick={(e) => {
        if (e.detail === 0) placeInMiddle(store, tool);
      }}
    >
      {children}
      <span>{name}</span>
    </button>
  );
}
