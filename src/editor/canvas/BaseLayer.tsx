import type { Layer as KonvaLayer } from 'konva/lib/Layer';
import { memo, type RefObject, useLayoutEffect } from 'react';
import { Group, Layer } from 'react-konva';
import type { Face } from '../../bed/face.ts';
import type { Bed, Design } from '../../design/schema.ts';
import type { Photo, PhotoMode } from '../state/photo.ts';
import type { View } from '../state/store.ts';
import { FaceLevels } from './FaceLevels.tsx';
import { PhotoUnder } from './PhotoLayer.tsx';
import type { Palette } from './palette.ts';
import { Surroundings } from './Surroundings.tsx';

interface BaseLayerProps {
  readonly width: number;
  readonly height: number;
  readonly view: View;
  readonly face: Face;
  readonly bed: Bed;
  readonly unit: Design['measure']['unit'];
  readonly palette: Palette;
  readonly photo: Photo | null;
  readonly photoMode: PhotoMode;
  readonly layer: RefObject<KonvaLayer | null>;
}

/**
 * What lies under the parts: grid, bed and photo. It is drawn out of sight, and the layer of the parts takes it
 * from here: every canvas that is seen costs time in each frame, though nothing on it changes.
 */
export const BaseLayer = memo(function BaseLayer(props: BaseLayerProps) {
  const { photo, photoMode, layer, ...around } = props;
  const { view, face, palette } = around;
  useLayoutEffect(() => {
    const canvas = layer.current?.getNativeCanvasElement();
    if (canvas) canvas.style.display = 'none';
  }, [layer]);
  return (
    <Layer ref={layer} listening={false}>
      <Surroundings {...around} />
      <Group x={view.x} y={view.y} scaleX={view.scale} scaleY={-view.scale}>
        <FaceLevels face={face} palette={palette} scale={view.scale} />
        {photo?.shown ? <PhotoUnder photo={photo} mode={photoMode} face={face} /> : null}
      </Group>
    </Layer>
  );
});
