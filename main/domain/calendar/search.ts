/** The first index below `count` that passes, or `count`. What passes must pass from there on: found by halving. */
export function firstIndex(count: number, passes: (index: number) => boolean): number {
  let low = 0
  let high = count
  while (low < high) {
    const middle = (low + high) >>> 1
    if (passes(middle)) high = middle
    else low = middle + 1
  }
  return low
}

/** The index of the first item of a sorted list that passes, or the list's length; found as `firstIndex` does. */
export function firstWhere<T>(sorted: readonly T[], passes: (item: T) => boolean): number {
  return firstIndex(sorted.length, index => passes(sorted[index] as T))
}
