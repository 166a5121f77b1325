import { expect, expectAccessible, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { setUpShelfShop } from './shops/shelfShop.ts'

// Tuesday 14 April 2026, 08:00 on the shop's clock.
test.use({ shopNow: '2026-04-14T07:00:00Z' })

test('what is still in use is put away only once that was read: an offer, a size, a supplier', async ({
  desk,
  shop,
}) => {
  const { productIds } = await setUpShelfShop(pageApi(desk))
  const question = desk.getByRole('dialog', { name: 'This is still in use' })
  const leaveIt = question.getByRole('button', { name: 'Leave it as it is' })
  const doIt = question.getByRole('button', { name: 'Do it anyway' })
  await shop.enter(desk, `/shelf/product/${productIds.coating}`)
  await desk.getByRole('tab', { name: 'Sizes and buying' }).click()
  const sizes = desk.getByRole('region', { name: 'Sizes' })
  const offers = desk.getByRole('region', { name: 'Offers' })
  const changeOffer = offers.getByRole('button', { name: 'Change the offer of Ferring Coatings' })
  const archiveSize = sizes.getByRole('button', { name: 'Archive this size' })

  await test.step('a size that is still bought is refused in words', async () => {
    await sizes.getByRole('button', { name: 'Change the size 50 ml' }).click()
    await archiveSize.click()
    await expect(sizes.getByRole('alert')).toContainText('Ferring Coatings still sells it to you')
  })

  await test.step('the only offer: left as it is first, then archived', async () => {
    await changeOffer.click()
    const archive = offers.getByRole('button', { name: 'Archive this offer' })
    await archive.click()
    await expect(question).toContainText('Coating, 50 ml: there is no other way to buy it')
    await expectAccessible(desk)
    await leaveIt.click()
    await expect(question).toHaveCount(0)
    await expect(changeOffer).toBeVisible()
    await archive.click()
    await doIt.click()
    await expect(archive).toHaveCount(0)
    await expect(offers.locator('tr[data-past="true"]')).toContainText('Ferring Coatings')
  })

  await test.step('its size: a bottle of it stands on the shelf', async () => {
    await archiveSize.click()
    await expect(question).toContainText('1 container on the shelf')
    await doIt.click()
    await expect(archiveSize).toHaveCount(0)
    await expect(sizes.locator('tr[data-past="true"]')).toContainText('50 ml')
  })

  await test.step('a supplier: what it sells goes with it', async () => {
    await shop.enter(desk, '/shelf/suppliers')
    const hallam = desk.getByRole('link', { name: /^Hallam Trade Chemicals/ })
    await hallam.click()
    const archive = desk.getByRole('button', { name: 'Archive this supplier' })
    await archive.click()
    await expect(question).toContainText('What it sells you goes with it:')
    await expect(question).toContainText('Panel wipe, 250 ml: there is no other way to buy it')
    await leaveIt.click()
    await expect(hallam).toBeVisible()
    await archive.click()
    await doIt.click()
    await expect(hallam).toHaveCount(0)
  })
})
