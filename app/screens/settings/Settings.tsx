import { Link, useParams } from '@tanstack/react-router'
import type { ComponentType } from 'react'
import { BaysSection } from './BaysSection.tsx'
import { CrewSection } from './CrewSection.tsx'
import { HoursSection } from './HoursSection.tsx'
import { ProductsSection } from './products/ProductsSection.tsx'
import styles from './Settings.module.css'
import { ShopSection } from './ShopSection.tsx'
import { TreatmentsSection } from './treatments/TreatmentsSection.tsx'

export interface SectionProps {
  /** The row chosen in a section with a list; "new" for one not there yet. */
  id: string | undefined
}

const sections: { section: string; label: string; Section: ComponentType<SectionProps> }[] = [
  { section: 'shop', label: 'Shop', Section: ShopSection },
  { section: 'hours', label: 'Hours', Section: HoursSection },
  { section: 'bays', label: 'Bays', Section: BaysSection },
  { section: 'crew', label: 'Crew', Section: CrewSection },
  { section: 'treatments', label: 'Treatments', Section: TreatmentsSection },
  { section: 'products', label: 'Products', Section: ProductsSection },
]

/** What the shop is made of: everything a promise is computed from. */
export function Settings() {
  const { section, id } = useParams({ strict: false })
  const chosen = sections.find(each => each.section === section) ?? sections[0]!
  return (
    <div className={styles.screen}>
      <nav className={styles.nav} aria-label="Settings">
        <h1>Settings</h1>
        {sections.map(each => (
          <Link key={each.section} to="/settings/$section" params={{ section: each.section }}>
            {each.label}
          </Link>
        ))}
      </nav>
      <div className={styles.section}>
        <chosen.Section id={id} />
      </div>
    </div>
  )
}
