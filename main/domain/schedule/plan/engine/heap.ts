/** Variables by how often conflicts ran through them lately, the most active on top. */
export class Heap {
  readonly activity: number[] = []
  private readonly order: number[] = []
  private readonly place: number[] = []
  private step = 1

  /** A variable with minus infinity stays below all others, whatever runs through it. */
  add(x: number, activity: number): void {
    this.activity[x] = activity
    this.place[x] = -1
    this.push(x)
  }

  push(x: number): void {
    if (this.place[x]! >= 0) return
    this.place[x] = this.order.length
    this.order.push(x)
    this.up(this.place[x]!)
  }

  pop(): number | undefined {
    const [top] = this.order
    if (top === undefined) return undefined
    const last = this.order.pop()!
    this.place[top] = -1
    if (this.order.length > 0) {
      this.order[0] = last
      this.place[last] = 0
      this.down(0)
    }
    return top
  }

  bump(x: number): void {
    this.activity[x] = this.activity[x]! + this.step
    if (this.activity[x]! > 1e100) {
      for (let i = 0; i < this.activity.length; i++) this.activity[i] = this.activity[i]! * 1e-100
      this.step *= 1e-100
    }
    if (this.place[x]! >= 0) this.up(this.place[x]!)
  }

  /** Makes what came before count for less. */
  fade(): void {
    this.step /= 0.95
  }

  private up(from: number): void {
    const { order, place, activity } = this
    const x = order[from]!
    let i = from
    while (i > 0) {
      const above = (i - 1) >> 1
      const other = order[above]!
      if (activity[other]! >= activity[x]!) break
      order[i] = other
      place[other] = i
      i = above
    }
    order[i] = x
    place[x] = i
  }

  private down(from: number): void {
    const { order, place, activity } = this
    const x = order[from]!
    let i = from
    for (;;) {
      let below = 2 * i + 1
      if (below >= order.length) break
      if (below + 1 < order.length && activity[order[below + 1]!]! > activity[order[below]!]!) below++
      const other = order[below]!
      if (activity[other]! <= activity[x]!) break
      order[i] = other
      place[other] = i
      i = below
    }
    order[i] = x
    place[x] = i
  }
}
