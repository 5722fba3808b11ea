import { Typeset } from '../field/Typeset.tsx';
import { useDesign, useLayout } from '../state/hooks.ts';
import { toScreen, type View } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { useLanguage } from '../words/t.ts';

/** Width of a label in pixels, roughly: parts too small for their numbers show them when zoomed in. */
const ROOM = { w: 62, h: 17 } as const;

/** Tape view: for each part its running measures from the left and the lower edge, as they are taped out. */
export function TapeLabels({ view }: { readonly view: View }) {
  useLanguage();
  const layout = useLayout();
  const { measure } = useDesign();
  const parts = layout.parts.filter((p) => {
    const long = Math.max(p.box.w, p.box.h) * view.scale;
    return long > ROOM.w && Math.min(p.box.w, p.box.h) * view.scale > ROOM.h * 0.8;
  });
  return (
    <>
      {parts.slice(0, 160).map((p) => {
        const at = toScreen(view, { x: p.box.x + p.box.w / 2, y: p.box.y + p.box.h / 2 });
        const upright = p.box.w * view.scale < ROOM.w;
        const text = `${lengthText({ measure }, p.box.x)} · ${lengthText({ measure }, p.box.y)}`;
        return (
          <span
            key={p.id}
            className="tape-label"
            style={{
              transform: `translate(-50%, -50%) translate(${at.x}px, ${at.y}px) rotate(${upright ? -90 : 0}deg)`,
            }}
          >
            <Typeset text={text} />
          </span>
        );
      })}
    </>
  );
}
