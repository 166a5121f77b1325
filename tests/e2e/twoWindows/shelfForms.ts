/** What the shop makes, washes and throws away: the forms of it that edit what is there already. */
import type { Page } from '@playwright/test'
import type { EditForm } from './editForm.ts'

export const tab = (name: string) => (page: Page) => page.getByRole('tab', { name }).click()

export const shelfForms: readonly EditForm[] = [
  {
    file: 'screens/shelf/product/DilutionForm.tsx',
    at: ids => `/shelf/product/${ids.mixed}`,
    open: tab('How it is kept'),
    form: /is made from$/,
    field: 'A batch keeps',
    first: '20',
    second: '25',
    save: 'Save the share',
  },
  {
    file: 'screens/shelf/product/GradesForm.tsx',
    at: ids => `/shelf/product/${ids.washed}`,
    open: tab('In use and washed'),
    form: 'What the pieces are good for',
    field: 'Washes',
    first: '20',
    second: '25',
  },
  {
    file: 'screens/shelf/safety/WasteRules.tsx',
    at: () => '/shelf/safety',
    form: /^Waste: Cloths/,
    field: 'Cloths wet with solvent or oil',
    first: 'Red can',
    second: 'Grey can',
    save: 'Save the rule',
  },
]
