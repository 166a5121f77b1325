/**
 * Days as they come, played through the services on a real database: whatever happens, nothing is promised that is not so,
 * nothing is double but by what really happened, every job can go on, and the last act can be taken back whole.
 * LUSTRUM_DAYS plays that many; without it a few.
 */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { can, type JobAct } from '../../../main/domain/job/index.ts'
import { Refusal } from '../../../main/domain/refusal.ts'
import { boardRange } from '../../../main/services/board/board.ts'
import { moveStay, tryMove } from '../../../main/services/board/boardMove.ts'
import { changeBooking } from '../../../main/services/booking/changeBooking.ts'
import { changeOffers } from '../../../main/services/booking/changeOffers.ts'
import { comesLater, fetchLater, noShow } from '../../../main/services/booking/otherwise.ts'
import { judged, wholeFloor } from '../../../main/services/floor/judged.ts'
import { cancelJob, handOver } from '../../../main/services/job/jobActs.ts'
import { arrive, finishStep, startStep } from '../../../main/services/job/jobSteps.ts'
import { getJob, type JobView } from '../../../main/services/job/jobView.ts'
import { setStepMinutes } from '../../../main/services/job/stepMinutes.ts'
import { saveClosure } from '../../../main/services/setUp/bayClosures.ts'
import { saveAbsence } from '../../../main/services/setUp/crewAbsences.ts'
import { takeBack } from '../../../main/services/undo/takeBack.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'
import { rowsOf } from './rowsOf.ts'

const days = Number(process.env.LUSTRUM_DAYS ?? 3)
/** Of one shop; then another begins, so that a run that finds something stays short. */
const daysOfShop = 3

const kinds = [
  'book',
  'book',
  'goOn',
  'goOn',
  'goOn',
  'goOn',
  'goOn',
  'cancel',
  'noShow',
  'comesLater',
  'otherDay',
  'otherWork',
  'longer',
  'move',
  'arrive',
  'start',
  'finish',
  'handOver',
  'fetchLater',
  'away',
  'closed',
  'wait',
] as const
const anAct = fc.record({
  kind: fc.constantFrom(...kinds),
  which: fc.nat(50),
  much: fc.integer({ min: 1, max: 8 }),
  undo: fc.nat(2),
})
type AnAct = typeof anAct extends fc.Arbitrary<infer T> ? T : never

const iso = (at: number) => Temporal.Instant.fromEpochMilliseconds(at * 60_000).toString()
const day = (desk: TestDesk, more: number) =>
  Temporal.Instant.fromEpochMilliseconds((desk.now() + more * 1440) * 60_000)
    .toString()
    .slice(0, 10)

/** Of whom each act can be said at all; others are left to chance by the acts themselves. */
const fits: Partial<Record<AnAct['kind'], (job: JobView) => boolean>> = {
  cancel: job => job.can.cancel,
  noShow: job => job.can.noShow && job.dropOffAt <= job.nowAt,
  comesLater: job => job.can.comesLater,
  otherDay: job => job.can.rebook,
  otherWork: job => job.can.rebook,
  move: job => job.can.move && job.stays.length > 0,
  arrive: job => job.can.arrive && job.dropOffAt <= job.nowAt,
  start: job => job.steps.some(step => step.can.start),
  finish: job => job.steps.some(step => step.can.finish),
  goOn: job => job.status === 'inShop' || job.can.arrive,
  handOver: job => job.can.handOver,
  fetchLater: job => job.can.fetchLater && job.steps.every(step => !step.can.finish && !step.can.start),
}

/** One of the jobs of which it can be said; where there is none, any job: then it is refused. */
async function jobFor(desk: TestDesk, kind: AnAct['kind'], which: number): Promise<JobView | null> {
  const rows = await desk.store.read.job.findMany({
    where: { NOT: { status: 'handedOver' } },
    orderBy: { number: 'asc' },
  })
  const jobs: JobView[] = []
  for (const { id } of rows) jobs.push(await getJob(desk, { id }))
  const suited = jobs.filter(job => fits[kind]?.(job) ?? true)
  const among = suited.length > 0 ? suited : jobs
  return among[which % Math.max(1, among.length)] ?? null
}

