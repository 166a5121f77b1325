import { beforeEach, expect, test } from 'vitest'
import { momentWords } from '../../../main/domain/calendar/index.ts'
import { getIntake, saveIntake } from '../../../main/services/intake/intake.ts'
import { decidePaint } from '../../../main/services/job/decidePaint.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { workOrder } from '../../../main/services/job/workOrder.ts'
import { saveProduct } from '../../../main/services/setUp/products.ts'
import { saveSafety } from '../../../main/services/shelf/safety.ts'
import { cureShare, pdfInfo, pdfTags, pdfWords } from '../../documents/poppler.ts'
import { bookJob } from '../bookJob.ts'
import { does, layeredCar } from '../cure/coatedCar.ts'
import { filledIntake, intakeDesk } from '../intake/intakeDesk.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

let desk: TestDesk
let shop: TestShop
let id: string

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T12:00:00Z')
  shop = await testShop(desk)
  id = await layeredCar(desk, shop)
})

const read = async () => {
  const { bytes } = await workOrder(desk, { id })
  return { bytes, words: pdfWords(bytes), job: await getJob(desk, { id }) }
}

test('The work order has every step with its time, bay and people, and the promise with its year', async () => {
  const { bytes, words, job } = await read()
  expect(pdfInfo(bytes)).toMatchObject({ Title: `Work order ${job.number}`, Tagged: 'yes' })
  for (const part of [job.vehicle.words, job.customer.name, job.treatments[0]!.name])
    expect(words).toContain(part)
  expect(words).toMatch(/Promised \w{3} \d+ \w+ 2026, \d\d:\d\d/)
  expect(words).toContain('nobody touches the car')
  const tags = pdfTags(bytes)
  for (const step of job.steps) expect(tags).toContain(step.name)
  for (const { name } of job.steps.flatMap(step => step.crew)) expect(words).toContain(name)
  expect(words).toContain('Earliest pick-up')
  expect(words).not.toMatch(cureShare)
})

test('It warns of each chemical, by the data sheet where somebody has read it, and of the tools', async () => {
  const before = await read()
  expect(before.words).toContain('No data sheet is filed')
  expect(before.words).toContain('never near solvent vapour')
  expect(before.words).not.toContain('before a pad is changed')
  expect(before.words).toContain('The data sheet, local rules and licensed practice decide.')
  const productId = before.job.steps.find(step => step.productId !== null)!.productId!
  await saveSafety(desk, {
    productId,
    revisedOn: '2025-02-11',
    hazardCodes: ['H226', 'H319'],
    precautionaryCodes: ['P280'],
    signalWord: 'Warning',
    protection: ['nitrile gloves', 'safety glasses'],
    storageGroup: 'flammable',
    unNumber: null,
    ph: null,
    maker: 'Ovrel Surface Chemistry, +1 212-555-0143',
    note: '',
  })
  const { bytes, words } = await read()
  expect(words).toContain('Wear: nitrile gloves; safety glasses.')
  // 29 CFR 1910.134(a)(1): what draws the vapour off comes before a mask; H226 is poured with a bonding wire.
  expect(words).toMatch(/extraction and fresh air come before any mask.*respirator chosen by the exposure/)
  expect(words).toContain('joined by a bonding wire')
  // 29 CFR 1910.1200, appendix C: H226 and H319; their pictograms are the flame and the exclamation mark.
  expect(words).toContain('Flammable liquid and vapor.')
  expect(words).toContain('Causes serious eye irritation.')
  expect(Buffer.from(bytes).toString('latin1')).toMatch(/\/Alt \(GHS02: [^)]*\)/)
  expect(Buffer.from(bytes).toString('latin1')).toMatch(/\/Alt \(GHS07: [^)]*\)/)
})

test('A car that is polished is warned of the machine as the intake is', async () => {
  const polished = await bookJob(desk, shop, { treatments: ['correction'], vehicle: 1 })
  const { bytes } = await workOrder(desk, { id: polished.id })
  const { cautions } = await getIntake(desk, { jobId: polished.id })
  for (const words of cautions) expect(pdfWords(bytes)).toContain(words)
  expect(cautions.join(' ')).toContain('before a pad is changed')
})

