import type { Packet } from './leaf.ts';

/** A part of the design with how many of its members are meant; 1 for a part that is no array. */
interface Named {
  readonly name: string;
  readonly count: number;
}

/** Members of one array told together: `Battens (11)` instead of eleven names. Order of first mention. */
export function gathered(packet: Packet, ids: readonly string[]): string[] {
  const members = new Map<string, string[]>();
  for (const id of ids) {
    const base = /^(.*)\[\d+,\d+\]$/.exec(id)?.[1] ?? id;
    const known = members.get(base);
    if (!known) members.set(base, [id]);
    else if (!known.includes(id)) known.push(id);
  }
  const named = [...members].map(([base, own]): Named => {
    const only = own.length === 1 ? own[0] : undefined;
    return { name: packet.say.name(only ?? base), count: own.length };
  });
  const counts = new Map<string, number>();
  for (const { name, count } of named) counts.set(name, (counts.get(name) ?? 0) + count);
  return [...counts].map(([name, count]) => (count === 1 ? name : `${name} (${count})`));
}