async function does(desk: TestDesk, shop: TestShop, { kind, which, much }: AnAct): Promise<void> {
  const bays = Object.values(shop.bays)
  const crew = Object.values(shop.crew)
  const names = ['wash', 'correction', 'twoLayers', 'topped'] as const
  const span = { fromAt: desk.now(), toAt: desk.now() + much * 60, reason: 'so it is', accepted: true }
  switch (kind) {
    case 'wait':
      return desk.setNow(iso(desk.now() + much * 15))
    case 'book':
      await bookJob(desk, shop, { treatments: [names[which % 4]!], vehicle: much % 4 })
      return
    case 'away':
      await saveAbsence(desk, { ...span, crewId: crew[which % crew.length]! })
      return
    case 'closed':
      await saveClosure(desk, { ...span, bayId: bays[which % bays.length]! })
      return
  }
  const job = await jobFor(desk, kind, which)
  if (!job) return
  const key = { id: job.id, version: job.version }
  const running = job.steps.find(step => step.can.finish)
  const next = job.steps.find(step => step.can.start)
  const why = { reason: 'so it is', accepted: true }
  const waits = (until: number) => desk.setNow(iso(Math.max(desk.now(), until)))
  switch (kind) {
    case 'goOn':
      // Sooner or later than planned, as it comes.
      if (running) {
        waits(desk.now() + much * 20)
        await finishStep(desk, { ...key, position: running.position })
      } else if (next) await startStep(desk, { ...key, position: next.position, ...why })
      else if (job.can.arrive) {
        if (job.dropOffAt - desk.now() > 600) return
        waits(job.dropOffAt)
        await arrive(desk, key)
      } else await handOver(desk, { ...key, ...why })
      return
    case 'cancel':
      await cancelJob(desk, { ...key, reason: 'so it is' })
      return
    case 'noShow':
      await noShow(desk, { ...key, fee: false })
      return
    case 'comesLater':
      await comesLater(desk, { ...key, at: desk.now() + much * 45 })
      return
    case 'fetchLater':
      await fetchLater(desk, { ...key, at: Math.max(desk.now(), job.handoverAt) + much * 300, fee: true })
      return
    case 'otherDay':
    case 'otherWork': {
      const wish =
        kind === 'otherDay'
          ? { notBefore: day(desk, much % 4) }
          : { treatmentIds: [shop.treatments[names[much % 4]!]] }
      const { soonest } = await changeOffers(desk, { id: job.id, ...wish })
      if (!soonest.feasible) return
      const { notBefore: _, ...work } = { notBefore: '', ...wish }
      await changeBooking(desk, { ...key, ...work, plan: soonest.plan })
      return
    }
    case 'longer': {
      const step = running ?? job.steps.find(each => each.kind === 'work' && each.actualEndAt === null)
      if (step)
        await setStepMinutes(desk, {
          ...key,
          position: step.position,
          minutes: step.minutes + much * 15,
          chargeMinor: 0,
        })
      return
    }
    case 'move': {
      const stay = job.stays[which % Math.max(1, job.stays.length)]
      if (!stay) return
      const wish = {
        jobId: job.id,
        version: job.version,
        position: stay.position ?? 0,
        bayId: bays[much % bays.length]!,
        startAt: Math.max(stay.fromAt, desk.now()) + much * 30,
      }
      const tried = await tryMove(desk, wish)
      const place = tried.ok ? {} : tried.nearest
      // What is said to work works when it is taken; a refusal here is a fault.
      if (place)
        await moveStay(desk, { ...wish, ...place }).catch(cause => {
          throw new Error('a place that works is refused', { cause })
        })
      return
    }
    case 'arrive':
      await arrive(desk, key)
      return
    case 'start':
      if (next) await startStep(desk, { ...key, position: next.position, ...why })
      return
    case 'finish':
      if (running) await finishStep(desk, { ...key, position: running.position })
      return
    case 'handOver':
      await handOver(desk, { ...key, reason: 'so it is' })
      return
  }
}