test('It names the panels that differ or were measured, what the paint forbids, and what was decided', async () => {
  const it = await intakeDesk()
  const { vehicleId } = await it.desk.store.read.job.findUniqueOrThrow({ where: { id: it.jobId } })
  const panels = [{ panel: 'Roof', finish: 'film', since: '2026-03-03' }]
  await it.desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.vehicle.update({ where: { id: vehicleId }, data: { panels } }),
  )
  const thickness = [
    { panel: 'Bonnet' as const, spot: 1, um: 72 },
    { panel: 'Boot lid' as const, spot: 1, um: 118 },
  ]
  await saveIntake(it.desk, { jobId: it.jobId, version: 0, draft: await filledIntake(it, { thickness }) })
  const seen = async () => pdfWords((await workOrder(it.desk, { id: it.jobId })).bytes)
  const open = await seen()
  expect(open).toMatch(/Single correction: Whole car/)
  expect(open).toMatch(/Roof film since Tue 3 March 2026/)
  // 72 and 118 µm in mil of 25.4 µm; the floor is the shop's usual.
  expect(open).toMatch(/Bonnet 2\.8 mil Under the floor/)
  expect(open).toMatch(/Boot lid 4\.6 mil/)
  expect(open).toMatch(/Decide before Single correction: Bonnet \([^)]*\): under the floor/)
  await decidePaint(it.desk, {
    jobId: it.jobId,
    treatment: 'Single correction',
    rule: 'thin paint polished',
    panels: ['Bonnet'],
    decision: 'do it',
    reason: 'test spot held',
  })
  const decided = await seen()
  expect(decided).toContain('Single correction on Bonnet all the same: test spot held.')
  expect(decided).not.toContain('Decide before Single correction: Bonnet')
  expect(decided).not.toContain('leaves out')
  const row = { where: { jobId: it.jobId }, data: { leftOut: 'Bonnet (thin paint)' } }
  await it.desk.store.transact({ who: 'test', at: 0 }, tx => tx.jobTreatment.updateMany(row))
  expect(await seen()).toContain('Whole car; leaves out Bonnet (thin paint)')
})

test('A step that is done is ticked, and the others are left open', async () => {
  expect((await read()).words).not.toContain('☑')
  await does(desk, id, 0)
  expect((await read()).words.split('☑')).toHaveLength(2)
})

test('What was done is printed as it was, and the promise as it was given', async () => {
  const polish = await saveProduct(desk, { name: 'Grenn Refine', kind: 'polish', cureProfile: null })
  await does(desk, id, 0, { from: '15T09:10', to: '15T10:05' })
  await desk.store.transact({ who: 'test', at: 0 }, async tx => {
    const { vehicleId, promisedAt } = await tx.job.findUniqueOrThrow({ where: { id } })
    await tx.job.update({
      where: { id },
      data: { note: 'Rings before nine', promisedAt: promisedAt + 24 * 60 + 5 },
    })
    await tx.vehicle.update({ where: { id: vehicleId }, data: { note: 'Roof box stays on' } })
    await tx.jobStep.updateMany({ where: { jobId: id, position: 1 }, data: { productId: polish.id } })
    const check = { jobId: id, moment: 'arrival', words: 'Aerial off', doneBy: 'Mika', doneAt: 1 }
    await tx.jobCheck.create({ data: { ...check, position: 90 } })
  })
  const { words, job } = await read()
  expect(words).toMatch(/15 April 2026, 09:10.*15 April 2026, 10:05/)
  expect(job.promisedAt).not.toBe(job.handoverAt)
  expect(words).toContain(`Promised ${momentWords(job.promisedAt, job.zone)}`)
  for (const note of ['Rings before nine', 'Roof box stays on']) expect(words).toContain(note)
  expect(words).toContain('☑ Mika When the car comes Aerial off')
  // What polishes is warned of as a polish, whatever its step is called.
  expect(words).toContain('before a pad is changed')
})

test('A job that is not there has no work order', async () => {
  await expect(workOrder(desk, { id: 'nobody' })).rejects.toMatchObject({ code: 'missing' })
})
