/** The ledger behind the years' visits: a container is bought when the one in use no longer holds what a step draws. */
import { dateOf } from '../../../main/domain/calendar/index.ts'
import type { Row } from './insertRows.ts'

interface Bought {
  sizeId: string
  centi: number
  costMinor: number
  supplierId: string | null
}

interface Open {
  id: string
  left: number
}

export class PastShelf {
  readonly #bought: ReadonlyMap<string, Bought>
  readonly #zone: string
  readonly #open = new Map<string, Open>()
  #number: number

  constructor(bought: ReadonlyMap<string, Bought>, zone: string, firstNumber: number) {
    this.#bought = bought
    this.#zone = zone
    this.#number = firstNumber
  }

  /** What a step drew at a minute: lots to add, moves to add. Nothing for a product that is not counted. */
  draw(productId: string, centi: number, at: number, step: { jobId: string; position: number }) {
    const lots: Row[] = []
    const moves: Row[] = []
    const bought = this.#bought.get(productId)
    if (!bought) return { lots, moves }
    let rest = centi
    while (rest > 0) {
      let lot = this.#open.get(productId)
      if (!lot || lot.left === 0) {
        lot = { id: `years-lot-${this.#number}`, left: bought.centi }
        this.#open.set(productId, lot)
        const day = dateOf(at, this.#zone)
        lots.push({
          id: lot.id,
          number: this.#number++,
          productId,
          sizeId: bought.sizeId,
          supplierId: bought.supplierId,
          receivedOn: day,
          openedOn: day,
        })
        moves.push(moveRow(lot.id, productId, 'receipt', bought.centi, at, { costMinor: bought.costMinor }))
      }
      const part = Math.min(rest, lot.left)
      lot.left -= part
      rest -= part
      moves.push(moveRow(lot.id, productId, 'use', -part, at, step))
    }
    return { lots, moves }
  }
}

function moveRow(
  lotId: string,
  productId: string,
  kind: string,
  centi: number,
  at: number,
  more: { costMinor?: number; jobId?: string; position?: number },
): Row {
  const { costMinor = null, jobId = null, position = null } = more
  return { lotId, productId, kind, centi, at, by: 'front desk', costMinor, jobId, position }
}
