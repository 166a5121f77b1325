/** Stays booked one behind the other in every bay, some of them begun, written straight into a database. */
import type { Desk } from '../../../main/services/desk/desk.ts'

export const peopleCount = 10

/** The hours of one stay: washed, polished, coated and left to cure over night. */
const parts = [
  { kind: 'work', name: 'Wash', needs: 'wet', skill: 'wash', stage: 'prepare', from: 480, to: 540 },
  {
    kind: 'work',
    name: 'Correction',
    needs: 'polish',
    skill: 'polish',
    stage: 'correct',
    from: 540,
    to: 840,
  },
  { kind: 'work', name: 'Layer', needs: 'clean', skill: 'coat', stage: 'coat', from: 840, to: 960 },
  { kind: 'hold', name: 'Cure', needs: 'cure', skill: null, stage: 'cure', from: 960, to: 1920 },
] as const

const dayMin = 1440

/** Wednesdays and Mondays, in days from a Wednesday: a car stays over one night and never at a weekend. */
const twoAWeek = [0, 5]
/** Every weekday. */
export const fiveAWeek = [0, 1, 2, 5, 6]

/** Writes that many, each from one weekday's morning to the next morning; those of today are here and being washed. */
export async function bookStays(desk: Desk, count: number, visitDays = twoAWeek): Promise<void> {
  const { store } = desk
  const nowAt = desk.now()
  const todayAt = Math.floor(nowAt / dayMin) * dayMin
  const bays = await store.read.bay.findMany({ orderBy: { position: 'asc' } })
  const people = await store.read.crewMember.findMany({ orderBy: { position: 'asc' } })
  const jobs = Array.from({ length: count }, (_, i) => {
    const bay = bays[i % bays.length]!
    // In the bays that are one too many for the people, a day later.
    const visit = Math.floor(i / bays.length)
    const later = i % bays.length < people.length ? 0 : 1
    const dayAt =
      todayAt +
      (Math.floor(visit / visitDays.length) * 7 + visitDays[visit % visitDays.length]! + later) * dayMin
    return { id: `job-${i}`, number: i + 1, bay, bayIndex: i % bays.length, dayAt, begun: dayAt === todayAt }
  })
  await store.transact({ who: 'bench', at: nowAt }, async tx => {
    await tx.customer.create({ data: { id: 'owner', name: 'Ines Vale' } })
    await tx.vehicle.createMany({
      data: jobs.map(({ number, id }) => ({
        id: `car-${id}`,
        customerId: 'owner',
        plate: `BEN ${number}`,
        sizeClass: 'medium',
      })),
    })
    await tx.job.createMany({
      data: jobs.map(({ id, number, dayAt, begun }) => {
        const handoverAt = dayAt + 1920
        return {
          id,
          number,
          customerId: 'owner',
          vehicleId: `car-${id}`,
          status: begun ? 'inShop' : 'booked',
          dropOffAt: dayAt + 480,
          arrivedAt: begun ? dayAt + 480 : null,
          promisedAt: handoverAt,
          plannedHandoverAt: handoverAt,
          handoverAt,
          safeAt: handoverAt,
          advisedAt: handoverAt,
          createdAt: nowAt,
        }
      }),
    })
    const steps = jobs.flatMap(({ id, bay, bayIndex, dayAt, begun, number }) =>
      parts.map(({ from, to, ...part }, position) => ({
        row: {
          ...part,
          id: `${id}-${position}`,
          jobId: id,
          position,
          bayId: bay.id,
          minutes: to - from,
          plannedAt: dayAt + from,
          plannedEndAt: dayAt + to,
          startAt: dayAt + from,
          endAt: dayAt + to,
          // Half of those being washed are behind.
          actualStartAt: begun && position === 0 ? dayAt + from : null,
          actualEndAt: begun && position === 0 && number % 2 === 0 ? dayAt + to : null,
        },
        crewId: part.kind === 'hold' ? null : people[bayIndex % people.length]!.id,
      })),
    )
    await tx.jobStep.createMany({ data: steps.map(({ row }) => row) })
    await tx.jobStepCrew.createMany({
      data: steps.flatMap(({ row, crewId }) => (crewId ? { stepId: row.id, crewId } : [])),
    })
  })
}
