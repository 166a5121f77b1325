/** Fills a new database with a shop that has worked for years, straight into its tables. README.md says what is in it. */
import Database from 'better-sqlite3'
import { addDays, minuteOf } from '../../../main/domain/calendar/index.ts'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { shopOf } from '../../../main/services/desk/shopView.ts'
import { moneyRules } from '../../../main/services/prices/moneyRules.ts'
import { productsById } from '../../../main/services/setUp/soldTreatments.ts'
import { type MigrationFiles, migrate } from '../../../main/store/migrate.ts'
import { openStore } from '../../../main/store/store.ts'
import { type Random, seeded } from '../simulation/random.ts'
import { demoWeeks, type Visit, weeks } from './demoWeeks.ts'
import { type Row, rowInserter } from './insertRows.ts'
import { PastMoney } from './pastMoney.ts'
import { PastShelf } from './pastShelf.ts'
import { type Coating, carUpkeep, consentRows, type DeadPlace } from './pastUpkeep.ts'
import { inLane, jobId, type Rows, visitRows } from './pastVisits.ts'
import { type Car, type Owner, people } from './people.ts'
import { waitingRows } from './waitingRows.ts'

export interface YearsOptions {
  years: number
  /** Copies of the demo's floor of four bays and three people; 3 is a large shop. */
  lanes: number
  /** Copies the past was worked on; what is more than `lanes` has been put away since. */
  pastLanes: number
  ownersAYear: number
  seed?: number
}

/** The present of every generated shop. */
export const yearsNowAt = minuteOf(Temporal.Instant.from('2026-04-15T15:00:00Z'))

/** The size the figures are asked for: as many owners, cars and jobs a year as a large shop has. */
export const largeShop = { lanes: 3, pastLanes: 9, ownersAYear: 2_000 }

/** The demo's own floor, for tests: every kind of row, and few of each. */
export const smallShop = { lanes: 1, pastLanes: 1, ownersAYear: 100 }

const readingEveryMin = 120

interface Ground {
  db: Database.Database
  insert: (table: string, rows: readonly Row[]) => void
  visits: Visit[]
  zone: string
}

export async function fillYears(file: string, files: MigrationFiles, options: YearsOptions): Promise<void> {
  const { years, lanes, pastLanes, ownersAYear, seed = 1 } = options
  await migrate(file, files)
  const store = await openStore(file, files)
  await fillDemo({ store, now: () => yearsNowAt, who: 'front desk' })
  const ids = (await store.read.product.findMany({ select: { id: true } })).map(each => each.id)
  const products = await productsById(store.read, ids)
  const visits = await demoWeeks(store.read, products, yearsNowAt)
  const shop = await shopOf(store.read)
  const { zone } = shop
  const taxKeys = (await store.read.treatment.findMany()).map(each => [each.id, each.taxKey] as const)
  const money = new PastMoney(await moneyRules(store.read), shop, new Map(taxKeys))
  await store.close()

  const db = new Database(file)
  db.pragma('journal_mode = WAL')
  db.pragma('synchronous = off')
  const random = seeded(seed)
  const ground: Ground = { db, insert: rowInserter(db), visits, zone }
  db.transaction(() => {
    addLanes(ground, lanes, pastLanes)
    const { owners, cars } = people(Math.round(ownersAYear * years), 2026, random)
    ground.insert('Customer', owners as unknown as Row[])
    ground.insert('Vehicle', cars as unknown as Row[])
    ground.insert('Consent', consentRows(owners, yearsNowAt - 100 * 1440))
    const shelf = new PastShelf(boughtAs(db), zone, 10_000)
    const { coatings, number } = addVisits(ground, { years, lanes: pastLanes, cars, shelf, products, money })
    put(ground, money.rows())
    ground.insert('WaitingEntry', waitingRows(cars, lanes, yearsNowAt, zone))
    addUpkeep(ground, { owners, cars, coatings, random, number })
    addReadings(ground, years, lanes)
  })()
  db.pragma('wal_checkpoint(truncate)')
  db.close()
}

/** More bays and people like the demo's, those over `lanes` put away. */
function addLanes({ db, insert }: Ground, lanes: number, pastLanes: number): void {
  const bays = db.prepare('select * from Bay order by position').all() as Row[]
  const crew = db.prepare('select * from CrewMember order by position').all() as Row[]
  for (let lane = 1; lane < pastLanes; lane++)
    for (const [table, rows] of [
      ['Bay', bays],
      ['CrewMember', crew],
    ] as const)
      insert(
        table,
        rows.map((row, i) => ({
          ...row,
          id: inLane(String(row.id), lane),
          name: table === 'Bay' ? `Bay ${lane * rows.length + i + 1}` : `${row.name} ${lane + 1}`,
          position: lane * rows.length + i,
          archivedAt: lane < lanes ? null : yearsNowAt - 30 * 1440,
        })),
      )
}

function boughtAs(db: Database.Database) {
  const rows = db
    .prepare(
      `select s.productId, s.id as sizeId, coalesce(s.measuredCenti, s.labelCenti) as centi, o.supplierId,
        coalesce(json_extract(o.breaks, '$[0].packPriceMinor'), 1000) / coalesce(o.containersPerPack, 1) as costMinor
      from ContainerSize s left join SupplierOffer o on o.sizeId = s.id`,
    )
    .all() as {
    productId: string
    sizeId: string
    centi: number
    supplierId: string | null
    costMinor: number
  }[]
  return new Map(rows.map(({ productId, ...bought }) => [productId, bought]))
}

function put({ insert }: Ground, rows: Rows): void {
  for (const [table, list] of rows) insert(table, list)
}

