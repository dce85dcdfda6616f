/** Spreads a seed over as many bits as a generator needs. */

const MASK = 0xffff_ffff_ffff_ffffn;

/** SplitMix64 (Steele, Lea and Flood 2014): `count` outputs from a seed. */
export function splitMix64(seed: bigint, count: number): readonly bigint[] {
  let state = seed & MASK;
  return Array.from({ length: count }, () => {
    state = (state + 0x9e37_79b9_7f4a_7c15n) & MASK;
    let z = state;
    z = ((z ^ (z >> 30n)) * 0xbf58_476d_1ce4_e5b9n) & MASK;
    z = ((z ^ (z >> 27n)) * 0x94d0_49bb_1331_11ebn) & MASK;
    return z ^ (z >> 31n);
  });
}
