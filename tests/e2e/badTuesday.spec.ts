import type { Locator } from '@playwright/test'
import { expect, expectAccessible, test } from './fixtures.ts'
import { tabTo } from './keyboard.ts'
import { pageApi } from './pageApi.ts'
import { setUpQuillhaven } from './shops/quillhaven.ts'

// Tuesday, ten in the morning in London.
test.use({ shopNow: '2026-04-14T09:00:00Z' })

test('a bad Tuesday by keyboard: a sick call, a lamp failure, two told, one late, one not at all, its place goes to the list, one act is taken back', async ({
  page: desk,
  shop,
}) => {
  await shop.enter(desk)
  const api = pageApi(desk)
  await setUpQuillhaven(api)
  const treatments = await api.treatments.list.query({})
  const treatmentIds = [treatments.find(each => each.name === 'One-step correction')?.id ?? treatments[1]!.id]
  const jobs: string[] = []
  for (const [name, plate] of [
    ['Ada Merrin', 'QH 11'],
    ['Bram Tolley', 'QH 12'],
  ] as const) {
    const wish = { sizeClass: 'medium' as const, condition: 'good' as const, treatmentIds }
    const { soonest } = await api.booking.offers.query(wish)
    if (!soonest.feasible) throw new Error('no place')
    const vehicle = {
      plate,
      make: '',
      model: '',
      colour: '',
      sizeClass: 'medium' as const,
      finish: 'gloss' as const,
    }
    const customer = { name, phone: '', email: '' }
    const { jobId } = await api.booking.book.mutate({ ...wish, plan: soonest.plan, customer, vehicle })
    jobs.push(jobId)
  }
  const { id: waits } = await api.customers.save.mutate({
    name: 'Cleo Ashdown',
    phone: '',
    email: '',
    note: '',
  })
  const { id: vehicleId } = await api.vehicles.save.mutate({
    customerId: waits,
    plate: 'QH 13',
    make: '',
    model: '',
    colour: '',
    year: null,
    vin: null,
    sizeClass: 'medium',
    finish: 'gloss',
    note: '',
  })
  await api.waiting.add.mutate({
    vehicleId,
    treatmentIds,
    condition: 'good',
    scope: 'whole',
    fromOn: '2026-04-14',
    toOn: '2026-04-15',
    weekdays: [],
    note: '',
  })

  // Ten: Imre rings in sick, then the lamp of a bay fails. Each is recorded at once, and the cars are set right after.
  await shop.enter(desk, '/')
  const dialog = desk.getByRole('dialog')
  const press = async (button: Locator) => {
    await tabTo(button)
    await desk.keyboard.press('Enter')
  }
  const out = async (what: string, missing: RegExp) => {
    await press(desk.getByRole('button', { name: 'Sick or down…' }))
    const which = dialog.getByRole('combobox', { name: 'Who or which bay' })
    await tabTo(which)
    await desk.keyboard.press('ArrowDown')
    const option = desk.getByRole('option', { name: what })
    await expect(option).toBeVisible()
    while ((await option.getAttribute('data-combobox-selected')) === null)
      await desk.keyboard.press('ArrowDown')
    await desk.keyboard.press('Enter')
    await expect(which).toHaveValue(what)
    await press(dialog.getByRole('button', { name: 'Record it' }))
    await expect(desk.getByRole('heading', { name: 'Set right' })).toBeVisible()
    const cars = desk.getByRole('list', { name: 'Promises to set right' })
    const car = cars.getByRole('listitem').filter({ hasText: missing })
    await expect(car.first()).toBeVisible()
    await press(car.getByRole('button', { name: /: (promise kept|home )/ }).first())
    await expect(car).toHaveCount(0)
  }
  await out('Imre Vallis', /Imre Vallis is away/)
  await out('Bay one', /Bay one is closed/)

  // Both are told by phone that the promise has moved, and it stands on their jobs.
  for (const [i, job] of jobs.entries()) {
    await shop.enter(desk, `/jobs/${job}`)
    const said = desk.getByRole('button', { name: 'Said by phone' })
    await expect(said).toBeVisible()
    await tabTo(said, 'Shift+Tab')
    await desk.keyboard.press('Enter')
    await expect(desk.getByRole('list', { name: 'What was said' })).toContainText(
      i === 0 ? 'Dear Ada Merrin' : 'Dear Bram Tolley',
    )
  }

  // Half past eleven: neither car is here.
  await shop.restart('2026-04-14T10:30:00Z')
  await desk.clock.setFixedTime('2026-04-14T10:30:00Z')
  await shop.enter(desk, `/jobs/${jobs[0]}`)
  const otherwise = desk.getByRole('button', { name: 'Something changed…' })
  const choose = async (item: string) => {
    await tabTo(otherwise)
    await desk.keyboard.press('Enter')
    const entry = desk.getByRole('menuitem', { name: item })
    await expect(entry).toBeVisible()
    while (!(await entry.evaluate(element => element === document.activeElement)))
      await desk.keyboard.press('ArrowDown')
    await desk.keyboard.press('Enter')
  }
  await choose('The car comes later…')
  await expectAccessible(desk)
  await tabTo(dialog.getByRole('button', { name: 'Write it down' }))
  await desk.keyboard.press('Enter')
  await expect(desk.getByText(/comes Tue 14 April .* instead of/).first()).toBeVisible()

  await shop.enter(desk, `/jobs/${jobs[1]}`)
  await choose('The car did not come…')
  await tabTo(dialog.getByRole('button', { name: 'It did not come' }))
  await desk.keyboard.press('Enter')
  await expect(desk.getByText(/did not come, was expected/).first()).toBeVisible()

  const who = desk.getByRole('link', { name: 'Who on the waiting list fits?' })
  await tabTo(who)
  await desk.keyboard.press('Enter')
  const list = desk.getByRole('list', { name: 'Waiting list' })
  await expect(list).toContainText('✓ Fits')
  await expectAccessible(desk)
  await tabTo(desk.getByRole('button', { name: 'Ask Cleo Ashdown' }))
  await desk.keyboard.press('Enter')
  await expect(list).toContainText('Held until')
  await tabTo(desk.getByRole('button', { name: 'They said yes Cleo Ashdown' }))
  await desk.keyboard.press('Enter')
  await expect(desk.getByText('Nobody waits.')).toBeVisible()

  // Taken back from another screen and after a reload: they wait again, and the place is held as before.
  const goTo = async (screen: string) => {
    await tabTo(desk.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: screen }))
    await desk.keyboard.press('Enter')
  }
  await desk.reload()
  await expect(desk.getByText('Nobody waits.')).toBeVisible()
  await goTo('Morning')
  await expect(desk.getByRole('heading', { name: /Morning sheet/ })).toBeVisible()
  await desk.keyboard.press('Control+z')
  await expect(desk.getByText('Taken back', { exact: true })).toBeVisible()
  await goTo('Book')
  await expect(list).toContainText('Held until')
})
