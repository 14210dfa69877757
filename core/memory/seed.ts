/**
 * A seed of its own for the n-th thing drawn from another seed.
 *
 * The two are mixed, because the generator's first numbers from neighbouring
 * seeds are neighbours too.
 *
 * Units: 32-bit integers.
 * Source: the finaliser of MurmurHash3 (Appleby), a bijection whose every
 *         input bit reaches every output bit; 0x9E3779B9 is 2^32 over the
 *         golden ratio.
 */
export function seedFrom(seed: number, n: number): number {
  let mixed = (seed + Math.imul(n + 1, 0x9e3779b9)) | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}
