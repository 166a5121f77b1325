import { say } from '../../../main/domain/language/index.ts'
import { SectionScreen } from '../../parts/Sections.tsx'
import { BackupsSection } from './BackupsSection.tsx'
import { BaysSection } from './BaysSection.tsx'
import { CrewSection } from './CrewSection.tsx'
import { DataSection } from './DataSection.tsx'
import { DiagnosticsSection } from './DiagnosticsSection.tsx'
import { HistorySection } from './HistorySection.tsx'
import { HoursSection } from './HoursSection.tsx'
import { LendingSection } from './LendingSection.tsx'
import { MeasuringSection } from './MeasuringSection.tsx'
import { MoneySection } from './MoneySection.tsx'
import { PapersSection } from './PapersSection.tsx'
import { ProductsSection } from './products/ProductsSection.tsx'
import { ShopSection } from './ShopSection.tsx'
import { TimesSection } from './TimesSection.tsx'
import { TreatmentsSection } from './treatments/TreatmentsSection.tsx'

const sections = [
  { section: 'shop', label: say('Shop'), Section: ShopSection },
  { section: 'hours', label: say('Hours'), Section: HoursSection },
  { section: 'bays', label: say('Bays'), Section: BaysSection },
  { section: 'crew', label: say('Crew'), Section: CrewSection },
  { section: 'lending', label: say('To lend'), Section: LendingSection },
  { section: 'treatments', label: say('Treatments'), Section: TreatmentsSection },
  { section: 'money', label: say('Prices and tax'), Section: MoneySection },
  { section: 'products', label: say('Products'), Section: ProductsSection },
  { section: 'papers', label: say('Papers'), Section: PapersSection },
  { section: 'measuring', label: say('Measuring'), Section: MeasuringSection },
  { section: 'times', label: say('Hands-on times'), Section: TimesSection },
  { section: 'backups', label: say('Backups'), Section: BackupsSection },
  { section: 'data', label: say('Your data'), Section: DataSection },
  { section: 'history', label: say('History'), Section: HistorySection },
  { section: 'diagnostics', label: say('Diagnostics'), Section: DiagnosticsSection },
]

/** What the shop is made of: everything a promise is computed from. */
export const Settings = () => (
  <SectionScreen label={say('Settings')} to="/settings/$section" sections={sections} />
)
