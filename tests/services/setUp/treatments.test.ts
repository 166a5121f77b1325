import { beforeEach, describe, expect, it } from 'vitest'
import { problemOf } from '../../../main/domain/floor/index.ts'
import { offers } from '../../../main/services/booking/offers.ts'
import { loadFloor } from '../../../main/services/floor/loadFloor.ts'
import { archiveTreatment, listTreatments, saveTreatment } from '../../../main/services/setUp/treatments.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
beforeEach(async () => {
  desk = await makeDesk()
  shop = await testShop(desk)
})

const washed = async () => (await listTreatments(desk)).find(each => each.id === shop.treatments.wash)!

describe('a treatment that needs two people', () => {
  it('keeps the flag, says so in the audit line, and promises two for each step', async () => {
    const wash = await washed()
    expect(wash.needsTwoPeople).toBe(false)
    await saveTreatment(desk, { ...wash, needsTwoPeople: true })
    expect(await washed()).toMatchObject({ needsTwoPeople: true, version: 2 })
    const line = await desk.store.read.auditLine.findFirst({ orderBy: { id: 'desc' } })
    expect(line?.detail).toEqual({ needsTwoPeople: [false, true] })
    const view = await offers(desk, { treatmentIds: [wash.id], sizeClass: 'medium', condition: 'good' })
    if (!view.soonest.feasible) throw new Error(JSON.stringify(view.soonest))
    // Mika and Sal wash; Jo does not.
    const washers = [shop.crew.Mika, shop.crew.Sal].sort()
    for (const step of view.soonest.plan.steps) expect([...step.crew].sort()).toEqual(washers)
  })

  it('loses it in a save that leaves it out', async () => {
    const wash = await washed()
    await saveTreatment(desk, { ...wash, needsTwoPeople: true })
    const { needsTwoPeople: _, ...without } = wash
    await saveTreatment(desk, { ...without, version: 2 })
    expect((await washed()).needsTwoPeople).toBe(false)
  })
})

describe('a step with a helper for a part of it', () => {
  const helped = async (help: { crew: number; from: number; minutes: number } | null) => {
    const wash = await washed()
    const [first, ...others] = wash.steps
    await saveTreatment(desk, { ...wash, steps: [{ ...first!, help }, ...others] })
  }

  it('takes somebody for that part alone, who is free for the rest', async () => {
    await helped({ crew: 1, from: 15, minutes: 30 })
    const { id } = await bookJob(desk, shop, { treatments: ['wash'] })
    const step = await desk.store.read.jobStep.findFirstOrThrow({
      where: { jobId: id, position: 0 },
      include: { crew: true },
    })
    expect(step).toMatchObject({ crewCount: 1, help: { crew: 1, from: 15, minutes: 30 } })
    expect(step.crew).toHaveLength(2)
    const helper = step.crew.find(each => each.helps)!.crewId
    const floor = await loadFloor(desk.store.read, desk.now(), step.endAt + 1440)
    const { crew } = problemOf(floor, { job: { id: 'new', release: 0, asked: 0, steps: [] } })
    const away = (id: string) =>
      crew.find(each => each.id === id)!.away.filter(each => each.from < step.endAt)
    expect(away(helper)).toContainEqual({ from: step.startAt + 15, to: step.startAt + 45 })
    const whole = step.crew.find(each => !each.helps)!.crewId
    expect(away(whole).some(each => each.from <= step.startAt && each.to >= step.endAt)).toBe(true)
  })

  it('is taken out again, and refused where it outlasts the step', async () => {
    await helped({ crew: 1, from: 15, minutes: 30 })
    await helped(null)
    expect((await washed()).steps[0]!.help).toBeNull()
    await expect(helped({ crew: 1, from: 0, minutes: 900 })).rejects.toMatchObject({
      field: 'steps.0.help.minutes',
    })
    await expect(helped({ crew: 7, from: 0, minutes: 10 })).rejects.toMatchObject({
      field: 'steps.0.help.crew',
    })
  })
})

describe('a treatment that is booked', () => {
  it('is put away only once its cars were named', async () => {
    await bookJob(desk, shop, { treatments: ['wash'] })
    const { id, version } = await washed()
    await expect(archiveTreatment(desk, { id, version })).rejects.toMatchObject({
      code: 'in-use',
      message: expect.stringContaining('Job 1 (KFR 204)'),
    })
    expect((await washed()).archivedAt).toBeNull()
    await archiveTreatment(desk, { id, version, accepted: true })
    expect(await washed()).toBeUndefined()
  })

  it('of which nothing is booked goes at once', async () => {
    await bookJob(desk, shop, { treatments: ['correction'] })
    const { id, version } = await washed()
    await archiveTreatment(desk, { id, version })
    expect(await washed()).toBeUndefined()
  })
})
