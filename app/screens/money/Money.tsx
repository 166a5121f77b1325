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
  { section: 'owed', label: 'Owed', Section: Owed },
  { section: 'bill', label: 'Bill', Section: Bill, under: 'owed' },
  { section: 'statement', label: 'Statement', Section: Statement, under: 'owed' },
  { section: 'invoices', label: 'Invoices', Section: Invoices },
  { section: 'quotes', label: 'Quotes', Section: Quotes },
  { section: 'newQuote', label: 'New quote', Section: NewQuote, under: 'quotes' },
  { section: 'takings', label: 'Takings', Section: Takings },
  { section: 'earns', label: 'What earns', Section: Earns },
]

/** What was billed, what came in and what is owed. */
export const Money = () => <SectionScreen label="Money" to="/money/$section" sections={sections} anew />
