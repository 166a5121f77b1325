import type { Page } from '@playwright/test'
import { testNow } from '../setup/clock.ts'
import { axeFaults, colourRules, inColours } from './accessible.ts'
import { coveredControls } from './covered.ts'
import { everyScreen, showScreen } from './everyScreen.ts'
import { expect, test } from './fixtures.ts'
import { layoutFaults, sizes, zoomed } from './layout.ts'
import { pageApi } from './pageApi.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

interface Size {
  width: number
  height: number
}

/** What `find` says of every screen at each of some sizes. */
async function faultsOf(
  desk: Page,
  at: readonly Size[],
  find: (size: Size) => Promise<string[]>,
): Promise<string[]> {
  const found: string[] = []
  for (const path of everyScreen) {
    await showScreen(desk, path)
    for (const size of at) {
      await desk.setViewportSize(size)
      for (const fault of await find(size)) found.push(`${path} at ${size.width} × ${size.height}: ${fault}`)
    }
  }
  return found
}

const laidOut = async (desk: Page) => (await layoutFaults(desk)).map(({ kind, what }) => `${kind}: ${what}`)

/**
 * What axe says by all its rules in one scheme, and of the colours in the other; the scheme follows the computer's,
 * without a reload. The page stays in the other, so that the next look begins there: a change of all colours costs as
 * much as half a judgement.
 */
async function judged(desk: Page): Promise<string[]> {
  const tell = async (found: ReturnType<typeof axeFaults>) =>
    (await found).map(fault => `${scheme}: ${JSON.stringify(fault)}`)
  let scheme = (await desk.evaluate(() => document.documentElement.dataset.mantineColorScheme)) as
    | 'light'
    | 'dark'
  const first = await tell(axeFaults(desk))
  scheme = scheme === 'light' ? 'dark' : 'light'
  await inColours(desk, scheme)
  return [...first, ...(await tell(axeFaults(desk, colourRules)))]
}

/**
 * Where axe judges: at every size, but where the suite is run again on another day at that day's alone. What a date
 * changes is words and where things stand, which is looked at everywhere; in twelve days each size has its turn.
 */
const judgedAt = sizes.filter(
  (_, index) => !testNow || index === Math.floor(Date.parse(testNow) / 86_400_000) % sizes.length,
)

test('no screen scrolls sideways, cuts words or controls off, writes over itself or bars anybody, at any size', async ({
  desk,
}) => {
  // Three hundred pages, each judged by axe in light and in dark: minutes, and more of them beside other work.
  test.setTimeout(1_200_000)
  expect(
    await faultsOf(desk, sizes, async size => [
      ...(await laidOut(desk)),
      ...(judgedAt.some(({ width }) => width === size.width) ? await judged(desk) : []),
    ]),
  ).toEqual([])
})

test('nor at 200 %, where every control can also be gone to', async ({ desk }) => {
  test.setTimeout(600_000)
  expect(
    await faultsOf(desk, [zoomed], async () => [
      ...(await laidOut(desk)),
      ...(await coveredControls(desk)).map(what => `covered: ${what}`),
    ]),
  ).toEqual([])
})

test('nor in German, whose words are longer, where there is least room', async ({ desk }) => {
  test.setTimeout(600_000)
  const api = pageApi(desk)
  const shop = (await api.shop.get.query())!
  await api.shop.update.mutate({ ...shop, language: 'de' })
  await desk.reload()
  expect(
    await faultsOf(desk, [zoomed, ...sizes.filter(size => size.width < 1900)], () => laidOut(desk)),
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
    <div style="display: grid; grid-template-columns: 1fr 1fr; height: auto">
      <section class="mantine-InputWrapper-root">level<p class="mantine-Input-wrapper">one</p></section>
      <section class="mantine-InputWrapper-root">lower<br />in two lines<p class="mantine-Input-wrapper">two</p></section>
    </div>
    <div style="margin-left: 3000px"><button>cut</button></div>`)
  expect(await layoutFaults(page)).toEqual([
    expect.objectContaining({ kind: 'sideways' }),
    { kind: 'clipped', what: 'clipped by what holds it' },
    { kind: 'spilt', what: 'spilt over an edge' },
    { kind: 'overlap', what: 'one / other' },
    { kind: 'cut off', what: 'cut' },
    { kind: 'uneven', what: 'lowerin two linestwo' },
  ])
})
