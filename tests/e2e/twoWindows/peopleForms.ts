/** The forms about customers and their cars. */
import type { Page } from '@playwright/test'
import type { EditForm } from './editForm.ts'

const press = (name: string | RegExp) => (page: Page) => page.getByRole('button', { name }).first().click()

export const peopleForms: readonly EditForm[] = [
  {
    file: 'screens/customers/Customer.tsx',
    at: ids => `/customers/${ids.customer}`,
    open: press('Change name, number or note'),
    form: 'How to reach them',
    field: 'Note',
    first: 'Rings before nine',
    second: 'Prefers mail',
  },
  {
    file: 'screens/customers/Contacts.tsx',
    at: ids => `/customers/${ids.customer}`,
    open: press('Change Ira Holt'),
    form: 'Contact Ira Holt',
    field: 'What they do',
    first: 'signs for it',
    second: 'pays',
  },
  {
    file: 'screens/customers/VehicleForm.tsx',
    at: ids => `/customers/${ids.customer}`,
    open: press(/^Change QHV/),
    form: /^Car QHV/,
    field: 'Colour',
    first: 'dark grey',
    second: 'silver',
  },
  {
    file: 'screens/customers/ReachForm.tsx',
    at: ids => `/customers/${ids.customer}`,
    open: press('Language and postal address'),
    form: 'Language and postal address',
    field: 'Postal address',
    first: '1 Kiln Lane',
    second: '2 Kiln Lane',
  },
  {
    file: 'screens/intake/IntakeForm.tsx',
    at: ids => `/jobs/${ids.job}/intake`,
    form: 'Intake',
    field: 'Belongings left in it',
    first: 'Child seat',
    second: 'Roof box',
    save: 'Save as a draft',
  },
  {
    file: 'screens/intake/AfterWork.tsx',
    at: ids => `/jobs/${ids.signedJob}/intake`,
    form: 'Measured after the work',
    field: 'Its serial number',
    first: 'TG-11',
    second: 'TG-12',
    save: 'Save these readings',
  },
  {
    file: 'screens/settings/MeasuringSection.tsx',
    at: () => '/settings/measuring',
    form: 'Measuring',
    field: 'Thinnest paint that is corrected without a reason',
    first: '85',
    second: '95',
  },
]
