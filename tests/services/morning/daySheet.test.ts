import { expect, test } from 'vitest'
import { daySheet } from '../../../main/services/morning/daySheet.ts'
import { morningSheet } from '../../../main/services/morning/morning.ts'
import { cureShare, pdfInfo, pdfWords } from '../../documents/poppler.ts'
import { layeredCar } from '../cure/coatedCar.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

test('The day sheet says who comes, who does what when and who goes home; a day without work says so', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  await layeredCar(desk, await testShop(desk))
  const day = await morningSheet(desk, { date: '2026-04-15' })
  const { bytes, name } = await daySheet(desk, { date: '2026-04-15' })
  expect(name).toBe('day-2026-04-15.pdf')
  expect(pdfInfo(bytes)).toMatchObject({ Title: 'Wednesday 15 April 2026', Tagged: 'yes' })
  const words = pdfWords(bytes)
  expect(words).not.toMatch(cureShare)
  for (const person of day.crew)
    for (const step of person.steps) {
      expect(words).toContain(person.name)
      expect(words).toContain(step.name)
    }
  for (const title of ['Coming in', 'Cures', 'Cars that move', 'Going home', 'Chemicals in use'])
    expect(words).toContain(title)
  expect(day.moments.length).toBeGreaterThan(0)
  for (const { what } of day.moments) expect(words.replaceAll(' ', '')).toContain(what.replaceAll(' ', ''))
  const empty = pdfWords((await daySheet(desk, { date: '2026-05-03' })).bytes)
  for (const none of [
    'Nobody is due.',
    'No cure reaches a milestone today.',
    'No car moves.',
    'No car goes home.',
  ])
    expect(empty).toContain(none)
  expect(empty).toContain('closed')
})
