import { expect, it } from 'vitest'
import { languageNow, say } from '../../../main/domain/language/index.ts'
import { speaking, speakingTo, spokenFor } from '../../../main/services/desk/speaking.ts'
import { saveReach } from '../../../main/services/reminders/consents.ts'
import { keptUntilSaved, mayKeepReads } from '../../../main/store/kept.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

it('speaks the language of a tag, and that of the moment where it speaks none such', () => {
  expect(spokenFor('de-AT')).toBe('de')
  expect(spokenFor('DE')).toBe('de')
  expect(spokenFor('')).toBe('en')
  expect(speaking('de', () => spokenFor('es'))).toBe('de')
})

it('writes to a customer in their language, else in that of the shop', async () => {
  const desk = await makeDesk()
  await testShop(desk)
  const [one, other] = await desk.store.read.customer.findMany({ orderBy: { id: 'asc' } })
  await saveReach(desk, { customerId: one!.id, language: 'de', zone: null, postal: '', version: 0 })
  const spoken = (customerId: string) => speakingTo(desk.store.read, customerId, async () => languageNow())
  expect(await spoken(one!.id)).toBe('de')
  expect(await spoken(other?.id ?? 'nobody')).toBe('en')
})

it('keeps what was read in one language from whoever reads in another', async () => {
  const read = {}
  mayKeepReads(read)
  const title = keptUntilSaved(async (_tx: object) => say('Work order {number}', { number: 12 }))
  expect(await title(read)).toBe('Work order 12')
  expect(await speaking('de', () => title(read))).toBe('Arbeitsauftrag 12')
  expect(await title(read)).toBe('Work order 12')
})

it('asks for a number that is out of range in the language of whoever asks', async () => {
  const { number } = await import('../../../main/services/desk/inputs.ts')
  const refused = () => number('Give a number.').safeParse(2_000_000).error?.issues[0]?.message
  expect(refused()).toBe('Give a number from -1,000,000 to 1,000,000.')
  expect(speaking('de', refused)).toBe('Eine Zahl von -1.000.000 bis 1.000.000 angeben.')
})
