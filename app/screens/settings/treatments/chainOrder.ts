/** Before which of the steps, drawn at these middles from left to right, something held at `x` would stand. */
export function placeAt(middles: readonly number[], x: number): number {
  return middles.filter(middle => middle < x).length
}

/** Where the step at `from` comes to stand when it is put before the one at `place`. */
export function placeAfterMove(from: number, place: number): number {
  return place > from ? place - 1 : place
}

/** The list with what stood at `from` standing at `to`. */
export function movedTo<T>(list: readonly T[], from: number, to: number): T[] {
  return list.toSpliced(from, 1).toSpliced(to, 0, list[from]!)
}
