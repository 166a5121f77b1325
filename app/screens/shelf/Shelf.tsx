import { SectionScreen } from '../../parts/Sections.tsx'
import { LotRecord } from './LotRecord.tsx'
import { Orders } from './orders/Orders.tsx'
import { ProductPage } from './product/ProductPage.tsx'
import { Rules } from './rules/Rules.tsx'
import { Stock } from './Stock.tsx'
import { Safety } from './safety/Safety.tsx'
import { Suppliers } from './suppliers/Suppliers.tsx'
import { Value } from './value/Value.tsx'

const sections = [
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
export const Shelf = () => <SectionScreen label="Shelf" to="/shelf/$section" sections={sections} anew />
