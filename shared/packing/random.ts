/** A small seeded generator: the same seed gives the same layout on every machine. */

export type Random = () => number

/** Uniform numbers in [0, 1) from a 32-bit seed (a multiply-and-shift mixer; common practice). */
export const randomFrom = (seed: number): Random => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

export const pickIndex = (random: Random, count: number): number => Math.floor(random() * count)
