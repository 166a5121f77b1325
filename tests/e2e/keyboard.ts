import { expect, type Locator } from '@playwright/test'

/** Goes to a control with the Tab key alone, from wherever the focus is; fails where it cannot be reached. */
export async function tabTo(target: Locator, most = 120): Promise<void> {
  const page = target.page()
  for (let presses = 0; presses < most; presses++) {
    if (await target.evaluate(element => element === element.ownerDocument.activeElement)) return
    await page.keyboard.press('Tab')
  }
  await expect(target, `within ${most} presses of Tab`).toBeFocused()
}
