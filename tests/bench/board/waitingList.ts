/** A hundred callers on the waiting list against a place that came free in a full shop. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { migrationsDir } from '../../../main/hosts/build.ts'
import type { Desk } from '../../../main/services/desk/desk.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { setUpShop } from '../../../main/services/setUp/shopSetUp.ts'
import { waitingList } from '../../../main/services/waiting/waitingList.ts'
import { openStore } from '../../../main/store/store.ts'
import { bookStays, peopleCount } from './bookedStays.ts'

const bayCount = 12
const waiters = 100
const rounds = 9
/** Wednesday 15 April 2026, 10:00 UTC. */
const nowAt = Date.UTC(2026, 3, 15, 10) / 60_000
const sizes = ['small', 'medium', 'large', 'xl']

/** Milliseconds from a booking called off to the whole list answered, in the middle of some rounds. */
export async function waitingMs(): Promise<number> {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-bench-'))
  const store = await openStore(join(dir, 'shop.db'), { dir: migrationsDir })
  try {
    const desk: Desk = { store, now: () => nowAt, who: 'bench' }
    await setUpShop(desk, {
      name: 'Ashdown Paint Care',
      zone: 'UTC',
      currency: 'EUR',
      units: 'metric',
      country: 'US',
      weekly: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: 480, to: 1080 })),
      bays: Array.from({ length: bayCount }, (_, i) => ({
        name: `Bay ${i + 1}`,
        capabilities: ['wet' as const, 'polish' as const, 'clean' as const, 'cure' as const],
      })),
      crew: Array.from({ length: peopleCount }, (_, i) => ({
        name: `Person ${i + 1}`,
        skills: ['wash' as const, 'polish' as const, 'coat' as const],
      })),
      starters: true,
    })
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
    await store.close()
    rmSync(dir, { recursive: true })
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
