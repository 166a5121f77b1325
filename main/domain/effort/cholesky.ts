/** Systems of equations with a positive definite matrix, by Cholesky's factor. */

type Matrix = readonly (readonly number[])[]

/** The lower triangle L with L Lᵀ = `matrix`. */
export function cholesky(matrix: Matrix): number[][] {
  const lower: number[][] = []
  for (const [i, row] of matrix.entries()) {
    const own: number[] = []
    for (let j = 0; j <= i; j++) {
      const other = j === i ? own : lower[j]!
      let left = row[j]!
      for (let k = 0; k < j; k++) left -= own[k]! * other[k]!
      own.push(j === i ? Math.sqrt(left) : left / other[j]!)
    }
    lower.push(own)
  }
  return lower
}

/** x of L x = b. */
export function solveLower(lower: Matrix, b: readonly number[]): number[] {
  const x: number[] = []
  for (const [i, row] of lower.entries()) {
    let left = b[i]!
    for (let k = 0; k < i; k++) left -= row[k]! * x[k]!
    x.push(left / row[i]!)
  }
  return x
}

/** x of L Lᵀ x = b. */
export function solveBoth(lower: Matrix, b: readonly number[]): number[] {
  const x = solveLower(lower, b)
  for (let i = x.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < x.length; k++) x[i]! -= lower[k]![i]! * x[k]!
    x[i]! /= lower[i]![i]!
  }
  return x
}
