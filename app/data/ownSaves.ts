/** The saves that this page made, by their numbers, until it is told of them like any other page. */

const numbers = new Set<number>()

/** More were never told: nobody listens. */
const most = 100

/** From the answer of a call that saved. */
export function noteOwnSaves(header: string | null): void {
  for (const number of header?.split(' ') ?? []) numbers.add(Number(number))
  for (const number of numbers) if (numbers.size > most) numbers.delete(number)
}

/** Whether it was one of this page's; said of each once. */
export function wasOwnSave(number: number): boolean {
  return numbers.delete(number)
}

/** The numbers begin anew with each start of the app. */
export function forgetOwnSaves(): void {
  numbers.clear()
}
