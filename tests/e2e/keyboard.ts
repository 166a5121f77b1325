import { expect, type Locator, type Page } from '@playwright/test'

/**
 * Goes to a control with the Tab key alone, from wherever the focus is, back with Shift where it stands near the end;
 * fails where it cannot be reached.
 */
export async function tabTo(target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab', most = 120): Promise<void> {
  const page = target.page()
  for (let presses = 0; presses < most; presses++) {
    if (await target.evaluate(element => element === element.ownerDocument.activeElement)) return
    await page.keyboard.press(key)
  }
  await expect(target, `within ${most} presses of ${key}`).toBeFocused()
}

/**
 * Types two keys that belong together, as a hand does: the second does not wait until the page is done with the first.
 * One by one they drift apart on a busy machine, and the app rightly takes them for two keys of their own.
 */
export async function typePair(page: Page, first: string, second: string): Promise<void> {
  await Promise.all([page.keyboard.press(first), page.keyboard.press(second)])
}
