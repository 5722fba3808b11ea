import { Shape } from 'react-konva';
import { drawPhotoHandles } from '../drawing/drawPhotoHandles.ts';
import type { Palette } from '../drawing/palette.ts';
import { photoHandles } from '../gesture/photo.ts';
import { onFace } from '../photo/placing.ts';
import type { Photo, PhotoMode } from '../state/photo.ts';

interface HandlesProps {
  readonly photo: Photo;
  readonly mode: Exclude<PhotoMode, 'rest'>;
  readonly palette: Palette;
  readonly scale: number;
}

/** Marks and corners of the photo while they are set. */
export function PhotoHandles({ photo, mode, palette, scale }: HandlesProps) {
  const { placing, image } = photo;
  const corners = [
    { x: 0, y: 0 },
    { x: image.width, y: 0 },
    { x: image.width, y: image.height },
    { x: 0, y: image.height },
  ];
  const setting = {
    frame: corners.map((p) => onFace(placing, image, p)),
    points: photoHandles(photo, mode),
    closed: mode === 'straighten',
  };
  return (
    <Shape perfectDrawEnabled={false} sceneFunc={(ctx) => drawPhotoHandles(ctx, setting, palette, scale)} />
  );
}
