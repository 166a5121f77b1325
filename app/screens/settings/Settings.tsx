import { SectionScreen } from '../../parts/Sections.tsx'
import { BackupsSection } from './BackupsSection.tsx'
import { BaysSection } from './BaysSection.tsx'
import { CrewSection } from './CrewSection.tsx'
import { DataSection } from './DataSection.tsx'
import { DiagnosticsSection } from './DiagnosticsSection.tsx'
import { HistorySection } from './HistorySection.tsx'
import { HoursSection } from './HoursSection.tsx'
import { LendingSection } from './LendingSection.tsx'
import { MoneySection } from './MoneySection.tsx'
import { PapersSection } from './PapersSection.tsx'
import { ProductsSection } from './products/ProductsSection.tsx'
import { ShopSection } from './ShopSection.tsx'
import { TimesSection } from './TimesSection.tsx'
import { TreatmentsSection } from './treatments/TreatmentsSection.tsx'

const sections = [
  { section: 'shop', label: 'Shop', Section: ShopSection },
  { section: 'hours', label: 'Hours', Section: HoursSection },
  { section: 'bays', label: 'Bays', Section: BaysSection },
  { section: 'crew', label: 'Crew', Section: CrewSection },
  { section: 'lending', label: 'To lend', Section: LendingSection },
  { section: 'treatments', label: 'Treatments', Section: TreatmentsSection },
  { section: 'money', label: 'Prices and tax', Section: MoneySection },
  { section: 'products', label: 'Products', Section: ProductsSection },
  { section: 'papers', label: 'Papers', Section: PapersSection },
  { section: 'times', label: 'Hands-on times', Section: TimesSection },
  { section: 'backups', label: 'Backups', Section: BackupsSection },
  { section: 'data', label: 'Your data', Section: DataSection },
  { section: 'history', label: 'History', Section: HistorySection },
  { section: 'diagnostics', label: 'Diagnostics', Section: DiagnosticsSection },
]

/** What the shop is made of: everything a promise is computed from. */
export const Settings = () => <SectionScreen label="Settings" to="/settings/$section" sections={sections} />
