import type { CurrentPlan } from '../../planning/planner.ts';
import type { MadeFile } from './filesWorker.ts';
import { type Making, makeFiles } from './makeFiles.ts';

/** The face in color on a canvas, drawn from the same drawing as the SVG; null where the browser gives none. */
export async function faceOnCanvas(plan: CurrentPlan, making: Making): Promise<HTMLCanvasElement | null> {
  const [svg] = (await makeFiles(plan, ['face.svg'], making)).files;
  if (!svg) return null;
  const scale = making.pixels / Math.max(plan.face.width, plan.face.height);
  const width = Math.round(plan.face.width * scale);
  const height = Math.round(plan.face.height * scale);
  const image = new Image(width, height);
  image.src = URL.createObjectURL(new Blob([svg.bytes as BlobPart], { type: 'image/svg+xml' }));
  try {
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    const context = canvas.getContext('2d');
    if (!context) return null;
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, width, height);
    context.drawImage(image, 0, 0, width, height);
    return canvas;
  } finally {
    URL.revokeObjectURL(image.src);
  }
}

/** What stands on a canvas, as a PNG. */
export async function pngOf(canvas: HTMLCanvasElement, name: string): Promise<MadeFile | null> {
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  return blob && { name, type: 'image/png', bytes: new Uint8Array(await blob.arrayBuffer()) };
}

/** The face in color as a PNG. */
export async function facePicture(plan: CurrentPlan, making: Making): Promise<readonly MadeFile[]> {
  const canvas = await faceOnCanvas(plan, making);
  const file = canvas && (await pngOf(canvas, 'face.png'));
  return file ? [file] : [];
}
