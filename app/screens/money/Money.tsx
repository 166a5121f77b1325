import { say } from '../../../main/domain/language/index.ts'
import { SectionScreen } from '../../parts/Sections.tsx'
import { Bill } from './bill/Bill.tsx'
import { Earns } from './Earns.tsx'
import { Invoices } from './Invoices.tsx'
import { Owed } from './Owed.tsx'
import { NewQuote } from './quotes/NewQuote.tsx'
import { Quotes } from './quotes/Quotes.tsx'
import { Statement } from './Statement.tsx'
import { Takings } from './Takings.tsx'

const sections = [
  { section: 'owed', label: say('Owed'), Section: Owed },
  { section: 'bill', label: say('Bill'), Section: Bill, under: 'owed' },
  { section: 'statement', label: say('Statement'), Section: Statement, under: 'owed' },
  { section: 'invoices', label: say('Invoices'), Section: Invoices },
  { section: 'quotes', label: say('Quotes'), Section: Quotes },
  { section: 'newQuote', label: say('New quote'), Section: NewQuote, under: 'quotes' },
  { section: 'takings', label: say('Takings'), Section: Takings },
  { section: 'earns', label: say('What earns'), Section: Earns },
]

/** What was billed, what came in and what is owed. */
export const Money = () => (
  <SectionScreen label={say('Money')} to="/money/$section" sections={sections} anew />
)
