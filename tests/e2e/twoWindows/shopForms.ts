/** The forms of the shop itself, its prices and its bills. */
import type { EditForm } from './editForm.ts'

export const shopForms: readonly EditForm[] = [
  {
    file: 'screens/settings/MoneySection.tsx',
    at: () => '/settings/money',
    form: 'Prices and tax',
    field: 'The shop’s tax number',
    first: 'QH 4411',
    second: 'QH 4412',
  },
  {
    file: 'screens/money/bill/BillForm.tsx',
    at: ids => `/money/bill/${ids.job}`,
    form: 'Bill',
    field: 'No tax because',
    first: 'Resale 4411',
    second: 'Resale 4412',
  },
  {
    file: 'screens/settings/ShopSection.tsx',
    at: () => '/settings/shop',
    form: 'Shop',
    field: 'Name',
    first: 'Quillhaven',
    second: 'Quillhaven & Co',
  },
  {
    file: 'screens/settings/PapersSection.tsx',
    at: () => '/settings/papers',
    form: 'Papers',
    field: 'Colour of headings and lines',
    first: '#225544',
    second: '#552244',
  },
]
