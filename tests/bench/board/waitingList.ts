/** A hundred callers on the waiting list against a place that came free in a full shop. */
import type { Desk } from '../../../main/services/desk/desk.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { waitingList } from '../../../main/services/waiting/waitingList.ts'
import { benchShop, nowAt } from '../benchShop.ts'
import { bookStays, peopleCount } from './bookedStays.ts'

const bayCount = 12
const waiters = 100
const rounds = 9
const sizes = ['small', 'medium', 'large', 'xl']

/** Milliseconds from a booking called off to the whole list answered, in the middle of some rounds. */
export async function waitingMs(): Promise<number> {
  const { store, desk, close } = await benchShop({ bays: bayCount, people: peopleCount, starters: true })
  try {
    await bookStays(desk, 500)
    await listWaiters(desk)
    const times: number[] = []
    const coming = await store.read.job.findMany({
      where: { status: 'booked' },
      orderBy: { dropOffAt: 'asc' },
      take: rounds,
    })
    for (const { id, version } of coming) {
      await cancelJob(desk, { id, version, reason: 'bench' })
      const start = performance.now()
      const { entries } = await waitingList(desk, { freedJobId: id })
      times.push(performance.now() - start)
      if (entries.length !== waiters || !entries.some(entry => entry.fits))
        throw new Error('nobody was tried')
    }
    return times.sort((a, b) => a - b)[times.length >> 1]!
  } finally {
    await close()
  }
}

/** Every size, one or two treatments, within two days to four weeks, a third of them on some weekdays only. */
async function listWaiters(desk: Desk): Promise<void> {
  const treatments = await desk.store.read.treatment.findMany({ orderBy: { position: 'asc' } })
  await desk.store.transact({ who: 'bench', at: nowAt }, async tx => {
    for (let i = 0; i < waiters; i++) {
      const owner = { id: `waits-${i}`, name: `Caller ${i}` }
      await tx.customer.create({ data: owner })
      const vehicleId = `car-waits-${i}`
      await tx.vehicle.create({
        data: { id: vehicleId, customerId: owner.id, plate: `WT ${i}`, sizeClass: sizes[i % 4]! },
      })
      await tx.waitingEntry.create({
        data: {
          customerId: owner.id,
          vehicleId,
          treatmentIds: [treatments[i % treatments.length]!.id],
          condition: i % 5 === 0 ? 'worn' : 'good',
          fromOn: '2026-04-15',
          toOn: Temporal.PlainDate.from('2026-04-17')
            .add({ days: (i * 7) % 26 })
            .toString(),
          weekdays: i % 3 === 0 ? [2, 4] : [],
          createdAt: nowAt - i,
        },
      })
    }
  })
}
