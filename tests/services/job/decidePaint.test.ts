// What paint forbids: common practice, no source.
import { expect, test } from 'vitest'
import { act } from '../../../main/services/desk/desk.ts'
import { getIntake, saveIntake } from '../../../main/services/intake/intake.ts'
import { assertPaintAllows } from '../../../main/services/intake/paintAllows.ts'
import { decidePaint } from '../../../main/services/job/decidePaint.ts'
import { arrive, startStep } from '../../../main/services/job/jobSteps.ts'
import { does, job } from '../cure/coatedCar.ts'
import { filledIntake, type IntakeDesk, intakeDesk } from '../intake/intakeDesk.ts'

/** A car to be corrected whose bonnet is thin. */
async function thinCar(): Promise<IntakeDesk> {
  const it = await intakeDesk()
  const thickness = [
    { panel: 'Bonnet' as const, spot: 1, um: 72 },
    { panel: 'Roof' as const, spot: 1, um: 118 },
  ]
  await saveIntake(it.desk, { jobId: it.jobId, version: 0, draft: await filledIntake(it, { thickness }) })
  return it
}

const ruling = (it: IntakeDesk, part: object = {}) => ({
  jobId: it.jobId,
  treatment: 'Single correction',
  rule: 'thin paint polished' as const,
  panels: ['Bonnet' as const],
  decision: 'leave out' as const,
  reason: '',
  ...part,
})

async function polish({ desk, jobId }: IntakeDesk) {
  const { version, steps } = await job(desk, jobId)
  const step = steps.find(each => each.name === 'One-step correction')!
  desk.setNow(Temporal.Instant.fromEpochMilliseconds(step.startAt * 60_000).toString())
  return startStep(desk, { id: jobId, version, position: step.position })
}

async function washed(it: IntakeDesk): Promise<void> {
  await arrive(it.desk, { id: it.jobId, version: (await job(it.desk, it.jobId)).version })
  await does(it.desk, it.jobId, 0)
}

test('A panel under the floor holds the polish up, until it is left out', async () => {
  const it = await thinCar()
  await washed(it)
  const [open] = (await getIntake(it.desk, { jobId: it.jobId })).forbidden
  expect(open).toMatchObject({ treatment: 'Single correction', panels: ['Bonnet'], mayOverride: true })
  expect(open!.on).toHaveLength(10)
  await expect(polish(it)).rejects.toMatchObject({
    code: 'paint-forbids',
    // 72 µm are 2.8 mils of 25.4 µm, and the shop measures in mils.
    message: expect.stringContaining('Bonnet (2.8 mil): under the floor'),
  })
  await decidePaint(it.desk, ruling(it))
  const view = await getIntake(it.desk, { jobId: it.jobId })
  expect(view.forbidden).toEqual([])
  expect(view.facts.treatments).toEqual([{ name: 'Single correction', leftOut: 'Bonnet (thin paint)' }])
  await polish(it)
})

test('Left out before it is begun, the polish takes, draws and costs less, and the promise stays', async () => {
  const it = await thinCar()
  const row = () =>
    it.desk.store.read.job.findUniqueOrThrow({
      where: { id: it.jobId },
      include: { treatments: true, steps: { orderBy: { position: 'asc' } }, draws: true },
    })
  const before = await row()
  const { version } = await decidePaint(it.desk, ruling(it))
  const after = await row()
  expect(after.version).toBe(version)
  // The bonnet counts as twelve hundredths of the paint (common practice, no source).
  const bonnet = 0.12
  const [sold] = after.treatments
  const polishOf = (job: typeof before) => job.steps.find(step => step.name === 'One-step correction')!
  expect(sold).toMatchObject({ leftOut: 'Bonnet (thin paint)', share: expect.closeTo(1 - bonnet, 9) })
  const grid = 15
  expect(polishOf(after).minutes).toBe(Math.ceil((polishOf(before).minutes * (1 - bonnet)) / grid) * grid)
  expect(polishOf(after).minutes).toBeLessThan(polishOf(before).minutes)
  expect(sold!.priceMinor).toBeLessThan(before.treatments[0]!.priceMinor)
  expect(sold!.priceMinor).toBeGreaterThan(before.treatments[0]!.priceMinor * (1 - bonnet) - 1)
  expect(after.promisedAt).toBe(before.promisedAt)
  expect(after.plannedHandoverAt).toBeLessThanOrEqual(before.plannedHandoverAt)
  expect(after.handoverAt).toBe(after.plannedHandoverAt)
  // What is not done panel by panel stays as it was.
  expect(after.steps.filter(step => step.stage === 'rinse').map(step => step.minutes)).toEqual(
    before.steps.filter(step => step.stage === 'rinse').map(step => step.minutes),
  )
})

