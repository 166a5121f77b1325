import { openSpans } from '../../main/domain/calendar/index.ts'
import type { CureProfile } from '../../main/domain/cure/index.ts'
import type { Desk } from '../../main/services/desk/desk.ts'
import { calendarOf } from '../../main/services/desk/shopView.ts'

/**
 * Everything wrong with what is booked, read from the plain rows and written apart from the scheduler and its checks:
 * stays and people over each other, closed hours, broken waits, unfit bays, moves before tack-free, cars that leave
 * before their coats may. Planned times only; empty when all laws hold.
 */
export async function brokenLaws(desk: Desk): Promise<string[]> {
  const tx = desk.store.read
  const jobs = await tx.job.findMany({
    where: { status: { in: ['held', 'booked', 'inShop', 'handedOver'] } },
    include: { steps: { orderBy: { position: 'asc' }, include: { crew: true, product: true } } },
  })
  if (jobs.length === 0) return []
  const bays = new Map((await tx.bay.findMany({ include: { closures: true } })).map(bay => [bay.id, bay]))
  const people = new Map(
    (await tx.crewMember.findMany({ include: { absences: true } })).map(person => [person.id, person]),
  )
  const from = Math.min(...jobs.map(job => job.dropOffAt)) - 2880
  const to = Math.max(...jobs.map(job => job.plannedHandoverAt)) + 2880
  const openings = openSpans(await calendarOf(tx), from, to)
  const open = new Set(
    openings.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i)),
  )
  const doors = (at: number) => open.has(at) || open.has(at - 1)
  const broken: string[] = []
  const law = (holds: boolean, words: string) => {
    if (!holds) broken.push(words)
  }
  const stays: { key: string; from: number; to: number; job: number }[] = []
  const work: { key: string; minutes: Set<number>; job: number }[] = []

  for (const job of jobs) {
    const at = (words: string) => `job ${job.number}: ${words}`
    let bay = ''
    let since = 0
    const enter = (next: string, when: number) => {
      if (next === bay) return
      if (bay !== '') stays.push({ key: bay, from: since, to: when, job: job.number })
      law(doors(when), at(`moves at ${when} behind closed doors`))
      for (const coat of job.steps.filter(step => step.product?.cureProfile && step.plannedEndAt <= when)) {
        const profile = coat.product!.cureProfile as unknown as CureProfile
        law(
          when >= coat.plannedEndAt + profile.tackFreeMin,
          at(`moved at ${when} before "${coat.name}" was tack-free`),
        )
      }
      bay = next
      since = when
    }
    job.steps.forEach((step, i) => {
      const before = job.steps[i - 1]
      const wait = before ? step.plannedAt - before.plannedEndAt : 0
      law(wait >= (step.waitMin ?? 0), at(`"${step.name}" starts ${wait} after, least ${step.waitMin ?? 0}`))
      law(
        wait <= (step.waitMax ?? Number.POSITIVE_INFINITY),
        at(`"${step.name}" starts ${wait} after, most ${step.waitMax}`),
      )
      if (step.sameBay) law(step.bayId === bay, at(`"${step.name}" left its bay`))
      enter(step.bayId, step.plannedAt)
      const can = bays.get(step.bayId)!.capabilities as string[]
      law(can.includes(step.needs), at(`"${step.name}" in a bay without ${step.needs}`))
      const minutes = Array.from({ length: step.plannedEndAt - step.plannedAt }, (_, m) => step.plannedAt + m)
      if (step.kind === 'hold') {
        law(
          minutes.length === step.minutes,
          at(`"${step.name}" lasts ${minutes.length}, not ${step.minutes}`),
        )
        if (step.movedToBayId !== null) enter(step.movedToBayId, step.movedAt!)
        return
      }
      const worked = new Set(minutes.filter(minute => open.has(minute)))
      law(
        worked.size === step.minutes,
        at(`"${step.name}" has ${worked.size} open minutes, not ${step.minutes}`),
      )
      if (!step.splittable)
        law(worked.size === minutes.length, at(`"${step.name}" runs through closed hours`))
      law(
        step.crew.length === (step.skill === null ? 0 : step.crewCount),
        at(`"${step.name}" has the wrong crew`),
      )
      for (const { crewId } of step.crew) {
        const person = people.get(crewId)!
        law((person.skills as string[]).includes(step.skill!), at(`${person.name} cannot ${step.skill}`))
        for (const { fromAt, toAt } of person.absences)
          law(![...worked].some(m => fromAt <= m && m < toAt), at(`${person.name} is away`))
        work.push({ key: crewId, minutes: worked, job: job.number })
      }
      const profile = step.product?.cureProfile as unknown as CureProfile | undefined
      if (profile) {
        law(
          job.plannedHandoverAt >= step.plannedEndAt + profile.handoverMin,
          at(`leaves before "${step.name}" allows`),
        )
        const next = job.steps.slice(i + 1).find(each => each.kind === 'work')
        if (next?.stage === 'topper' && step.stage === 'coat') {
          law(profile.topper?.productIds.includes(next.productId ?? '') === true, at('topper not allowed'))
          // From the last panel's end to its turn, of which it takes an eighth at the most (common practice, no source).
          const waitMin = next.plannedAt - step.plannedEndAt + 0.875 * (next.plannedEndAt - next.plannedAt)
          law(waitMin >= profile.topper!.minMin, at('topper too early'))
        }
      }
    })
    stays.push({ key: bay, from: since, to: job.plannedHandoverAt, job: job.number })
    law(job.plannedHandoverAt >= job.steps.at(-1)!.plannedEndAt, at('leaves before its last step is over'))
    law(doors(job.plannedHandoverAt), at('leaves behind closed doors'))
  }
  jobs.forEach((a, i) => {
    for (const b of jobs.slice(i + 1))
      if (a.vehicleId === b.vehicleId)
        law(
          a.plannedHandoverAt <= b.dropOffAt || b.plannedHandoverAt <= a.dropOffAt,
          `jobs ${a.number} and ${b.number} are one car`,
        )
  })
  stays.forEach((a, i) => {
    for (const b of stays.slice(i + 1))
      if (a.key === b.key) law(a.to <= b.from || b.to <= a.from, `jobs ${a.job} and ${b.job} share a bay`)
    for (const { fromAt, toAt } of bays.get(a.key)!.closures)
      law(a.to <= fromAt || toAt <= a.from, `job ${a.job} stands in a closed bay`)
  })
  work.forEach((a, i) => {
    for (const b of work.slice(i + 1))
      if (a.key === b.key)
        law(a.minutes.isDisjointFrom(b.minutes), `jobs ${a.job} and ${b.job} share a person`)
  })
  return broken
}
