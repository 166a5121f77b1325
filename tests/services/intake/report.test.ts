import sharp from 'sharp'
import { beforeEach, expect, test } from 'vitest'
import { correctIntake, getIntake, signIntake } from '../../../main/services/intake/intake.ts'
import { addPhoto } from '../../../main/services/intake/photos.ts'
import { intakeReport } from '../../../main/services/intake/report.ts'
import { pdfWords } from '../../documents/poppler.ts'
import { readPdf } from '../../documents/readPdf.ts'
import { filledIntake, type IntakeDesk, intakeDesk, signature } from './intakeDesk.ts'

let it: IntakeDesk
beforeEach(async () => {
  it = await intakeDesk()
})

const defect = { kind: 'scratch', severity: 'severe', panel: 'Bonnet', x: 180, y: 280 } as const

async function signed(ownerName = 'Ines Vale') {
  const { desk, jobId } = it
  const picture = sharp({ create: { width: 640, height: 400, channels: 3, background: '#335577' } })
  await addPhoto(desk, { jobId, name: 'bonnet.jpg', bytes: await picture.jpeg().toBuffer() })
  const draft = await filledIntake(it, {
    defects: [{ ...defect, id: 'd1', note: 'to the primer', photoIds: [] }],
    thickness: [110, 112, 109, 58].map((um, i) => ({ panel: i < 3 ? 'Bonnet' : 'Roof', spot: i + 1, um })),
    belongings: 'Child seat 席',
  })
  await signIntake(desk, { jobId, version: 0, draft, ownerName, signature })
  return draft
}

async function reportOf(number: number) {
  const { entries } = await getIntake(it.desk, { jobId: it.jobId })
  return intakeReport(it.desk, { entryId: entries.find(each => each.number === number)!.id })
}

test('a signed page is printed with its facts, marks, readings, photos and who signed', async () => {
  await signed()
  const { name, bytes } = await reportOf(1)
  expect(name).toMatch(/^intake-\d+-1\.pdf$/)
  const { title, pages } = await readPdf(bytes)
  expect(title).toMatch(/^Intake of /)
  const words = pages.flatMap(page => page.lines).join('\n')
  for (const fact of [
    /Odometer\s+41,210 mi/,
    /Belongings\s+Child seat 席/,
    /1\. Scratch, severe, Bonnet: to the primer/,
    /Bonnet\s+4\.3 mil, 4\.4 mil, 4\.3 mil/,
    /Roof\s+2\.3 mil\s+2\.3 mil\s+2\.3 mil\s+Under the floor/,
    /1\. bonnet\.jpg/,
    /Ines Vale, /,
  ])
    expect(words).toMatch(fact)
  // Signed by hand, which is drawn and not said.
  expect(words).not.toContain('typed name')
  // The severe mark in its colour, on a panel in its own.
  expect(pages.flatMap(page => page.fills)).toEqual(expect.arrayContaining(['#f3a6a0', '#f6f7f9']))
  expect(pdfWords(bytes)).toContain('Scratch, severe, Bonnet')
})

test('a corrected page says so on both papers, and a typed name stands for the hand', async () => {
  const draft = await signed()
  const { entries } = await getIntake(it.desk, { jobId: it.jobId })
  await correctIntake(it.desk, {
    jobId: it.jobId,
    correctsId: entries[0]!.id,
    reason: 'The roof was read twice',
    draft: { ...draft, thickness: [] },
    ownerName: 'Ines Vale',
    signature: 'typed',
  })
  const wordsOf = async (number: number) =>
    (await readPdf((await reportOf(number)).bytes)).pages.flatMap(page => page.lines).join('\n')
  expect(await wordsOf(1)).toContain('Corrected by page 2; kept as it was signed.')
  const second = await wordsOf(2)
  expect(second).toContain('Corrects page 1: The roof was read twice.')
  expect(second).toContain('Confirmed with the typed name: Ines Vale, ')
  expect(second).not.toContain('Paint thickness')
})

test('forty marks with long notes run over to further pages, and none is cut', async () => {
  const { desk, jobId } = it
  const draft = await filledIntake(it, {
    defects: Array.from({ length: 40 }, (_, i) => ({
      ...defect,
      id: `d${i}`,
      x: 100 + 20 * i,
      note: `${'a long note '.repeat(12)}end of ${i + 1}`,
      photoIds: [],
    })),
  })
  await signIntake(desk, { jobId, version: 0, draft, ownerName: 'Ines Vale', signature })
  const { pages } = await readPdf((await reportOf(1)).bytes)
  expect(pages.length).toBeGreaterThan(1)
  const words = pages.flatMap(page => page.lines).join(' ')
  for (let i = 1; i <= 40; i++) expect(words).toContain(`end of ${i}`)
})

test('a page that is not there is refused', async () => {
  await expect(intakeReport(it.desk, { entryId: 'nothing' })).rejects.toMatchObject({ code: 'missing' })
})
