import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

/** No violation that axe calls serious or critical, on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')
  const told = grave.map(({ id, help, nodes }) => ({
    id,
    help,
    at: nodes.map(node => node.target.join(' ')),
  }))
  expect(told, 'accessibility').toEqual([])
}
