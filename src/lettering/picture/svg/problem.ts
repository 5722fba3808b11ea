/** Why a picture is not opened. */
export type PictureReason =
  | { readonly code: 'too-big'; readonly most: number }
  | { readonly code: 'not-svg' }
  /** Scripts, events, links, embedded files, entities, styles from elsewhere: what a picture to cut has no use for. */
  | { readonly code: 'unsafe'; readonly what: string }
  /** What would look otherwise than it would be made. */
  | { readonly code: 'unsupported'; readonly what: string }
  | { readonly code: 'bad-value'; readonly what: string }
  | { readonly code: 'too-much' }
  | { readonly code: 'nothing' };

/** Thrown while a picture is read, and caught at its door (`svg.ts`). */
export class PictureProblem extends Error {
  readonly reason: PictureReason;
  constructor(reason: PictureReason) {
    super(reason.code);
    this.reason = reason;
  }
}

export const unsafe = (what: string): never => {
  throw new PictureProblem({ code: 'unsafe', what: what.slice(0, 60) });
};
export const unsupported = (what: string): never => {
  throw new PictureProblem({ code: 'unsupported', what: what.slice(0, 60) });
};
export const badValue = (what: string): never => {
  throw new PictureProblem({ code: 'bad-value', what: what.slice(0, 60) });
};
export const tooMuch = (): never => {
  throw new PictureProblem({ code: 'too-much' });
};
