import { pick } from '../../list/at.ts';
/**
 * Pieces joined by ties that each hold once, however many pieces a tie touches: what a piece hangs on is the
 * least number of ties that have to go before it falls (the least cut, which equals the most ways that share
 * no tie; Menger 1927, Ford and Fulkerson 1956).
 */
export interface Ties {
  /** Pieces are numbered from 0 to `pieces` - 1. */
  readonly pieces: number;
  /** Pieces that each tie touches. */
  readonly ties: readonly (readonly number[])[];
}

export interface LeastCut {
  /** Ties that hold `from` to `to`; counted no further than asked. */
  readonly hold: number;
  /** Pieces still tied to `from` when the cut nearest to it is made. */
  readonly near: (piece: number) => boolean;
  /** Pieces still tied to `to` when the cut nearest to that is made. */
  readonly far: (piece: number) => boolean;
}

/** Nodes: the pieces, then each tie twice, as entered and as left, with room for one way between. */
interface Net {
  readonly heads: number[][];
  readonly to: number[];
  readonly room: number[];
}

/** The least cut between two pieces by augmenting ways; stops looking when `most` are found. */
export function leastCut(ties: Ties, from: number, to: number, most: number): LeastCut {
  const net = netOf(ties);
  let hold = 0;
  while (hold < most && augment(net, from, to)) hold += 1;
  const near = reached(net, from, (arc) => pick(net.room, arc));
  // Against the arcs: an arc's partner stands beside it.
  const far = reached(net, to, (arc) => pick(net.room, arc ^ 1));
  return { hold, near: (piece) => near[piece] !== -2, far: (piece) => far[piece] !== -2 };
}

function netOf({ pieces, ties }: Ties): Net {
  const net: Net = { heads: Array.from({ length: pieces + 2 * ties.length }, () => []), to: [], room: [] };
  const join = (a: number, b: number, room: number) => {
    net.heads[a]?.push(net.to.length);
    net.to.push(b);
    net.room.push(room);
    net.heads[b]?.push(net.to.length);
    net.to.push(a);
    net.room.push(0);
  };
  ties.forEach((touched, i) => {
    const enter = pieces + 2 * i;
    join(enter, enter + 1, 1);
    for (const piece of touched) {
      join(piece, enter, 1);
      join(enter + 1, piece, 1);
    }
  });
  return net;
}

/** Arcs by which each node was reached first: -1 for the start, -2 where there is no way. */
function reached(net: Net, start: number, roomOf: (arc: number) => number): number[] {
  const by = Array<number>(net.heads.length).fill(-2);
  by[start] = -1;
  const queue = [start];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    for (const arc of pick(net.heads, at)) {
      const next = pick(net.to, arc);
      if (by[next] !== -2 || roomOf(arc) <= 0) continue;
      by[next] = arc;
      queue.push(next);
    }
  }
  return by;
}

function augment(net: Net, from: number, to: number): boolean {
  const by = reached(net, from, (arc) => pick(net.room, arc));
  if (by[to] === -2) return false;
  for (let at = to; at !== from; ) {
    const arc = pick(by, at);
    net.room[arc] = pick(net.room, arc) - 1;
    net.room[arc ^ 1] = pick(net.room, arc ^ 1) + 1;
    at = pick(net.to, arc ^ 1);
  }
  return true;
}
