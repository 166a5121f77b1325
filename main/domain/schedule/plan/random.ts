/** Numbers from 0 up to 1 that look random and are the same for the same seed (xorshift, 32 bits). */
export function randomFrom(seed: number): () => number {
  let state = (seed * 2654435761 + 88675123) | 0 || 1
  return () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) / 4294967296
  }
}
