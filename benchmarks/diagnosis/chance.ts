/**
 * Seeded randomness of the simulated bench: xoshiro128** (Blackman and Vigna, 2018; 128 bits of state), its state filled
 * by splitmix32 from a seed and a stream number, so that module 4711 is the same whichever were drawn before it.
 */

function splitmix32(start: number): () => number {
  let state = start | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let z = state ^ (state >>> 16);
    z = Math.imul(z, 0x21f0aaad);
    z ^= z >>> 15;
    z = Math.imul(z, 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
}

const rotateLeft = (x: number, k: number): number => (x << k) | (x >>> (32 - k));

export class Chance {
  private readonly state: Uint32Array;

  constructor(seed: number, stream: number) {
    const mixed = splitmix32(splitmix32(seed)() ^ Math.imul(stream + 1, 0x85ebca6b));
    this.state = Uint32Array.from([mixed(), mixed(), mixed(), mixed() | 1]);
  }

  private word(): number {
    const s = this.state;
    const [s0, s1, s2, s3] = s as unknown as [number, number, number, number];
    const result = Math.imul(rotateLeft(Math.imul(s1, 5), 7), 9) >>> 0;
    const t = s1 << 9;
    const c2 = s2 ^ s0;
    const c3 = s3 ^ s1;
    s[1] = s1 ^ c2;
    s[0] = s0 ^ c3;
    s[2] = c2 ^ t;
    s[3] = rotateLeft(c3, 11);
    return result;
  }

  /** 0 up to but not including 1, on 53 bits. */
  next(): number {
    return ((this.word() >>> 5) * 67108864 + (this.word() >>> 6)) / 9007199254740992;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** Even on a logarithmic scale. */
  logBetween(low: number, high: number): number {
    return Math.exp(this.between(Math.log(low), Math.log(high)));
  }

  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  happens(probability: number): boolean {
    return this.next() < probability;
  }

  /** Normal with mean 0 (Box and Muller). */
  normal(standardDeviation: number): number {
    const radius = Math.sqrt(-2 * Math.log(1 - this.next()));
    return standardDeviation * radius * Math.cos(2 * Math.PI * this.next());
  }

  pick<T>(items: readonly T[]): T {
    return items[Math.floor(this.next() * items.length)] as T;
  }

  /** One of the items, by weight. */
  weighted<T>(items: readonly (readonly [T, number])[]): T {
    let left = this.next() * items.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [item, weight] of items) {
      left -= weight;
      if (left < 0) return item;
    }
    return (items[items.length - 1] as readonly [T, number])[0];
  }
}
