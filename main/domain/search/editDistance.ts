/**
 * Whether two words are at most `most` slips of the hand apart: a letter missing, one too many, another one, or two
 * neighbours swapped, no letter touched twice (the optimal string alignment distance, after F. J. Damerau, "A technique
 * for computer detection and correction of spelling errors", CACM 7 (1964) 171).
 * @returns the distance, 0 to `most`; null where it is more.
 */
export function slipsBetween(a: string, b: string, most: number): number | null {
  if (Math.abs(a.length - b.length) > most) return null
  let older: number[] = []
  let above = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    let least = i
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let cost = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, older[j - 2]! + 1)
      row.push(cost)
      least = Math.min(least, cost)
    }
    if (least > most) return null
    older = above
    above = row
  }
  const slips = above[b.length]!
  return slips <= most ? slips : null
}