/** The demo's weeks on every floor, over and over, the oldest first; each time other cars of the same size come. */
function addVisits(
  ground: Ground,
  past: {
    years: number
    lanes: number
    cars: readonly Car[]
    shelf: PastShelf
    products: Parameters<typeof visitRows>[2]['products']
    money: PastMoney
  },
) {
  const { years, lanes, cars, shelf, products, money } = past
  const pools = Map.groupBy(cars, car => `${car.sizeClass} ${car.finish}`)
  const turns = new Map<string, number>()
  const coatings = new Map<string, Coating[]>()
  let number = 1_000
  // Not the last round: the bookings that stand around the present have it to themselves.
  for (let back = Math.floor((years * 365) / (7 * weeks)) + 1; back >= 2; back--)
    for (const visit of [...ground.visits].sort((a, b) => a.job.dropOffAt - b.job.dropOffAt))
      for (let lane = 0; lane < lanes; lane++) {
        const { job } = visit
        const key = `${job.vehicle.sizeClass} ${job.vehicle.finish}`
        const pool = pools.get(key)
        if (!pool) continue
        const turn = turns.get(key) ?? 0
        turns.set(key, turn + 1)
        // A part of the owners came from the first day on, the others one after another.
        const part = 0.3 + 0.7 * (1 - back / (years * 18))
        const known = Math.min(pool.length, Math.ceil(pool.length * Math.max(0.3, part)))
        const car = pool[turn % known]!
        const backBy = (at: number) => addDays(at, -7 * weeks * back, ground.zone) - at
        const shift = backBy(job.dropOffAt)
        // Here over the night of a clock change: moved whole, it would meet those that come after that night.
        if (backBy(job.handoverAt) !== shift) continue
        put(ground, visitRows(visit, { number, shift, lane, car }, { products, shelf, zone: ground.zone }))
        money.add({ jobId: jobId(number), visit, car, handoverAt: job.handoverAt + shift })
        const coat = job.steps.findLast(step => step.stage === 'coat' && step.productId !== null)
        if (coat?.productId) {
          const own = coatings.get(car.id) ?? []
          coatings.set(car.id, own)
          own.push({ jobId: jobId(number), productId: coat.productId, at: job.handoverAt + shift })
        }
        number++
      }
  return { coatings, number }
}

function addUpkeep(
  ground: Ground,
  past: {
    owners: readonly Owner[]
    cars: readonly Car[]
    coatings: ReadonlyMap<string, Coating[]>
    random: Random
    number: number
  },
): void {
  const owners = new Map(past.owners.map(owner => [owner.id, owner]))
  const wash = ground.visits.find(({ job }) => job.treatments.length === 1 && job.steps.length <= 3)
  let { number } = past
  const dead: DeadPlace = (car, at, how) => {
    if (!wash) throw new Error('the demo books no wash')
    const weeksOn = how === 'lapsed' ? 1 : 2
    const shift = Math.ceil((at - wash.job.dropOffAt) / 10_080 + weeksOn) * 10_080
    const { job } = wash
    const id = jobId(number)
    const place = visitRows(
      wash,
      { number: number++, shift, lane: 0, car },
      { products: new Map(), shelf: new PastShelf(new Map(), ground.zone, 0), zone: ground.zone },
    )
    return {
      id,
      dropOffAt: job.dropOffAt + shift,
      handoverAt: job.handoverAt + shift,
      rows: asDead(place, at, how),
    }
  }
  for (const car of past.cars) {
    const coatings = past.coatings.get(car.id)
    const owner = owners.get(car.customerId)
    if (!coatings || !owner) continue
    put(
      ground,
      carUpkeep(car, owner, coatings, { nowAt: yearsNowAt, zone: ground.zone, random: past.random, dead }),
    )
  }
}

/** The rows of a visit that was only held: nothing of it happened, and the desk's lines say what became of the place. */
function asDead(rows: Rows, at: number, how: 'lapsed' | 'released'): Rows {
  const never = { actualStartAt: null, actualEndAt: null }
  const endedAt = at + (how === 'lapsed' ? 10_080 : 1_440)
  const job = {
    status: how === 'lapsed' ? 'lapsed' : 'cancelled',
    arrivedAt: null,
    leftAt: null,
    createdAt: at,
    heldUntilAt: how === 'lapsed' ? endedAt : null,
  }
  return rows.flatMap(([table, list]): Rows => {
    if (table === 'Job') return [[table, list.map(row => ({ ...row, ...job }))]]
    if (table === 'JobStep') return [[table, list.map(row => ({ ...row, ...never }))]]
    if (table === 'AuditLine')
      return [[table, list.slice(0, 2).map((row, i) => (i === 0 ? { ...row, at } : ended(row)))]]
    return table === 'JobTreatment' || table === 'JobStepCrew' ? [[table, list]] : []
  })

  function ended(line: Row): Row {
    return { ...line, at: endedAt, who: how === 'lapsed' ? 'front desk' : 'reminder', act: how, detail: '{}' }
  }
}

/** A reading every two hours in every bay, until a week ago: from then on the demo has its own. */
function addReadings({ db, insert, zone }: Ground, years: number, lanes: number): void {
  const bays = db.prepare('select id from Bay order by position').all() as { id: string }[]
  const fromAt = addDays(yearsNowAt, -Math.floor(years * 365), zone)
  const rows: Row[] = []
  for (const [i, bay] of bays.slice(0, 4 * lanes).entries())
    for (let at = fromAt; at < yearsNowAt - 8 * 1440; at += readingEveryMin)
      rows.push({
        bayId: bay.id,
        at,
        source: 'imported',
        airC: Math.round((20.5 + Math.sin(at / 300) + i / 10) * 10) / 10,
        humidityPercent: Math.round(47 + 4 * Math.sin(at / 917)),
      })
  insert('Reading', rows)
}
