import { beforeEach, expect, it } from 'vitest'
import { getIntake, saveAfter, saveIntake, signIntake } from '../../../main/services/intake/intake.ts'
import { getMeasuring, saveMeasuring } from '../../../main/services/intake/measuring.ts'
import { decidePaint } from '../../../main/services/job/decidePaint.ts'
import { filledIntake, type IntakeDesk, intakeDesk, signature } from './intakeDesk.ts'

let car: IntakeDesk
beforeEach(async () => {
  car = await intakeDesk()
})

const none = { floorUm: null, gaugeRepeatabilityUm: null, glossAllowedGu: null, glossRepeatabilityGu: null }
const get = () => getIntake(car.desk, { jobId: car.jobId })

it('begins as is usual, and is kept on the version it was seen on', async () => {
  expect(await getMeasuring(car.desk)).toMatchObject({
    ...none,
    version: 0,
    usual: { thickness: { floorUm: 80 } },
  })
  expect(await saveMeasuring(car.desk, { ...none, floorUm: 95, version: 0 })).toEqual({ version: 1 })
  expect(await getMeasuring(car.desk)).toMatchObject({ floorUm: 95, glossAllowedGu: null, version: 1 })
  await expect(saveMeasuring(car.desk, { ...none, version: 0 })).rejects.toMatchObject({ code: 'stale' })
  expect(() => saveMeasuring(car.desk, { ...none, floorUm: 10, version: 1 })).toThrow(
    expect.objectContaining({ field: 'floorUm' }),
  )
})

it('the floor of the shop holds up a step, and a signed page keeps the one it was judged by', async () => {
  const thickness = [{ panel: 'Bonnet', spot: 1, um: 90 }] as const
  const draft = await filledIntake(car, { thickness: [...thickness] })
  await saveIntake(car.desk, { jobId: car.jobId, version: 0, draft })
  expect((await get()).forbidden).toEqual([])
  await saveMeasuring(car.desk, { ...none, floorUm: 95, version: 0 })
  const { forbidden } = await get()
  expect(forbidden).toMatchObject([{ rule: 'thin paint polished', panels: ['Bonnet'] }])
  const { treatment, rule, panels } = forbidden[0]!
  const ask = { jobId: car.jobId, treatment, rule, panels: [...panels], reason: 'test spot held' }
  await decidePaint(car.desk, { ...ask, decision: 'do it' })
  expect((await get()).forbidden).toEqual([])
  await signIntake(car.desk, { jobId: car.jobId, version: 1, draft, ownerName: 'Ines Vale', signature })
  await saveMeasuring(car.desk, { ...none, floorUm: 60, version: 1 })
  const view = await get()
  expect(view.rules.thickness.floorUm).toBe(60)
  expect(view.entries[0]?.content.rules?.thickness.floorUm).toBe(95)
})

it('how well a meter repeats decides which change is real', async () => {
  const at = (gu: number, um: number) => ({
    gauge: '',
    thickness: [{ panel: 'Bonnet' as const, spot: 1, um }],
    gloss: [
      {
        instrument: 'GM-1',
        tile: 'T-1',
        substrate: 'gloss' as const,
        geometryDeg: 20 as const,
        tileGu: 94.8,
        startGu: 94.8,
        endGu: 94.8,
        panels: [{ panel: 'Bonnet' as const, gu: [gu] }],
      },
    ],
  })
  const draft = await filledIntake(car, at(80, 120))
  await saveIntake(car.desk, { jobId: car.jobId, version: 0, draft })
  await saveAfter(car.desk, { jobId: car.jobId, version: 0, content: at(84, 116) })
  expect((await get()).gained).toMatchObject({
    gloss: [{ limitGu: expect.closeTo(1.4, 9), real: true }],
    thickness: [{ changeUm: -4, limitUm: expect.closeTo(2.8, 9), real: true }],
  })
  await saveMeasuring(car.desk, { ...none, glossRepeatabilityGu: 2, gaugeRepeatabilityUm: 2, version: 0 })
  expect((await get()).gained).toMatchObject({ gloss: [{ real: false }], thickness: [{ real: false }] })
})

it('readings no meter shows are refused by name, and single-stage paint brings its cautions', async () => {
  const set = {
    instrument: '',
    tile: '',
    substrate: 'gloss' as const,
    geometryDeg: 60 as const,
    tileGu: 95,
    startGu: null,
    endGu: null,
    panels: [{ panel: 'Bonnet' as const, gu: [-3] }],
  }
  const draft = await filledIntake(car, { gloss: [set] })
  await expect(saveIntake(car.desk, { jobId: car.jobId, version: 0, draft })).rejects.toMatchObject({
    field: 'gloss',
  })
  expect((await get()).cautions.join(' ')).toContain('hidden spot')
  const { vehicleId } = await car.desk.store.read.job.findUniqueOrThrow({ where: { id: car.jobId } })
  await car.desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.vehicle.update({ where: { id: vehicleId }, data: { paint: 'single-stage' } }),
  )
  expect((await get()).cautions.join(' ')).toContain('pad takes on its colour')
})
