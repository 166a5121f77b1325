import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Refusal } from '../../main/domain/refusal.ts'
import type { Capability } from '../../main/domain/shop/index.ts'
import { moveStay } from '../../main/services/board/boardMove.ts'
import { confirmPlace, holdPlace } from '../../main/services/booking/booking.ts'
import { offers } from '../../main/services/booking/offers.ts'
import { getJob } from '../../main/services/job/jobView.ts'
import { brokenLaws } from './floorLaws.ts'
import { makeDesk, type TestDesk } from './makeDesk.ts'
import { type TestShop, testShop } from './testShop.ts'

const bay = fc.constantFrom<Capability[]>(['wet'], ['polish'], ['clean', 'cure'], ['polish', 'clean', 'cure'])
const off = fc.record({
  who: fc.nat(20),
  fromH: fc.integer({ min: 0, max: 120 }),
  hours: fc.integer({ min: 1, max: 30 }),
})
const act = fc.oneof(
  fc.record({
    act: fc.constant('book' as const),
    treatments: fc.uniqueArray(fc.constantFrom('wash', 'correction', 'twoLayers', 'topped'), {
      minLength: 1,
      maxLength: 3,
    }),
    kind: fc.constantFrom('soonest' as const, 'leastBlocked' as const, 'askedDay' as const),
    inDays: fc.nat(5),
    vehicle: fc.nat(3),
  }),
  fc.record({
    act: fc.constant('drag' as const),
    which: fc.nat(20),
    stay: fc.nat(3),
    bay: fc.nat(20),
    steps: fc.integer({ min: -60, max: 120 }),
  }),
)

async function does(
  desk: TestDesk,
  shop: TestShop,
  one: typeof act extends fc.Arbitrary<infer T> ? T : never,
) {
  if (one.act === 'book') {
    const treatmentIds = one.treatments.map(name => shop.treatments[name as keyof TestShop['treatments']])
    const askedDate = Temporal.PlainDate.from('2026-10-29').add({ days: one.inDays }).toString()
    const wish = { condition: 'worn' as const, treatmentIds, askedDate }
    const found = await offers(desk, { ...wish, sizeClass: 'medium' }).catch(error => {
      // Two coatings for the same paint are refused before anything is looked for.
      if (error instanceof Refusal && error.code === 'coated-twice') return null
      throw error
    })
    if (!found) return expect(one.treatments).toEqual(expect.arrayContaining(['twoLayers', 'topped']))
    const offer = found[one.kind]
    if (!offer.feasible) return expect(offer.reasons.length).toBeGreaterThan(0)
    expect(offer.dropOffAt).toBeGreaterThanOrEqual(desk.now())
    expect(offer.handoverAt).toBeGreaterThanOrEqual(offer.safeAt)
    try {
      const vehicleId = shop.vehicles[one.vehicle]!
      await confirmPlace(desk, await holdPlace(desk, { ...wish, vehicleId, plan: offer.plan }))
    } catch (error) {
      // An offer is never stale while nobody else books; its car may be here for another job.
      if (!(error instanceof Refusal) || error.code !== 'vehicle-booked') throw error
    }
    return
  }
  const jobs = await desk.store.read.job.findMany({ orderBy: { number: 'asc' } })
  if (jobs.length === 0) return
  const job = await getJob(desk, { id: jobs[one.which % jobs.length]!.id })
  const stay = job.stays[one.stay % job.stays.length]!
  const bays = Object.values(shop.bays)
  try {
    await moveStay(desk, {
      jobId: job.id,
      version: job.version,
      position: stay.position ?? 0,
      bayId: bays[one.bay % bays.length]!,
      startAt: stay.fromAt + one.steps * 15,
    })
  } catch (error) {
    // A refusal with reasons is an answer; anything else is not.
    if (!(error instanceof Refusal) || error.code !== 'refused') throw error
    expect(error.message.length).toBeGreaterThan(10)
  }
}

test('Whatever is booked and dragged, over a clock change too, no law of the floor is ever broken', async () => {
  const shops = fc.record({
    bays: fc.array(bay, { minLength: 1, maxLength: 2 }),
    closures: fc.array(off, { maxLength: 3 }),
    absences: fc.array(off, { maxLength: 3 }),
    acts: fc.array(act, { minLength: 3, maxLength: 9 }),
  })
  let booked = 0
  await fc.assert(
    fc.asyncProperty(shops, async ({ bays, closures, absences, acts }) => {
      // Thursday 29 October 2026; the clocks of New York go back on Sunday.
      const desk = await makeDesk('2026-10-29T14:20:00Z')
      try {
        const all = [['wet'] as Capability[], ['polish', 'clean', 'cure'] as Capability[], ...bays]
        const shop = await testShop(
          desk,
          'America/New_York',
          all.map((capabilities, i) => [`Bay ${i + 1}`, capabilities]),
        )
        const span = ({ fromH, hours }: { fromH: number; hours: number }) => ({
          fromAt: desk.now() + fromH * 60,
          toAt: desk.now() + (fromH + hours) * 60,
        })
        const at = (ids: Record<string, string>, who: number) =>
          Object.values(ids)[who % Object.keys(ids).length]!
        await desk.store.transact({ who: 'test', at: 0 }, async tx => {
          for (const one of closures)
            await tx.bayClosure.create({ data: { bayId: at(shop.bays, one.who), ...span(one) } })
          for (const one of absences)
            await tx.crewAbsence.create({ data: { crewId: at(shop.crew, one.who), ...span(one) } })
        })
        for (const one of acts) {
          await does(desk, shop, one)
          expect(await brokenLaws(desk)).toEqual([])
        }
        booked += await desk.store.read.job.count()
      } finally {
        await desk.close()
      }
    }),
    { numRuns: 12, endOnFailure: true },
  )
  expect(booked).toBeGreaterThan(20)
}, 240_000)
