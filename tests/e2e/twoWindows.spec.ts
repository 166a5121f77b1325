import type { Locator, Page } from '@playwright/test'
import { expect, test } from './fixtures.ts'
import { pageApi } from './pageApi.ts'
import { goOn } from './server.ts'
import type { EditForm } from './twoWindows/editForm.ts'
import { editForms } from './twoWindows/forms.ts'
import { type Ids, setUpEveryForm, workTheDay } from './twoWindows/shop.ts'

test.use({ shopNow: '2026-04-14T07:00:00Z', actionTimeout: 15_000 })

const formOf = (page: Page, { form }: EditForm) => page.getByRole('form', { name: form }).first()
const fieldOf = (form: Locator, { field }: EditForm) => form.getByLabel(field, { exact: true })
const saveOf = (form: Locator, { save = 'Save' }: EditForm) =>
  form.getByRole('button', { name: save, exact: true })

/** Types into the field; a field of fixed words is given its first or its second. */
async function fill(page: Page, form: Locator, row: EditForm, text: string, choice: number): Promise<string> {
  const field = fieldOf(form, row)
  if (text) await field.fill(text)
  else {
    await field.click()
    await page.getByRole('option').nth(choice).click()
  }
  return field.inputValue()
}

test('in two windows on one form the second to save is refused, and nothing typed is lost', async ({
  desk,
  shop,
  context,
}) => {
  test.setTimeout(480_000)
  let ids: Ids
  await test.step('a shop in which every form can be opened', async () => {
    ids = await setUpEveryForm(pageApi(desk))
    await shop.restart('2026-04-14T16:40:00Z')
    await shop.enter(desk)
    await workTheDay(pageApi(desk), ids)
  })
  const other = await context.newPage()
  await shop.enter(other)
  const failed: string[] = []
  for (const row of editForms)
    await test.step(row.file, async () => {
      try {
        for (const page of [desk, other]) {
          await goOn(page, row.at(ids))
          await row.open?.(page)
        }
        await saveInBoth(desk, other, row)
      } catch (error) {
        failed.push(`${row.file}: ${error}`)
        // What was left typed would hold the next form's way up.
        for (const page of [desk, other]) await page.reload()
      }
    })
  expect(failed, 'every form that failed, not only the first').toEqual([])
})

async function saveInBoth(desk: Page, other: Page, row: EditForm): Promise<void> {
  const [mine, theirs] = [formOf(desk, row), formOf(other, row)]
  const typed = await fill(other, theirs, row, row.second, 1)
  const saved = await fill(desk, mine, row, row.first, 0)
  await saveOf(mine, row).click()
  await expect(theirs.getByText('Changed in another window')).toBeVisible()
  await expect(fieldOf(theirs, row)).toHaveValue(typed)
  await saveOf(theirs, row).click()
  await expect(theirs.getByRole('alert')).toBeVisible()
  await expect(fieldOf(theirs, row)).toHaveValue(typed)
  await theirs.getByRole('button', { name: 'Show what is there now' }).click()
  await expect(theirs.getByRole('alert')).toBeHidden()
  // Of an order that comes in, the field then asks for the rest, no longer for what came.
  if (!row.file.endsWith('ReceiveOrder.tsx')) await expect(fieldOf(theirs, row)).toHaveValue(saved)
}
