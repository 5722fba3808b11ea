import { wrap } from 'comlink';
import { newFinish } from '../../../design/defaults.ts';
import type { Edit } from '../../../design/edit/edit.ts';
import { inserting } from '../../../design/edit/make.ts';
import type { Design, Picture } from '../../../design/schema.ts';
import { lightOf } from '../../../drawing/color.ts';
import type { Color } from '../../../drawing/drawing.ts';
import type { OpenedPicture } from '../../../lettering/picture/made.ts';
import type { PictureReason } from '../../../lettering/picture/svg/problem.ts';
import { MOST_SVG, type ReadPicture } from '../../../lettering/picture/svg/svg.ts';
import { freeId } from '../../edit/ids.ts';
import { askOnce } from '../../planning/askOnce.ts';
import { t } from '../../words/t.ts';
import type { PictureWork } from './pictureWorker.ts';

/** A picture that takes longer than this to read is given up. */
const PATIENCE_MS = 15_000;

/** Reads a picture file that the person chose; in words, why it cannot be used when it cannot. */
export async function openPicture(file: File): Promise<OpenedPicture | string> {
  const { name } = file;
  // Four bytes a character at most.
  if (file.size > 4 * MOST_SVG) return reasonWords({ code: 'too-big', most: MOST_SVG }, name);
  const worker = new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' });
  const asked = wrap<PictureWork>(worker).read(await file.text());
  const read = await askOnce<ReadPicture>(worker, asked, PATIENCE_MS);
  if (!read) return t('file.too-slow', { name });
  return read.ok ? read.picture : reasonWords(read.reason, name);
}

function reasonWords(reason: PictureReason, name: string): string {
  const detail = 'what' in reason ? reason.what : 'most' in reason ? `${reason.most / 1e6} MB` : '';
  return t(`picture.${reason.code}`, { name, detail });
}

/** Colors closer than this, as shares of all light, are painted in one finish. */
const ALIKE = 0.12;

function distanceOf(a: Color, b: Color): number {
  const [p, q] = [lightOf(a), lightOf(b)];
  const far = (x: number, y: number) => (Math.cbrt(x) - Math.cbrt(y)) ** 2;
  return Math.sqrt(far(p.r, q.r) + far(p.g, q.g) + far(p.b, q.b));
}

/**
 * The edits that keep a picture in a design: one of a single color is painted as the letters are, of more each in the
 * finish whose color is alike, else in a new one.
 */
export function editsToKeep(
  design: Design,
  opened: OpenedPicture,
  file: string,
): { readonly edits: Edit[]; readonly picture: Picture } {
  const name = file.replace(/\.[^.]*$/, '').slice(0, 190);
  const edits: Edit[] = [];
  const finishes = [...design.finishes];
  const finishOf = (color: Color, number: number): string => {
    const [nearest] = finishes.toSorted((a, b) => distanceOf(a.color, color) - distanceOf(b.color, color));
    if (nearest && (distanceOf(nearest.color, color) < ALIKE || finishes.length >= MOST_FINISHES))
      return nearest.id;
    const taken = new Set(finishes.map(({ id }) => id));
    const item = newFinish(freeId(design, 'finish', taken), `${name} ${number}`, color);
    finishes.push(item);
    edits.push(inserting('finishes', item));
    return item.id;
  };
  const several = opened.colors.length > 1;
  const colors = opened.colors.map((color, i) => ({
    ...color,
    finish: several ? finishOf(color.color, i + 1) : null,
  }));
  const picture: Picture = { id: freeId(design, 'picture'), name, width: opened.width, colors };
  return { edits: [...edits, inserting('pictures', picture)], picture };
}

/** As many as a design holds. */
const MOST_FINISHES = 100;
