import type { Page } from '@playwright/test'
import { everyScreen, showScreen } from './everyScreen.ts'
import { expect, test } from './fixtures.ts'
import { layoutFaults, sizes } from './layout.ts'
import { pageApi } from './pageApi.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

async function faultsOf(desk: Page, at: readonly { width: number; height: number }[]): Promise<string[]> {
  const found: string[] = []
  for (const path of everyScreen) {
    await showScreen(desk, path)
    for (const size of at) {
      await desk.setViewportSize(size)
      for (const { kind, what } of await layoutFaults(desk))
        found.push(`${path} at ${size.width} × ${size.height}: ${kind}: ${what}`)
    }
  }
  return found
}

test('no screen scrolls sideways, cuts words or controls off, or writes over itself, at any size', async ({
  desk,
}) => {
  // Two hundred pages: about a minute where nothing else runs, several beside other work.
  test.setTimeout(600_000)
  expect(await faultsOf(desk, sizes)).toEqual([])
})

test('nor in German, whose words are longer, where there is least room', async ({ desk }) => {
  test.setTimeout(600_000)
  const api = pageApi(desk)
  const shop = (await api.shop.get.query())!
  await api.shop.update.mutate({ ...shop, language: 'de' })
  await desk.reload()
  expect(
    await faultsOf(
      desk,
      sizes.filter(size => size.width < 1900),
    ),
  ).toEqual([])
})

test('what is planted is found', async ({ page }) => {
  await page.setContent(`
    <style>body { margin: 0; width: 600px } div { position: relative; height: 40px; font: 16px sans-serif }</style>
    <div style="width: 5000px">wide</div>
    <div style="width: 60px; overflow: hidden; white-space: nowrap">clipped by what holds it</div>
    <div style="width: 60px; overflow: hidden; white-space: nowrap" title="said in full">shortened with its title</div>
    <div style="width: 60px; overflow: auto; white-space: nowrap">scrolls in a box of its own</div>
    <div style="width: 60px; border: 1px solid; white-space: nowrap">spilt over an edge</div>
    <div><span>one</span><span style="margin-left: -1em">other</span></div>
    <div style="margin-left: 3000px"><button>cut</button></div>`)
  expect(await layoutFaults(page)).toEqual([
    expect.objectContaining({ kind: 'sideways' }),
    { kind: 'clipped', what: 'clipped by what holds it' },
    { kind: 'spilt', what: 'spilt over an edge' },
    { kind: 'overlap', what: 'one / other' },
    { kind: 'cut off', what: 'cut' },
  ])
})
