import type { Page } from '@playwright/test'
import { axeFaults } from './accessible.ts'
import { showScreen } from './everyScreen.ts'
import { expect, test } from './fixtures.ts'
import { layoutFaults, sizes } from './layout.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true, actionTimeout: 30_000 })

const [tablet, , desktop, , wall] = sizes

/** Each dialog by its screen, what is pressed to open it, one after the other, and its title. */
const dialogs: readonly { path: string; press: readonly RegExp[]; title: RegExp }[] = [
  { path: '/', press: [/^Sick or down/], title: /^Somebody is sick/ },
  { path: '/jobs/demo-job-12', press: [/^Something changed/, /takes longer/], title: /longer/ },
  { path: '/jobs/demo-job-12', press: [/^Hand over$/], title: /^Hand over/ },
  {
    path: '/jobs/demo-job-13',
    press: [/^Something changed/, /^Another day/],
    title: /^Another day, or other work/,
  },
  { path: '/jobs/demo-job-13', press: [/^Something changed/, /comes later/], title: /later/ },
  { path: '/jobs/demo-job-02', press: [/^Something changed/, /fetched later/], title: /later/ },
  { path: '/jobs/demo-job-13', press: [/^New promise/], title: /promise/i },
  { path: '/jobs/demo-job-13', press: [/^Cancel the job/], title: /^Cancel job/ },
  { path: '/jobs/demo-job-13', press: [/^It leaves under cover/], title: /^Covered transport/ },
  { path: '/shelf/orders', press: [/Dunvarrow/, /^Ask after it/], title: /order/i },
  { path: '/shelf/product/demo-ovrel-one', press: [/^Take back: used/], title: /^Take this line back/ },
  { path: '/upkeep/due', press: [/^Skip .* of /], title: /^Skip/ },
  { path: '/upkeep/due', press: [/^More acts/, /^Done/], title: /^Done/ },
  { path: '/upkeep/due', press: [/^More acts/, /^Another day/], title: /^Another day/ },
  { path: '/upkeep/due', press: [/^More acts/, /^Write a reminder/], title: /^Write a reminder to/ },
]

async function openDialog(desk: Page, { path, press, title }: (typeof dialogs)[number]) {
  await showScreen(desk, path)
  const roles = ['button', 'menuitem', 'link'] as const
  for (const name of press)
    await roles
      .map(role => desk.getByRole(role, { name }))
      .reduce((any, each) => any.or(each))
      .first()
      .click()
  await expect(desk.getByRole('dialog', { name: title })).toBeVisible()
}

test('no dialog scrolls sideways, cuts words or controls off or bars anybody, at any size', async ({
  desk,
}) => {
  test.setTimeout(600_000)
  const found: string[] = []
  for (const dialog of dialogs) {
    await desk.setViewportSize(desktop)
    await openDialog(desk, dialog)
    const name = `${dialog.path} ${dialog.press.at(-1)}`
    for (const fault of await axeFaults(desk)) found.push(`${name}: ${JSON.stringify(fault)}`)
    for (const size of [desktop, tablet, wall]) {
      await desk.setViewportSize(size)
      for (const { kind, what } of await layoutFaults(desk))
        found.push(`${name} at ${size.width} × ${size.height}: ${kind}: ${what}`)
    }
    await desk.keyboard.press('Escape')
    await expect(desk.getByRole('dialog')).toHaveCount(0)
  }
  expect(found).toEqual([])
})
