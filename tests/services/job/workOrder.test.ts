import { beforeEach, expect, test } from 'vitest'
import { getIntake } from '../../../main/services/intake/intake.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { workOrder } from '../../../main/services/job/workOrder.ts'
import { saveSafety } from '../../../main/services/shelf/safety.ts'
import { cureShare, pdfInfo, pdfTags, pdfWords } from '../../documents/poppler.ts'
import { bookJob } from '../bookJob.ts'
import { layeredCar } from '../cure/coatedCar.ts'
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

test('A job that is not there has no work order', async () => {
  await expect(workOrder(desk, { id: 'nobody' })).rejects.toMatchObject({ code: 'missing' })
})
