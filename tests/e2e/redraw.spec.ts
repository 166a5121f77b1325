import type { Page } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { Board } from './pages/Board.ts'

test.use({ shopNow: '2026-04-15T13:40:00Z', shopDemo: true })

/** What React tells its developer tools of a commit, as far as it is read here. */
interface Fiber {
  flags: number
  alternate: Fiber | null
  child: Fiber | null
  sibling: Fiber | null
  type: unknown
  stateNode: unknown
}

interface Drawn {
  components: number
  stays: number
}

/**
 * Counts, commit by commit, the components that React ran again and the drawn stays under them. React calls a developer
 * tool's hook in any build; a component that ran has the first of its flags set, and a part that was left alone keeps
 * its children.
 */
async function countDrawn(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const drawn: Drawn[] = []
    const look = (fiber: Fiber | null, under: boolean, sum: Drawn) => {
      for (let at = fiber; at; at = at.sibling) {
        const again = typeof at.type !== 'string' && at.alternate !== null && (at.flags & 1) === 1
        if (again) sum.components++
        const node = at.stateNode
        if (under && node instanceof SVGGElement && node.hasAttribute('data-held')) sum.stays++
        const component = typeof at.type === 'function' || (typeof at.type === 'object' && at.type !== null)
        if (at.child && at.child !== at.alternate?.child) look(at.child, component ? again : under, sum)
      }
    }
    Object.assign(window, {
      drawn,
      __REACT_DEVTOOLS_GLOBAL_HOOK__: {
        supportsFiber: true,
        renderers: new Map(),
        inject: () => 1,
        onCommitFiberUnmount() {},
        onPostCommitFiberRoot() {},
        onCommitFiberRoot(_: number, root: { current: Fiber }) {
          const sum = { components: 0, stays: 0 }
          look(root.current.child, false, sum)
          drawn.push(sum)
        },
      },
    })
  })
}

const takeDrawn = (page: Page) =>
  page.evaluate(() => (window as unknown as { drawn: Drawn[] }).drawn.splice(0))

test('a drag step draws anew only what moves, however many cars stand on the board', async ({
  page,
  shop,
}) => {
  await countDrawn(page)
  await shop.enter(page)
  const board = new Board(page)
  await board.show('Week')
  const stays = await board.stays.count()
  expect(stays).toBeGreaterThan(12)
  // That the count counts: another span draws every stay anew.
  await board.show('Three days')
  await board.show('Week')
  expect(Math.max(...(await takeDrawn(page)).map(each => each.stays))).toBeGreaterThan(8)

  const stay = board.staysOf('WKY 722').last()
  await stay.focus()
  await stay.press('m')
  await expect(board.status).not.toHaveText('')
  await takeDrawn(page)
  for (let step = 0; step < 4; step++) {
    await stay.press('ArrowRight')
    await expect(board.status).toHaveText(/fits|not possible/)
  }
  const steps = await takeDrawn(page)
  expect(steps.length).toBeGreaterThan(3)
  // The stay that is carried, its ghost, and one at most that an answer from the shop brings up to date.
  expect(Math.max(...steps.map(each => each.stays))).toBeLessThanOrEqual(3)
  test.info().annotations.push({ type: 'drawn', description: JSON.stringify(steps) })
  await stay.press('Escape')
})
