import { beforeEach, expect, it } from 'vitest'
import { listTemplates, previewTemplate, saveTemplate } from '../../../main/services/reminders/templates.ts'
import { agree } from '../upkeep/coatedCar.ts'
import { change, duePlan, type ReminderDesk, reminderDesk } from './reminderDesk.ts'

let desk: ReminderDesk['desk']
let vehicleId: string
beforeEach(async () => {
  const made = await reminderDesk(1)
  desk = made.desk
  vehicleId = made.shop.vehicles[0]!
})

const template = async (id: string) => (await listTemplates(desk)).templates.find(each => each.id === id)
const words = { en: { subject: 'Your {{carName}}', body: 'Dear {{ownerName}}, see you.' } }

it('brings words for every channel, until the shop saves its own in their place', async () => {
  const { templates } = await listTemplates(desk)
  expect(templates.map(each => [each.id, each.channel, each.version])).toEqual([
    ['reminder-email', 'email', 0],
    ['reminder-letter', 'letter', 0],
    ['reminder-text', 'text', 0],
    ['reminder-call', 'call', 0],
  ])
  const own = { id: 'reminder-email', name: ' Ours ', channel: 'email', words } as const
  await saveTemplate(desk, { ...own, version: 0 })
  expect(await template('reminder-email')).toEqual({ ...own, name: 'Ours', version: 1 })
  expect((await listTemplates(desk)).templates).toHaveLength(4)
  await expect(saveTemplate(desk, { ...own, version: 0 })).rejects.toMatchObject({ code: 'stale' })
  await saveTemplate(desk, { ...own, name: 'Theirs', version: 1 })
  expect(await template('reminder-email')).toMatchObject({ name: 'Theirs', version: 2 })
})

it('adds one without an id, and never moves one to another channel', async () => {
  const { id } = await saveTemplate(desk, { name: 'Second', channel: 'text', words, version: 0 })
  expect(await template(id)).toMatchObject({ name: 'Second', channel: 'text', version: 1 })
  await expect(
    saveTemplate(desk, { id, name: 'Second', channel: 'call', words, version: 1 }),
  ).rejects.toMatchObject({ field: 'channel' })
  await expect(
    saveTemplate(desk, { id: 'reminder-text', name: 'x', channel: 'email', words, version: 0 }),
  ).rejects.toMatchObject({ field: 'channel' })
})

it('previews a real car with its next visit, and times after the hold', async () => {
  await duePlan(desk, vehicleId)
  const seen = await previewTemplate(desk, { templateId: 'reminder-email', vehicleId })
  expect(seen).toMatchObject({
    language: 'en',
    unfilled: [],
    subject: expect.stringContaining('Marlo Wendrel'),
  })
  // Held until Monday evening, five days on; the visit is due on 28 April.
  for (const part of ['Ines Vale', 'April 28', 'Tuesday, April 28', 'Thursday, April 30', 'Monday, April 20'])
    expect(seen.body).toContain(part)
  const typed = await previewTemplate(desk, { words: words.en, vehicleId })
  expect(typed).toMatchObject({ subject: 'Your Marlo Wendrel', body: 'Dear Ines Vale, see you.' })
})

it('speaks the language asked for, else the owner’s, else the shop’s', async () => {
  await agree(desk, vehicleId, ['letter'])
  const language = async (asked?: string) =>
    (
      await previewTemplate(desk, {
        templateId: 'reminder-email',
        vehicleId,
        ...(asked && { language: asked }),
      })
    ).language
  expect(await language()).toBe('en')
  await change(desk, { language: 'es' })
  expect(await language()).toBe('es')
  await desk.store.transact({ who: 'test', at: desk.now() }, tx =>
    tx.ownerReach.updateMany({ data: { language: 'de' } }),
  )
  expect(await language()).toBe('de')
  expect(await language('en')).toBe('en')
})

it.each(['x', 'toString', 'constructor', '__proto__'])(
  'refuses %s as a language, or writes the shop’s',
  async language => {
    // "tostring" has the form of a registered language (RFC 5646, section 2.2.1: five to eight letters), so it is one nobody speaks.
    if (language === 'toString')
      expect(
        await previewTemplate(desk, { templateId: 'reminder-email', vehicleId, language }),
      ).toMatchObject({
        language: 'en',
      })
    else
      await expect(
        previewTemplate(desk, { templateId: 'reminder-email', vehicleId, language }),
      ).rejects.toMatchObject({ field: 'language' })
  },
)

it('refuses a car or a template that is not there', async () => {
  await expect(previewTemplate(desk, { templateId: 'none', vehicleId })).rejects.toMatchObject({
    field: 'templateId',
  })
  await expect(
    previewTemplate(desk, { templateId: 'reminder-email', vehicleId: 'none' }),
  ).rejects.toMatchObject({ field: 'vehicleId' })
})
