/** Counts the turns everybody else gets while some work goes on. */
export async function turnsDuring(work: Promise<unknown>): Promise<number> {
  let turns = 0
  let over = false
  const count = () => {
    if (over) return
    turns++
    setImmediate(count)
  }
  setImmediate(count)
  await work.finally(() => {
    over = true
  })
  return turns
}