test('or until somebody says why it is polished all the same; measured anew, it is asked about again', async () => {
  const it = await thinCar()
  await washed(it)
  const doIt = ruling(it, { decision: 'do it' })
  await expect(decidePaint(it.desk, doIt)).rejects.toMatchObject({ code: 'reason-needed', field: 'reason' })
  await decidePaint(it.desk, { ...doIt, reason: 'By hand, finest polish' })
  expect((await getIntake(it.desk, { jobId: it.jobId })).decisions).toMatchObject([
    { decision: 'do it', reason: 'By hand, finest polish', panels: ['Bonnet'], who: 'front desk' },
  ])
  const draft = await filledIntake(it)
  const thickness = [...draft.thickness, { panel: 'Left wing' as const, spot: 1, um: 66 }]
  await saveIntake(it.desk, { jobId: it.jobId, version: 1, draft: { ...draft, thickness } })
  await expect(polish(it)).rejects.toMatchObject({ code: 'paint-forbids' })
  await decidePaint(it.desk, { ...doIt, panels: ['Bonnet', 'Left wing'], reason: 'The same' })
  await polish(it)
  const stamp = { who: 'test', at: it.desk.now() }
  await expect(
    it.desk.store.transact(stamp, tx => tx.paintDecision.updateMany({ data: { decision: 'x' } })),
  ).rejects.toThrow()
  await expect(it.desk.store.transact(stamp, tx => tx.paintDecision.deleteMany())).rejects.toThrow()
})

test('A decision about what is not open any more is refused, and so is one that leaves nothing', async () => {
  const it = await thinCar()
  await expect(decidePaint(it.desk, ruling(it, { panels: ['Roof'] }))).rejects.toMatchObject({
    code: 'stale',
  })
  await expect(decidePaint(it.desk, ruling(it, { treatment: 'Hand wash' }))).rejects.toMatchObject({
    code: 'stale',
  })
  await decidePaint(it.desk, ruling(it))
  await expect(decidePaint(it.desk, ruling(it))).rejects.toMatchObject({ code: 'stale' })
  const draft = await filledIntake(it)
  const all = (await getIntake(it.desk, { jobId: it.jobId })).facts.finishes.map(({ panel }) => panel)
  const thickness = all.map(panel => ({ panel, spot: 2, um: 60 }))
  await saveIntake(it.desk, { jobId: it.jobId, version: 1, draft: { ...draft, thickness } })
  const panels = all.filter(panel => panel !== 'Bonnet')
  await expect(decidePaint(it.desk, ruling(it, { panels }))).rejects.toMatchObject({ code: 'nothing-left' })
})

test('Matte is never polished, whatever the reason; wax holds up the coat and not the wash', async () => {
  const it = await intakeDesk(['correction', 'topped'])
  const { desk, jobId } = it
  await saveIntake(desk, { jobId, version: 0, draft: await filledIntake(it, { wax: 'waxed' }) })
  // The layer comes after a panel wipe, which takes the wax off.
  expect((await getIntake(desk, { jobId })).forbidden).toEqual([])
  await desk.store.transact({ who: 'test', at: desk.now() }, async tx => {
    await tx.vehicle.updateMany({ data: { finish: 'matte' } })
    await tx.treatmentStep.updateMany({ where: { stage: 'wipe' }, data: { stage: 'prepare' } })
  })
  expect(
    (await getIntake(desk, { jobId })).forbidden.map(({ treatment, rule }) => [treatment, rule]),
  ).toEqual([
    ['Single correction', 'matte polished'],
    ['One layer and topper', 'coat over wax'],
  ])
  const all = (await getIntake(desk, { jobId })).facts.finishes.map(({ panel }) => panel)
  await expect(
    decidePaint(
      desk,
      ruling(it, { rule: 'matte polished', panels: all, decision: 'do it', reason: 'They insist' }),
    ),
  ).rejects.toMatchObject({ code: 'never' })
  const allows = (stage: string) =>
    assertPaintAllows(desk.store.read, { jobId, stage, position: 3 }, desk.now())
  await expect(allows('coat')).rejects.toMatchObject({ code: 'paint-forbids', field: 'position' })
  await allows('prepare')
})

test('A shop that measures in micrometres is told in micrometres what is too thin', async () => {
  const it = await thinCar()
  await act(it.desk, tx => tx.shop.updateMany({ data: { units: 'metric' } }))
  await washed(it)
  const [open] = (await getIntake(it.desk, { jobId: it.jobId })).forbidden
  expect(open!.words).toContain('Bonnet (72 µm)')
  await expect(polish(it)).rejects.toThrow('Bonnet (72 µm): under the floor')
})
