import { useEditor } from '../state/hooks.ts';

/** The measure that is typed while something is dragged; what the pointer says is drawn with the drawing. */
export function HudTag() {
  const hud = useEditor((s) => (s.hud?.typed ? s.hud : null));
  if (!hud) return null;
  return (
    <div
      className="hud"
      style={{ transform: `translate(${hud.at.x + 16}px, ${hud.at.y + 18}px)` }}
      aria-hidden="true"
    >
      <b>{hud.typed}</b>
    </div>
  );
}
