/** What an act costs more because it can be taken back: two shops side by side, one of which follows no row. */
import { confirmPlace, holdPlace } from '../../main/services/booking/booking.ts'
import { offers } from '../../main/services/booking/offers.ts'
import { cancelJob } from '../../main/services/job/jobActs.ts'
import { noteJob } from '../../main/services/job/note.ts'
import { saveCustomer } from '../../main/services/records/customers.ts'
import { saveVehicle } from '../../main/services/records/vehicles.ts'
import { benchShop, nowAt } from './benchShop.ts'
import type { Figure } from './run.ts'

const rounds = 150
const goalPercent = 10

type Side = Awaited<ReturnType<typeof side>>

/** Books, notes and calls off in both shops in turn, and sets what the acts cost in one beside what they cost in the other. */
export async function* run(): AsyncGenerator<Figure> {
  const sides = [await side(), await side()] as const
  const [followed, plain] = sides
  try {
    await plain.store.transact({ who: 'bench', at: nowAt }, async tx => {
      for (const table of plain.store.watched.keys())
        for (const suffix of ['new', 'changed', 'gone'])
          await tx.$executeRawUnsafe(`drop trigger temp."follow_${table}_${suffix}"`)
    })
    for (let round = -5; round < rounds; round++)
      for (const one of round % 2 === 0 ? sides : sides.toReversed()) await play(one, round)
    if ((await followed.store.read.actRow.count()) === 0) throw new Error('nothing was followed')
    if ((await plain.store.read.actRow.count()) > 0) throw new Error('something was followed')
    let sum = { followed: 0, plain: 0 }
    for (const [name, times] of followed.times) {
      const ms = { followed: medianOf(times), plain: medianOf(plain.times.get(name)!) }
      sum = { followed: sum.followed + ms.followed, plain: sum.plain + ms.plain }
      yield figure(`${name}, followed`, ms.followed, 'ms', null)
      yield figure(`${name}, not followed`, ms.plain, 'ms', null)
    }
    yield figure('what following costs an act more', 100 * (sum.followed / sum.plain - 1), '%', goalPercent)
  } finally {
    for (const one of sides) await one.close()
  }
}

function figure(name: string, value: number, unit: string, below: number | null): Figure {
  return {
    bench: 'undo',
    case: name,
    value: Math.round(value * 100) / 100,
    unit,
    goal: below === null ? null : `under ${below} %`,
    met: below === null ? null : value < below,
  }
}

function medianOf(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[times.length >> 1]!
}

async function side() {
  const shop = await benchShop({ bays: 4, people: 3, starters: true })
  /** Milliseconds of each act, by its name. */
  return { ...shop, times: new Map<string, number[]>() }
}

/** One customer from the call to the cancellation; the first rounds warm up. */
async function play({ desk, times }: Side, round: number): Promise<void> {
  const timed = async <T>(name: string, does: () => Promise<T>): Promise<T> => {
    const start = performance.now()
    const made = await does()
    if (round >= 0) times.set(name, [...(times.get(name) ?? []), performance.now() - start])
    return made
  }
  const treatments = await desk.store.read.treatment.findMany({ orderBy: { position: 'asc' }, take: 2 })
  const treatmentIds = treatments.map(each => each.id)
  const customer = await timed('customer', () =>
    saveCustomer(desk, { name: `Owner ${round}`, phone: '', note: '', accepted: true }),
  )
  const vehicle = await timed('car', () =>
    saveVehicle(desk, {
      ...{ customerId: customer.id, plate: `BN ${round + 10}`, make: '', model: '', colour: '', note: '' },
      ...{ sizeClass: 'medium' as const, finish: 'gloss' as const, accepted: true },
    }),
  )
  const { soonest } = await offers(desk, { sizeClass: 'medium', condition: 'good', treatmentIds })
  if (!soonest.feasible) throw new Error('no place')
  const { plan } = soonest
  const held = await timed('hold', () =>
    holdPlace(desk, { vehicleId: vehicle.id, condition: 'good', treatmentIds, plan }),
  )
  const { version } = await timed('confirm', () => confirmPlace(desk, held))
  await timed('note', () => noteJob(desk, { id: held.jobId, words: 'asks for a call' }))
  await timed('cancel', () => cancelJob(desk, { id: held.jobId, version, reason: 'sold the car' }))
}
