import { say } from '../../../main/domain/language/index.ts'
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
  { section: 'stock', label: say('Bottles'), Section: Stock },
  { section: 'product', label: say('Product'), Section: ProductPage, under: 'stock' },
  { section: 'lot', label: say('Bottle'), Section: LotRecord, under: 'stock' },
  { section: 'orders', label: say('Orders'), Section: Orders },
  { section: 'suppliers', label: say('Suppliers'), Section: Suppliers },
  { section: 'safety', label: say('Chemical safety'), Section: Safety },
  { section: 'value', label: say('Value'), Section: Value },
  { section: 'rules', label: say('Rules and mail'), Section: Rules },
]

/** The chemical stock: what stands there, what it will be, from whom it comes and how it is handled. */
export const Shelf = () => (
  <SectionScreen label={say('Shelf')} to="/shelf/$section" sections={sections} anew />
)
