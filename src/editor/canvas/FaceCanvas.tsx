import { useEffect, useMemo, useRef, useState } from 'react';
import { Group, Layer, Stage } from 'react-konva';
import { boxAround, itemsOf } from '../action/movable.ts';
import { keepPhotos } from '../photo/keep.ts';
import { useDesign, useEditor, useFace, useLayout, usePlan, useShadows, useStore } from '../state/hooks.ts';
import { cancelPath } from '../tool/path.ts';
import { useWords } from '../words/t.ts';
import { BaseLayer } from './BaseLayer.tsx';
import { boxesOf } from './boxes.ts';
import { CanvasFields } from './CanvasFields.tsx';
import { DimensionLabels } from './DimensionLabels.tsx';
import { DimensionLines } from './DimensionLines.tsx';
import { dimensionsOf, faceDimensions } from './dimensions.ts';
import { fitToFace } from './fit.ts';
import { HudTag } from './HudTag.tsx';
import { handlesOf } from './handles.ts';
import { memberMarks } from './members.ts';
import { Overlay } from './Overlay.tsx';
import { PartsLayer } from './PartsLayer.tsx';
import { PhotoHandles } from './PhotoLayer.tsx';
import { usePalette } from './palette.ts';
import { holdCanvas } from './place.ts';
import { RULER, Rulers } from './Rulers.tsx';
import './strict.ts';
import { TapeLabels } from './TapeLabels.tsx';
import { usePointers } from './usePointers.ts';
import { useSpaceKey } from './useSpaceKey.ts';

/** A face narrower than this on the screen, in pixels, would be covered by the dimensions of a part. */
const ROOM_FOR_DIMENSIONS = 150;

/** The face to scale. Everything it can do can be done from the part list and the fields too. */
export function FaceCanvas() {
  const t = useWords();
  const store = useStore();
  const holder = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const space = useSpaceKey();
  const pointers = usePointers(store, holder, space);
  const palette = usePalette();
  const design = useDesign();
  const layout = useLayout();
  const face = useFace();
  const { plan } = usePlan();
  const view = useEditor((s) => s.view);
  const fitted = useEditor((s) => s.fitted);
  const look = useEditor((s) => s.look);
  const tool = useEditor((s) => s.tool);
  const selection = useEditor((s) => s.edit.selection);
  const provisional = useEditor((s) => s.provisional);
  const frame = useEditor((s) => s.frame);
  const corner = useEditor((s) => s.corner);
  const member = useEditor((s) => s.member);
  const path = useEditor((s) => s.path);
  const photo = useEditor((s) => s.photo);
  const photoMode = useEditor((s) => s.photoMode);
  const exact = useShadows(look === 'shadow');
  // While something is carried, shadows go with the parts instead.
  const shadows = provisional ? null : exact;

  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    holdCanvas(element);
    const watch = new ResizeObserver(() =>
      setSize({ width: element.clientWidth, height: element.clientHeight }),
    );
    watch.observe(element);
    return () => {
      watch.disconnect();
      holdCanvas(null);
    };
  }, []);

  useEffect(() => {
    if (fitted && size.width > 0) store.setState({ view: fitToFace(face, design.bed, size) });
  }, [fitted, size, face, design.bed, store]);

  useEffect(() => keepPhotos(store), [store]);

  useEffect(() => {
    if (tool !== 'path' && path.length > 0) cancelPath(store);
  }, [tool, path, store]);

  const signs = useMemo(() => new Map(plan?.signs.map((s) => [s.id, s]) ?? []), [plan]);

  const boxes = boxesOf(design, layout, selection);
  const items = new Set(itemsOf(design, selection));
  const [only] = selection;
  const marks = selection.length === 1 && only ? memberMarks(design, layout, only, member) : null;
  const chosen = marks?.chosen ?? null;
  const outlined = layout.parts.filter((p) => items.has(p.part) && (chosen === null || p.id === chosen));
  const onlyBox = selection.length === 1 ? boxes[0] : undefined;
  const single = only !== undefined && onlyBox !== undefined && !design.groups.some((g) => g.id === only);
  const roomy = face.width * view.scale > ROOM_FOR_DIMENSIONS;
  const dimensions = single && roomy ? dimensionsOf(design, face, layout, only, onlyBox) : [];
  const handles = single && !provisional ? handlesOf(design, only, onlyBox, view, corner) : [];
  const overall = faceDimensions(face);
  const drawn = size.width > 0 && size.height > 0;

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
      {drawn ? (
        <Stage width={size.width} height={size.height} listening={false}>
          <BaseLayer
            {...size}
            view={view}
            face={face}
            bed={design.bed}
            unit={design.measure.unit}
            palette={palette}
            photo={photo}
            photoMode={photoMode}
          />
          <PartsLayer
            design={design}
            layout={layout}
            signs={signs}
            view={view}
            look={look}
            palette={palette}
            shadows={shadows}
          />
          <Layer listening={false}>
            {photo?.shown && photoMode !== 'rest' ? (
              <Group x={view.x} y={view.y} scaleX={view.scale} scaleY={-view.scale}>
                <PhotoHandles photo={photo} mode={photoMode} palette={palette} scale={view.scale} />
              </Group>
            ) : null}
            <DimensionLines dimensions={overall} view={view} palette={palette} />
            <Overlay
              view={view}
              palette={palette}
              outlined={outlined}
              boxes={selection.length > 1 || !single ? boxes : (marks?.boxes ?? [])}
              handles={handles}
              guides={provisional?.guides ?? []}
              path={path}
              frame={frame}
            />
            <DimensionLines dimensions={dimensions} view={view} palette={palette} />
            <Rulers
              {...size}
              view={view}
              unit={design.measure.unit}
              palette={palette}
              marked={boxAround(boxes)}
            />
          </Layer>
        </Stage>
      ) : null}
      <div className="canvas-labels" style={{ clipPath: `inset(${RULER}px 0 0 ${RULER}px)` }}>
        <DimensionLabels dimensions={[...overall, ...dimensions]} view={view} measure={design.measure} />
        {look === 'tape' ? <TapeLabels layout={layout} view={view} measure={design.measure} /> : null}
      </div>
      <HudTag />
      <CanvasFields layout={layout} view={view} design={design} />
    </div>
  );
}
