import { expose, transfer } from 'comlink';

/** Longest side that is kept in memory: more would not be seen at any zoom that helps to draw. */
const LONGEST = 2400;

/** Decodes pictures apart from everything else: whatever is in the file, the page and the plan go on. */
const work = {
  /** A picture for the screen, never larger than is of use. Rejects when it is damaged. */
  async decode(file: Blob): Promise<ImageBitmap> {
    const whole = await createImageBitmap(file);
    const share = LONGEST / Math.max(whole.width, whole.height);
    if (share >= 1) return transfer(whole, [whole]);
    const small = await createImageBitmap(whole, {
      resizeWidth: Math.max(1, Math.round(whole.width * share)),
      resizeHeight: Math.max(1, Math.round(whole.height * share)),
      resizeQuality: 'high',
    });
    whole.close();
    return transfer(small, [small]);
  },
};

export type DecodeWork = typeof work;

expose(work);
