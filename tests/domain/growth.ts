/** How much longer reading sixteen times the text takes, the quickest of a few tries each. */
export function growth(read: (text: string) => void, shape: (size: number) => string, size: number): number {
  const quickestMs = (text: string) => {
    const times = Array.from({ length: 5 }, () => {
      const from = performance.now()
      read(text)
      return performance.now() - from
    })
    return Math.min(...times)
  }
  // Below a fifth of a millisecond the clock decides, not the reading.
  const small = Math.max(0.2, quickestMs(shape(size)))
  return quickestMs(shape(16 * size)) / small
}

/** In proportion it grows sixteenfold, by the square 256 times, by the cube 4,096 times. */
export const IN_PROPORTION = 100
