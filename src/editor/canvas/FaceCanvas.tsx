import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { Group, Stage } from 'react-konva';
import { rulerPainter } from '../drawing/rulers.ts';
import { sawnBy } from '../drawing/sawn.ts';
import { sceneOf } from '../drawing/scene.ts';
import { cancelPath } from '../gesture/path.ts';
import { keepPhotos } from '../photo/keep.ts';
import { fitToFace } from '../state/fit.ts';
import { useEditor, usePlan, useShadows, useStore } from '../state/hooks.ts';
import { shownOn } from '../state/place.ts';
import { isCarrying, shownNow } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import { CanvasFields } from './CanvasFields.tsx';
import { DimensionLabels } from './DimensionLabels.tsx';
import { OverLayer } from './OverLayer.tsx';
import { PartsLayer } from './PartsLayer.tsx';
import { PhotoHandles } from './PhotoHandles.tsx';
import { ReleaseBar } from './ReleaseBar.tsx';
import { usePalette } from './usePalette.ts';
import './strict.ts';
import { RULER } from '../drawing/ticks.ts';
import { TapeLabels } from './TapeLabels.tsx';
import { usePointers } from './usePointers.ts';
import { useSpaceKey } from './useSpaceKey.ts';

/** The face to scale. Everything it can do can be done from the part list and the fields too. */
export function FaceCanvas() {
  const t = useWords();
  const store = useStore();
  const holder = useRef<HTMLDivElement>(null);
  const size = useSizeOf(holder);
  const space = useSpaceKey();
  const pointers = usePointers(store, holder, space);
  const palette = usePalette();
  const rulers = useRef(rulerPainter());
  const carrying = useEditor(isCarrying);
  // While something is carried the layers draw from the store; nothing here is rendered again until it is put down.
  const shown = useEditor((s) => (isCarrying(s) ? s.edit.shown : shownNow(s)));
  const { design } = shown;
  const { plan } = usePlan();
  const view = useEditor((s) => s.view);
  const fitted = useEditor((s) => s.fitted);
  const look = useEditor((s) => s.look);
  const tool = useEditor((s) => s.tool);
  const selection = useEditor((s) => s.edit.selection);
  const corner = useEditor((s) => s.corner);
  const opening = useEditor((s) => s.opening);
  const member = useEditor((s) => s.member);
  const pathBegun = useEditor((s) => s.path.length > 0);
  const photo = useEditor((s) => s.photo);
  const photoMode = useEditor((s) => s.photoMode);
  const exact = useShadows(look === 'shadow');
  // While something is carried, shadows go with the parts instead.
  const shadows = carrying ? null : exact;
  const scene = useMemo(
    () => sceneOf(shown, { selection, view, corner, opening, member, carrying }),
    [shown, selection, view, corner, opening, member, carrying],
  );
  const { face, layout } = scene;

  useEffect(() => {
    if (fitted && size.width > 0 && holder.current)
      store.setState({ view: fitToFace(face, design.bed, shownOn(holder.current)) });
  }, [fitted, size, face, design.bed, store]);

  useEffect(() => keepPhotos(store), [store]);

  useEffect(() => {
    if (tool !== 'path' && pathBegun) cancelPath(store);
  }, [tool, pathBegun, store]);

  const signs = useMemo(() => new Map(plan?.signs.map((s) => [s.id, s]) ?? []), [plan]);
  const sawn = useMemo(() => sawnBy(plan), [plan]);

  return (
    <div
      ref={holder}
      className="canvas"
      data-tool={tool}
      data-scale={view.scale}
      data-left={view.x}
      data-base={view.y}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes keys (arrows, delete) as an application does
      tabIndex={0}
      role="application"
      aria-label={t('canvas.label', { name: design.name })}
      aria-describedby="canvas-keys"
      {...pointers}
    >
      <p id="canvas-keys" className="hidden-text">
        {t('canvas.keys')}
      </p>
      {size.width > 0 && size.height > 0 ? (
        <Stage width={size.width} height={size.height} listening={false}>
          <PartsLayer
            {...size}
            shown={shown}
            signs={signs}
            sawn={sawn}
            view={view}
            look={look}
            palette={palette}
            shadows={shadows}
            rulers={rulers.current}
            photo={photo}
            photoMode={photoMode}
          />
          <OverLayer {...size} view={view} palette={palette} rulers={rulers.current}>
            {photo?.shown && photoMode !== 'rest' ? (
              <Group x={view.x} y={view.y} scaleX={view.scale} scaleY={-view.scale}>
                <PhotoHandles photo={photo} mode={photoMode} palette={palette} scale={view.scale} />
              </Group>
            ) : null}
          </OverLayer>
        </Stage>
      ) : null}
      <div className="canvas-labels" style={{ clipPath: `inset(${RULER}px 0 0 ${RULER}px)` }}>
        <DimensionLabels
          dimensions={carrying ? scene.overall : [...scene.overall, ...scene.dimensions]}
          handles={scene.handles}
          view={view}
          design={design}
          layout={layout}
        />
        {look === 'tape' ? <TapeLabels view={view} /> : null}
      </div>
      <HudTag />
      <ReleaseBar />
      <CanvasFields shown={shown} view={view} />
    </div>
  );
}

/** The size of what holds the drawing, which the store is told; nothing before it stands on the page. */
function useSizeOf(holder: RefObject<HTMLDivElement | null>) {
  const store = useStore();
  const [size, setSize] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    store.setState({ canvas: element });
    const watch = new ResizeObserver(() =>
      setSize({ width: element.clientWidth, height: element.clientHeight }),
    );
    watch.observe(element);
    return () => {
      watch.disconnect();
      store.setState({ canvas: null });
    };
  }, [holder, store]);
  return size;
}

/** The measure that is typed while something is dragged; what the pointer says is drawn with the drawing. */
function HudTag() {
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
