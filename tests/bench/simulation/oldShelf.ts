/** Fills a migrated database with a shop that has kept its shelf for three years, straight into the tables. */
import Database from 'better-sqlite3'
import { dateOfDay, dayNumber, minuteOf } from '../../../main/domain/calendar/index.ts'
import { seeded } from '../bookedShop.ts'

export const oldShelfNowAt = minuteOf(Temporal.Instant.from('2026-04-15T21:30:00Z'))

const today = dayNumber('2026-04-15')
const years = 3
const lotsEach = 25
const movesEach = 100
const suppliers = 10
const drawsPerJob = 20
const stepsPerJob = 4
/** Part of the uses that steps of jobs ask for; the rest walks in. */
const bookedShare = 0.6

/** Days the shop works, Monday to Saturday, oldest first. */
function workDays(): number[] {
  const days: number[] = []
  for (let day = today - years * 365; day < today; day++) if ((day + 4) % 7 !== 0) days.push(day)
  return days
}

export function fillOldShelf(file: string, products: number): void {
  const random = seeded(11)
  const db = new Database(file)
  db.pragma('journal_mode = WAL')
  db.pragma('synchronous = off')
  const insert = (table: string, columns: string) =>
    db.prepare(
      `insert into "${table}" (${columns}) values (${columns
        .split(',')
        .map(() => '?')
        .join(',')})`,
    )
  const days = workDays()
  // The shop closes at 18:00 in New York: 22:00 UTC, or 23:00 in winter.
  const atOf = (day: number) => day * 1440 + 20 * 60 + Math.floor(random() * 90)
  db.transaction(() => {
    const weekly = [1, 2, 3, 4, 5, 6].map(weekday => ({ weekday, from: 480, to: 1080 }))
    insert('Shop', 'name,zone,currency,weekly,conditionFactors').run(
      'Ashdown Paint Care',
      'America/New_York',
      'USD',
      JSON.stringify(weekly),
      JSON.stringify({ good: 1, worn: 1.3, heavy: 1.6 }),
    )
    insert('Customer', 'id,name').run('c', 'Ines Vale')
    insert('Vehicle', 'id,customerId,plate,sizeClass').run('v', 'c', 'KFR 204', 'medium')
    insert('Bay', 'id,name,position,capabilities').run('b', 'Bay 1', 0, '["clean"]')
    const supplier = insert('Supplier', 'id,name,weekdays,closedOn,leadMeanDays,leadSdDays,carriageMinor')
    for (let s = 0; s < suppliers; s++)
      supplier.run(`s${s}`, `Supplier ${s}`, '[1,2,3,4,5]', '[]', 2 + (s % 5), 1 + (s % 2), 900)
    const size = 10
    const use = writeProducts(insert, products, size, random)
    writePast(insert, { products, days, atOf, random, use })
    writeComing(insert, products, atOf, random)
  })()
  db.pragma('wal_checkpoint(truncate)')
  db.close()
}

type Insert = (table: string, columns: string) => Database.Statement

/** Products with a size and an offer each; returns what one use takes of each, in centi. */
function writeProducts(insert: Insert, products: number, size: number, random: () => number): number[] {
  const product = insert('Product', 'id,name,kind')
  const counted = insert('ShelfProduct', 'productId,unit,place,serviceClass')
  const container = insert('ContainerSize', 'id,productId,label,labelCenti')
  const offer = insert('SupplierOffer', 'id,supplierId,productId,sizeId,breaks,shelfLifeDays')
  return Array.from({ length: products }, (_, p) => {
    const use = 500 + Math.floor(random() * 4_500)
    product.run(`p${p}`, `Product ${p}`, 'polish')
    counted.run(`p${p}`, 'ml', `Cabinet ${p % 8}`, ['vital', 'usual', 'handy'][p % 3])
    container.run(`z${p}`, `p${p}`, `${use * (movesEach - 1)} ml`, use * (movesEach - 1))
    const price = 1_000 + Math.floor(random() * 20_000)
    const breaks = [
      { fromPacks: 1, packPriceMinor: price },
      { fromPacks: size, packPriceMinor: Math.round(price * 0.9) },
    ]
    offer.run(
      `o${p}`,
      `s${p % suppliers}`,
      `p${p}`,
      `z${p}`,
      JSON.stringify(breaks),
      p % 2 === 0 ? 540 : null,
    )
    return use
  })
}

interface Past {
  products: number
  days: number[]
  atOf(day: number): number
  random(): number
  use: number[]
}

