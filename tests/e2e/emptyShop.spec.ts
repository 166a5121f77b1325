import { everyScreen, showScreen } from './everyScreen.ts'
import { expect, test } from './fixtures.ts'
import { Frame } from './pages/Frame.ts'
import { Welcome } from './pages/Welcome.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z' })

/** The screens that need no row; the sheet of a day is printed, and says of a day without cars just that. */
const screens = everyScreen.filter(path => !path.includes('demo-') && path !== '/morning')

test('in a shop that has nothing yet, every empty place says how it gets filled, or has the act that fills it', async ({
  desk,
}) => {
  test.setTimeout(240_000)
  const welcome = new Welcome(desk)
  await welcome.name.fill('Ashdown Paint Care')
  await welcome.crewName(1).fill('Mika')
  await welcome.open.click()
  await expect(new Frame(desk).bar).toBeVisible()
  const bare: string[] = []
  for (const path of screens) {
    await showScreen(desk, path)
    const found = await desk.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('main p, main td')]
        .filter(each => each.checkVisibility())
        .map(each => ({
          words: (each.closest('[class*="_empty"]') ?? each).textContent.trim(),
          around: each.closest('section, li, form') ?? each,
        }))
        .filter(({ words }) => /^(No|None|Nothing|Nobody|Not)\b/.test(words))
        // A second clause says how it gets filled; else the act stands beside it.
        .filter(
          ({ words, around }) =>
            !/[.:;,]\s*\S/.test(words) && !around.querySelector('button:enabled, a[href]'),
        )
        .map(({ words }) => words),
    )
    bare.push(...found.map(words => `${path}: ${words}`))
  }
  expect(bare).toEqual([])
})