/** Counted by their numbers: those of yesterday go meanwhile. */
async function lastAct(desk: TestDesk): Promise<number> {
  return (await desk.store.read.act.findFirst({ orderBy: { id: 'desc' } }))?.id ?? 0
}

const acts: JobAct[] = [
  'confirm',
  'letGo',
  'arrive',
  'work',
  'takeBack',
  'handOver',
  'promise',
  'cancel',
  'move',
  'rebook',
]

async function holds(desk: TestDesk): Promise<void> {
  const floor = await wholeFloor(desk.store.read, desk.now())
  const { conflicts, of } = judged(floor)
  // Read anew inside an act nothing is kept from before: what is shown is held against it.
  const fresh = await desk.store.transact({ who: 'test', at: desk.now() }, tx => wholeFloor(tx, desk.now()))
  const now = new Map(fresh.jobs.map(job => [job.id, job]))
  const here = new Set(fresh.jobs.filter(job => job.status === 'inShop').map(job => job.id))
  const { stays } = await boardRange(desk, { fromDate: day(desk, -1), days: 14 })
  for (const job of floor.jobs) {
    const late = (now.get(job.id)?.handoverAt ?? 0) > job.promisedAt
    if (job.status !== 'held' && of(job).standing === 'kept')
      expect(late, `job ${job.number} is shown kept`).toBe(false)
  }
  for (const conflict of conflicts.filter(each => !each.uncovered)) {
    const others = conflicts.filter(each => each.fromAt === conflict.fromAt && each.toAt === conflict.toAt)
    expect(
      others.some(each => here.has(each.jobId)),
      conflict.words,
    ).toBe(true)
    const drawn = stays.filter(stay => stay.jobId === conflict.jobId)
    if (drawn.length > 0)
      expect(
        drawn.some(stay => stay.conflict !== null),
        conflict.words,
      ).toBe(true)
  }
  for (const { number, status } of await desk.store.read.job.findMany({
    where: { NOT: { status: 'handedOver' } },
  }))
    expect(
      acts.some(act => can({ status: status as 'booked' }, act)),
      `job ${number}, ${status}`,
    ).toBe(true)
}

test('Whatever a day brings, the board is true and the last act can be taken back', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(anAct, { minLength: 6 * daysOfShop, maxLength: 10 * daysOfShop }),
      async list => {
        const desk = await makeDesk('2026-04-15T12:00:00Z')
        const shop = await testShop(desk)
        const morning = desk.now()
        await bookJob(desk, shop, { treatments: ['wash'] })
        await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })
        const perDay = Math.ceil(list.length / daysOfShop)
        for (const [i, one] of list.entries()) {
          if (i > 0 && i % perDay === 0)
            desk.setNow(iso(Math.max(desk.now(), morning + (1_440 * i) / perDay)))
          const before = rowsOf(desk.store.source.file)
          const lastId = await lastAct(desk)
          try {
            await does(desk, shop, one)
          } catch (error) {
            // Where nothing fits, there is no offer to book.
            if (!(error instanceof Refusal) && one.kind !== 'book') throw error
          }
          const done = await desk.store.read.act.count({ where: { id: { gt: lastId } } })
          await holds(desk)
          if (one.undo !== 0 || done === 0) continue
          for (let back = 0; back < done; back++) await takeBack(desk, {})
          expect(rowsOf(desk.store.source.file), one.kind).toEqual(before)
          await holds(desk)
        }
        await desk.close()
      },
    ),
    { numRuns: Math.ceil(days / daysOfShop), endOnFailure: true },
  )
}, 3_600_000)
