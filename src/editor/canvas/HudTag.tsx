import { Typeset } from '../field/Typeset.tsx';
import { useEditor } from '../state/hooks.ts';

/** The measure that hangs at the pointer while something is dragged; typed digits show here. */
export function HudTag() {
  const hud = useEditor((s) => s.hud);
  if (!hud || (hud.text === '' && hud.typed === null)) return null;
  return (
    <div
      className="hud"
      style={{ transform: `translate(${hud.at.x + 16}px, ${hud.at.y + 18}px)` }}
      aria-hidden="true"
    >
      {hud.typed !== null && hud.typed !== '' ? <b>{hud.typed}</b> : <Typeset text={hud.text} />}
    </div>
  );
}
