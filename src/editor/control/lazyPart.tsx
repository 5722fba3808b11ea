import { type ComponentType, createElement, lazy } from 'react';

/** A part of the page whose file could not be had; `renew` lets the next rendering ask for it again. */
export class PartMissing extends Error {
  readonly renew: () => void;
  constructor(cause: unknown, renew: () => void) {
    super(cause instanceof Error ? cause.message : String(cause));
    this.renew = renew;
  }
}

/** A component that is loaded when it is first shown. Where its file does not come it throws `PartMissing`. */
export function lazyPart<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  const fresh = (): ComponentType<P> => {
    const part: unknown = lazy(() =>
      load().then(
        (part) => ({ default: part }),
        (error: unknown) => {
          throw new PartMissing(error, () => {
            Part = fresh();
          });
        },
      ),
    );
    return part as ComponentType<P>;
  };
  let Part = fresh();
  return (props: P) => createElement(Part, props);
}
