/** Every form that edits what is there already; tests/rules/forms.test.ts says which one is missing here or in otherForms.ts. */
import type { Page } from '@playwright/test'
import type { Ids } from './shop.ts'

/** A form that edits what is there already, and how two windows get at it. */
export interface EditForm {
  /** Below app/. */
  file: string
  at(ids: Ids): string
  open?(page: Page): Promise<void>
  /** The form's name, where the page has several. */
  form: string | RegExp
  field: string
  /** What the first window saves, and the second has typed meanwhile. */
  first: string
  second: string
  /** The button that saves; "Save" where nothing is said. */
  save?: string
}

const press = (name: string | RegExp) => (page: Page) => page.getByRole('button', { name }).first().click()
const tab = (name: string) => (page: Page) => page.getByRole('tab', { name }).click()

export const editForms: readonly EditForm[] = [
  {
    file: 'screens/settings/BaysSection.tsx',
    at: ids => `/settings/bays/${ids.bay}`,
    form: /^(Bay one|Wash bay)$/,
    field: 'Name',
    first: 'Wash bay',
    second: 'Wet bay',
  },
  {
    file: 'screens/settings/Stretches.tsx',
    at: ids => `/settings/bays/${ids.bay}`,
    open: press(/^Change .* June/),
    form: 'Closed for a time',
    field: 'What for',
    first: 'Floor painted',
    second: 'New drain',
  },
  {
    file: 'screens/settings/CrewSection.tsx',
    at: ids => `/settings/crew/${ids.crew}`,
    form: /^Imre V/,
    field: 'Name',
    first: 'Imre V.',
    second: 'I. Vallis',
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
    file: 'screens/settings/HoursSection.tsx',
    at: () => '/settings/hours',
    form: 'Opening hours',
    field: 'Friday closes',
    first: '18:30',
    second: '19:00',
  },
  {
    file: 'screens/settings/Exceptions.tsx',
    at: () => '/settings/hours',
    open: press('Change 2026-12-25'),
    form: 'A date with hours of its own',
    field: 'What for',
    first: 'Christmas',
    second: 'Closed',
  },
  {
    file: 'screens/settings/products/ProductEditor.tsx',
    at: ids => `/settings/products/${ids.product}`,
    form: /shampoo$/,
    field: 'Name',
    first: 'Mild shampoo',
    second: 'Strong shampoo',
  },
  {
    file: 'screens/settings/treatments/TreatmentEditor.tsx',
    at: ids => `/settings/treatments/${ids.treatment}`,
    form: 'Wash and decontaminate',
    field: 'What it is, for the customer',
    first: 'Clean to the clear coat.',
    second: 'A thorough wash.',
  },
  {
    file: 'screens/shelf/suppliers/SupplierForm.tsx',
    at: ids => `/shelf/suppliers/${ids.supplier}`,
    form: 'Hallam Trade Chemicals',
    field: 'Takes, on average',
    first: '4',
    second: '9',
  },
  {
    file: 'screens/shelf/rules/RulesForm.tsx',
    at: () => '/shelf/rules',
    form: 'Rules of the shelf',
    field: 'Vital products',
    first: '97',
    second: '98',
  },
  {
    file: 'screens/shelf/rules/MailForm.tsx',
    at: () => '/shelf/rules',
    form: 'How mail leaves the shop',
    field: 'Port',
    first: '2526',
    second: '2527',
    save: 'Save the mail settings',
  },
  {
    file: 'screens/shelf/product/KeptForm.tsx',
    at: ids => `/shelf/product/${ids.product}`,
    open: tab('How it is kept'),
    form: /is kept$/,
    field: 'Where it stands',
    first: 'Cabinet 2',
    second: 'Cabinet 3',
  },
  {
    file: 'screens/shelf/product/SizeForm.tsx',
    at: ids => `/shelf/product/${ids.product}`,
    open: async page => {
      await tab('Sizes and buying')(page)
      await press(/^Change the size/)(page)
    },
    form: /^Size/,
    field: 'Empty, with its cap',
    first: '91',
    second: '92',
  },
  {
    file: 'screens/shelf/product/OfferForm.tsx',
    at: ids => `/shelf/product/${ids.product}`,
    open: async page => {
      await tab('Sizes and buying')(page)
      await press(/^Change the offer/)(page)
    },
    form: /^Offer of/,
    field: 'Their article number',
    first: 'HT-101',
    second: 'HT-102',
  },
  {
    file: 'screens/shelf/product/RecipeForm.tsx',
    at: ids => `/shelf/product/${ids.product}`,
    open: async page => {
      await tab('Recipe and real use')(page)
      await press(/^Change the recipe/)(page)
    },
    form: /^Recipe of/,
    field: 'Medium car',
    first: '35',
    second: '40',
    save: 'Save the recipe',
  },
  {
    file: 'screens/shelf/safety/SafetyForm.tsx',
    at: ids => `/shelf/product/${ids.product}`,
    open: async page => {
      await tab('Safety')(page)
      await press('Enter what the sheet says')(page)
    },
    form: /^Data sheet of/,
    field: 'Note',
    first: 'Sheet asked for',
    second: 'No sheet found',
  },
  {
    file: 'screens/shelf/orders/DraftOrder.tsx',
    at: ids => `/shelf/orders/${ids.draftOrder}`,
    form: /^Order .* to Hallam/,
    field: 'Packs of Mild shampoo',
    first: '3',
    second: '5',
  },
  {
    file: 'screens/shelf/orders/SentOrder.tsx',
    at: ids => `/shelf/orders/${ids.sentOrder}`,
    form: 'The day the supplier names',
    field: 'The supplier names a day',
    first: '2026-04-21',
    second: '2026-04-22',
    save: 'Reckon with it',
  },
  {
    file: 'screens/shelf/orders/ReceiveOrder.tsx',
    at: ids => `/shelf/orders/${ids.sentOrder}`,
    form: /^Receive order/,
    field: 'Containers of Mild shampoo that came',
    first: '1',
    second: '2',
    save: 'Put it on the shelf',
  },
  {
    file: 'screens/conditions/UsualForm.tsx',
    at: () => '/conditions',
    form: /^Usual temperature/,
    field: 'Usually',
    first: '19',
    second: '23',
  },
  {
    file: 'screens/customers/Customer.tsx',
    at: ids => `/customers/${ids.customer}`,
    form: 'How to reach them',
    field: 'Note',
    first: 'Rings before nine',
    second: 'Prefers mail',
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
    file: 'screens/car/PlanForm.tsx',
    at: ids => `/cars/${ids.vehicle}`,
    open: press('Change the plan topper renewal'),
    form: /^Change the plan/,
    field: 'May be late by',
    first: '15',
    second: '20',
    save: 'Save the plan',
  },
  {
    file: 'screens/car/Exposure.tsx',
    at: ids => `/cars/${ids.vehicle}`,
    form: 'How it lives',
    field: 'Distance a year',
    first: '',
    second: '',
  },
  {
    file: 'screens/upkeep/templates/TemplateEditor.tsx',
    at: ids => `/upkeep/templates/${ids.template}`,
    form: 'The template',
    field: 'Name',
    first: 'Topper by mail',
    second: 'Topper letter',
    save: 'Save the template',
  },
  {
    file: 'screens/upkeep/reminders/EditMessage.tsx',
    at: ids => `/upkeep/reminders/${ids.message}`,
    open: press('Edit the words'),
    form: 'Edit the words',
    field: 'Subject',
    first: 'Your topper',
    second: 'It is time',
    save: 'Save the words',
  },
  {
    file: 'screens/upkeep/rules/RulesForm.tsx',
    at: () => '/upkeep/rules',
    form: 'How owners are reminded',
    field: 'At most a day',
    first: '11',
    second: '12',
    save: 'Save the rules',
  },
  {
    file: 'screens/upkeep/rules/Factors.tsx',
    at: () => '/upkeep/rules',
    form: 'What exposure does',
    field: 'in a garage',
    first: '1.1',
    second: '1.2',
    save: 'Save the factors',
  },
  {
    file: 'screens/upkeep/rules/Lives.tsx',
    at: () => '/upkeep/rules',
    open: press(/^Change how long/),
    form: /^How long/,
    field: 'Renewed after',
    first: '190',
    second: '200',
  },
  {
    file: 'screens/applied/RecordForm.tsx',
    at: ids => `/jobs/${ids.job}/applied`,
    form: 'Applied record',
    field: 'Note',
    first: 'Roof twice',
    second: 'Roof once',
    save: 'Keep as it is so far',
  },
]
