import { type PDFContext, type PDFRef, PngEmbedder } from '@cantoo/pdf-lib';
import type { Raster } from '../../drawing/drawing.ts';
import { readJpeg } from '../../lettering/photo/jpeg.ts';
import { type Png, readPng } from '../../lettering/photo/png.ts';
import { bytesOfBase64 } from '../../plan/base64.ts';

/**
 * Writes a picture of pixels into a file. JPEG and plain PNG are taken over as they are packed (ISO 32000-1, 7.4.8 and
 * 7.4.4.4: the rows of a PNG are filtered as its predictors are); other PNG the library unpacks, to part what is clear.
 */
export async function writeImage(context: PDFContext, ref: PDFRef, raster: Raster): Promise<void> {
  const bytes = bytesOfBase64(raster.data);
  const { width, height } = raster;
  const size = { Type: 'XObject', Subtype: 'Image', Width: width, Height: height } as const;
  if (raster.type === 'image/jpeg') {
    const jpeg = readJpeg(bytes);
    const kind = {
      ColorSpace: jpeg?.components === 1 ? 'DeviceGray' : 'DeviceRGB',
      ...{ BitsPerComponent: 8, Filter: 'DCTDecode' },
    };
    context.assign(ref, context.stream(bytes, { ...size, ...kind }));
    return;
  }
  const png = readPng(bytes);
  if (png && isPlain(png)) {
    const parms = { Predictor: 15, Colors: png.samples, BitsPerComponent: png.depth, Columns: width };
    const kind = { BitsPerComponent: png.depth, Filter: 'FlateDecode', DecodeParms: parms };
    const stream = context.stream(png.packed, { ...size, ...kind, ColorSpace: colorSpaceOf(context, png) });
    context.assign(ref, stream);
    return;
  }
  await (await PngEmbedder.for(bytes)).embedIntoContext(context, ref);
}

const isPlain = ({ colors, interlaced, clears }: Png): boolean => colors <= 3 && !interlaced && !clears;

function colorSpaceOf(context: PDFContext, { colors, palette }: Png) {
  if (colors !== 3) return context.obj(colors === 0 ? 'DeviceGray' : 'DeviceRGB');
  const table = context.register(context.flateStream(palette));
  return context.obj(['Indexed', 'DeviceRGB', palette.length / 3 - 1, table]);
}
