import { Link, useParams } from '@tanstack/react-router'
import type { ComponentType } from 'react'
import { LotRecord } from './LotRecord.tsx'
import { Orders } from './orders/Orders.tsx'
import { ProductPage } from './product/ProductPage.tsx'
import { Rules } from './rules/Rules.tsx'
import styles from './Shelf.module.css'
import { Stock } from './Stock.tsx'
import { Safety } from './safety/Safety.tsx'
import { Suppliers } from './suppliers/Suppliers.tsx'
import { Value } from './value/Value.tsx'

export interface SectionProps {
  /** The row chosen in a section; "new" for one not there yet. */
  id: string | undefined
}

interface Section {
  section: string
  label: string
  Section: ComponentType<SectionProps>
  /** Of another section: not in the list of its own. */
  under?: string
}

const sections: Section[] = [
  { section: 'stock', label: 'Bottles', Section: Stock },
  { section: 'product', label: 'Product', Section: ProductPage, under: 'stock' },
  { section: 'lot', label: 'Bottle', Section: LotRecord, under: 'stock' },
  { section: 'orders', label: 'Orders', Section: Orders },
  { section: 'suppliers', label: 'Suppliers', Section: Suppliers },
  { section: 'safety', label: 'Chemical safety', Section: Safety },
  { section: 'value', label: 'Value', Section: Value },
  { section: 'rules', label: 'Rules and mail', Section: Rules },
]

/** The chemical stock: what stands there, what it will be, from whom it comes and how it is handled. */
export function Shelf() {
  const { section, id } = useParams({ strict: false })
  const chosen = sections.find(each => each.section === section) ?? sections[0]!
  return (
    <div className={styles.screen}>
      <nav className={styles.nav} aria-label="Shelf">
        {sections
          .filter(each => !each.under)
          .map(each => (
            <Link
              key={each.section}
              to="/shelf/$section"
              params={{ section: each.section }}
              data-within={chosen.under === each.section}
            >
              {each.label}
            </Link>
          ))}
      </nav>
      <chosen.Section key={id} id={id} />
    </div>
  )
}