/** Lots received one after the other, each used up by the next, and the jobs that the booked part of it served. */
function writePast(insert: Insert, { products, days, atOf, random, use }: Past): void {
  const lot = insert('Lot', 'id,number,productId,sizeId,receivedOn,expiresOn,openedOn,supplierId')
  const move = insert('StockMove', 'lotId,productId,kind,centi,at,by,jobId,position,costMinor')
  const draw = insert(
    'StepDraw',
    'jobId,position,productId,expectedCenti,sdCenti,confirmedAt,actualCenti,how',
  )
  const jobs = jobWriter(insert)
  let number = 0
  const perLot = days.length / lotsEach
  for (let l = 0; l < lotsEach; l++)
    for (let p = 0; p < products; p++) {
      number += 1
      const id = `l${number}`
      const from = Math.floor(l * perLot)
      const first = days[from]!
      const last = l === lotsEach - 1
      const expires = p % 2 === 0 ? dateOfDay(first + 540) : null
      lot.run(id, number, `p${p}`, `z${p}`, dateOfDay(first), expires, dateOfDay(first), `s${p % suppliers}`)
      let left = use[p]! * (movesEach - 1)
      move.run(id, `p${p}`, 'receipt', left, atOf(first) - 600, 'bench', null, null, 9_900)
      for (let m = 1; m < movesEach; m++) {
        const day = days[Math.min(days.length - 1, from + Math.floor((m / movesEach) * perLot))]!
        const wanted = Math.floor(use[p]! * (0.6 + 0.8 * random()))
        // The last bottle still holds a third; the others are emptied to the last drop.
        const centi =
          m === movesEach - 1 && !last ? left : Math.min(left - 1, last ? Math.ceil(wanted * 0.66) : wanted)
        if (centi <= 0) continue
        left -= centi
        const at = atOf(day)
        if (random() < bookedShare) {
          const { jobId, position } = jobs.next(day, at, p)
          move.run(id, `p${p}`, 'use', -centi, at, 'bench', jobId, position, null)
          draw.run(jobId, position, `p${p}`, use[p]!, Math.floor(use[p]! / 6), at, centi, 'proposed')
        } else move.run(id, `p${p}`, 'use', -centi, at, 'bench', null, null, null)
      }
    }
}

/** Jobs handed over long ago, a new one a day and every so many draws. */
function jobWriter(insert: Insert) {
  const job = insert(
    'Job',
    'id,number,customerId,vehicleId,status,dropOffAt,promisedAt,handoverAt,safeAt,advisedAt,createdAt',
  )
  const step = insert(
    'JobStep',
    'id,jobId,position,kind,name,stage,needs,minutes,bayId,startAt,endAt,actualStartAt,actualEndAt',
  )
  let number = 0
  const open = new Map<number, { jobId: string; draws: Set<string> }>()
  const begin = (day: number, at: number) => {
    number += 1
    const jobId = `j${number}`
    const made = at - (1 + (number % 20)) * 1440
    job.run(jobId, number, 'c', 'v', 'handedOver', at - 60, at, at, at, at, made)
    for (let position = 0; position < stepsPerJob; position++)
      step.run(
        `${jobId}-${position}`,
        jobId,
        position,
        'work',
        `Step ${position}`,
        'correct',
        'clean',
        60,
        'b',
        at - 60,
        at,
        at - 60,
        at,
      )
    const found = { jobId, draws: new Set<string>() }
    open.set(day, found)
    return found
  }
  return {
    /** A step of that day that does not draw this product yet. */
    next(day: number, at: number, product: number) {
      const known = open.get(day)
      const size = known?.draws.size ?? 0
      const position = size % stepsPerJob
      const fits = known !== undefined && size < drawsPerJob && !known.draws.has(`${position} ${product}`)
      const found = fits ? known : begin(day, at)
      const place = fits ? position : 0
      found.draws.add(`${place} ${product}`)
      return { jobId: found.jobId, position: place }
    },
  }
}

/** Four weeks of bookings, and twenty steps finished today that nobody has confirmed yet. */
function writeComing(
  insert: Insert,
  products: number,
  atOf: (day: number) => number,
  random: () => number,
): void {
  const job = insert(
    'Job',
    'id,number,customerId,vehicleId,status,dropOffAt,promisedAt,handoverAt,safeAt,advisedAt,createdAt',
  )
  const step = insert(
    'JobStep',
    'id,jobId,position,kind,name,stage,needs,minutes,bayId,startAt,endAt,actualStartAt,actualEndAt',
  )
  const draw = insert('StepDraw', 'jobId,position,productId,expectedCenti,sdCenti')
  for (let n = 0; n < 300; n++) {
    const done = n < 5
    const at = done ? oldShelfNowAt - 120 : atOf(today + 1 + Math.floor(random() * 28))
    const jobId = `coming${n}`
    job.run(
      jobId,
      1_000_000 + n,
      'c',
      'v',
      done ? 'inShop' : 'booked',
      at - 60,
      at,
      at + 1440,
      at,
      at,
      oldShelfNowAt - 1440,
    )
    for (let position = 0; position < stepsPerJob; position++) {
      const ended = done ? at : null
      step.run(
        `${jobId}-${position}`,
        jobId,
        position,
        'work',
        `Step ${position}`,
        'correct',
        'clean',
        60,
        'b',
        at,
        at + 60,
        ended,
        ended,
      )
      for (let d = 0; d < drawsPerJob / stepsPerJob; d++)
        draw.run(jobId, position, `p${(n * 7 + position * 31 + d * 3) % products}`, 2_000, 300)
    }
  }
}
