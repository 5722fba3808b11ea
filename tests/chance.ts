/** Numbers from 0 (included) to 1 (excluded), the same for the same seed on every machine (xorshift of 32 bits). */
export type Chance = () => number;

export function chanceOf(seed: number): Chance {
  let state = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x5bd1e995) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 4294967296;
  };
}

export const pick = <T>(from: readonly T[], chance: Chance): T =>
  from[Math.floor(chance() * from.length)] as T;
