/**
 * Work that a search may still do, counted in nodes so that the same input always gets the same answer:
 * the core has no clock. Cancelling ends every search at its best plan so far.
 */
export interface Budget {
  /** Takes one node; false when nothing is left or the person cancelled. */
  spend(): boolean;
  /** True once the budget is used up or cancelled. */
  done(): boolean;
  /** A part of what is left, for one step; what the part does not use stays. */
  part(share: number): Budget;
  readonly left: number;
}

/** How many nodes pass between two looks at `cancelled`. */
const LOOK_EVERY = 256;
/** How often in all `spent` is told. */
const TOLD = 50;

/** `spent` is told now and then how many nodes are gone. */
export function budgetOf(
  nodes: number,
  cancelled: () => boolean = () => false,
  spent: (nodes: number) => void = () => {},
): Budget {
  let left = Math.max(0, Math.floor(nodes));
  let stopped = cancelled();
  const step = Math.max(1, Math.floor(nodes / TOLD));
  const take = (): boolean => {
    if (stopped || left <= 0) return false;
    left -= 1;
    if (left % LOOK_EVERY === 0 && cancelled()) stopped = true;
    if (left % step === 0) spent(nodes - left);
    return !stopped;
  };
  const within = (most: number): Budget => {
    let rest = most;
    return {
      spend: () => rest > 0 && take() && rest-- > 0,
      done: () => rest <= 0 || stopped || left <= 0,
      part: (share) => within(Math.floor(Math.min(rest, left) * share)),
      get left() {
        return stopped ? 0 : Math.min(rest, left);
      },
    };
  };
  return within(left);
}
