/** The demo's ledger: nine months of bottles bought and used up, played day by day from a seed. */
import { atWall, dateOfDay } from '../../domain/calendar/index.ts'
import { centiOf, type DiscardReason } from '../../domain/shelf/index.ts'
import type { DemoStock } from './shelfData.ts'

const historyDays = 280

/** How many days ago the shelf was last filled up by the bookings. */
const stockedAgo = 4

/** What a step of the demo's jobs drew. */
export interface DemoUse {
  productId: string
  day: number
  at: number
  centi: number
  jobId: string
  position: number
}

export interface DemoLot {
  id: string
  productId: string
  receivedOn: string
  expiresOn: string | null
  openedOn: string | null
  left: number
  supplierId: string
}

export interface DemoMove {
  at: number
  lotId: string
  productId: string
  kind: 'receipt' | 'use' | 'waste'
  centi: number
  why: string | null
  jobId: string | null
  position: number | null
  costMinor: number | null
  discard?: DiscardReason
}

export interface DemoHistory {
  lots: DemoLot[]
  moves: DemoMove[]
}

export interface HistoryInput {
  stocks: readonly DemoStock[]
  today: number
  zone: string
  open: (day: number) => boolean
  uses: readonly DemoUse[]
  /** What is booked and not drawn yet, by product. */
  booked: ReadonlyMap<string, number>
}

/** A small seeded generator (mulberry32): the same now gives the same shelf. */
function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** Plays all products; moves come in the order of time. */
export function demoHistory(input: HistoryInput): DemoHistory {
  const firstJob = Math.min(input.today, ...input.uses.map(use => use.day))
  const parts = input.stocks.map((stock, i) => playProduct(stock, i, firstJob, input))
  const rank = { receipt: 0, use: 1, waste: 2 }
  return {
    lots: parts
      .flatMap(part => part.lots)
      .sort((a, b) =>
        a.receivedOn < b.receivedOn ? -1 : a.receivedOn > b.receivedOn ? 1 : a.id < b.id ? -1 : 1,
      ),
    moves: parts.flatMap(part => part.moves).sort((a, b) => a.at - b.at || rank[a.kind] - rank[b.kind]),
  }
}

function playProduct(stock: DemoStock, index: number, firstJob: number, input: HistoryInput): DemoHistory {
  const random = seeded(101 + index)
  const { productId, supplierId } = stock
  const content = centiOf(stock.measured ?? stock.content)
  const lots: DemoLot[] = []
  const moves: DemoMove[] = []
  const move = (lot: DemoLot, part: Pick<DemoMove, 'at' | 'kind' | 'centi'> & Partial<DemoMove>) => {
    lot.left += part.centi
    moves.push({ lotId: lot.id, productId, why: null, jobId: null, position: null, costMinor: null, ...part })
  }
  const at = (day: number, wall: number) => atWall(dateOfDay(day), wall, input.zone)
  const receive = (day: number, wall: number) => {
    const weeks = 5
    const count = Math.max(1, Math.ceil((stock.timesAWeek * stock.amount * weeks * 100) / content))
    for (let n = 0; n < count; n++) {
      const lot: DemoLot = {
        id: `demo-lot-${index + 1}-${lots.length + 1}`,
        productId,
        receivedOn: dateOfDay(day),
        expiresOn: stock.shelfLifeDays === null ? null : dateOfDay(day + stock.shelfLifeDays),
        openedOn: null,
        left: 0,
        supplierId,
      }
      lots.push(lot)
      move(lot, { at: at(day, wall), kind: 'receipt', centi: content, costMinor: stock.packPriceMinor })
    }
  }
  const onHand = () => lots.reduce((sum, lot) => sum + lot.left, 0)
  const use = (day: number, when: number, centi: number, more: Partial<DemoMove>) => {
    let open = centi
    for (const lot of lots) {
      if (open === 0) return
      const part = Math.min(open, lot.left)
      if (part === 0) continue
      lot.openedOn ??= dateOfDay(day)
      move(lot, { at: when, kind: 'use', centi: -part, ...more })
      open -= part
    }
  }
  // A fortnight's worth is when the owner used to think of ordering.
  const low = centiOf(stock.timesAWeek * stock.amount * 2)
  for (let day = input.today - historyDays; day <= input.today; day++) {
    const own = input.uses.filter(each => each.productId === productId && each.day === day)
    if (!input.open(day) && own.length === 0) continue
    const wanted = own.reduce((sum, each) => sum + each.centi, 0)
    // In these days the shop looks at its bookings: what is wanted soon is there, and a spare container beside it.
    const ahead = day >= input.today - stockedAgo ? (input.booked.get(productId) ?? 0) + 3 * low + content : 0
    while (onHand() < Math.max(low, wanted, ahead)) receive(day, 7 * 60 + 45)
    if (day < firstJob && random() < stock.timesAWeek / 5.7) {
      const spread =
        stock.unit === 'piece'
          ? Math.ceil(stock.amount * (0.5 + random()))
          : stock.amount * (0.8 + 0.45 * random())
      use(day, at(day, 16 * 60 + Math.floor(random() * 90)), Math.min(centiOf(spread), onHand()), {
        why: 'used before the bookings were kept here',
      })
    }
    for (const { at: when, centi, jobId, position } of own) use(day, when, centi, { jobId, position })
  }
  return { lots, moves }
}
