/** The middle value; of two middle ones their mean. NaN for none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const [low = Number.NaN, high = low] = sorted.slice((sorted.length - 1) >> 1, (sorted.length >> 1) + 1)
  return (low + high) / 2
}
