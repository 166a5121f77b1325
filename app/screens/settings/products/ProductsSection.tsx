import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { labelOf, productKindChoices } from '../../../parts/shopWords.ts'
import { RowSection } from '../RowSection.tsx'
import { ProductEditor } from './ProductEditor.tsx'

/** What the shop applies, and for what cures, the profile its promises count from. */
export function ProductsSection({ id }: SectionProps) {
  const archived = useState(false)
  return (
    <RowSection
      id={id}
      section="products"
      title={say('Products')}
      what={say('product')}
      rows={useQuery(trpc.products.list.queryOptions({ archived: archived[0] })).data}
      about={product => labelOf(productKindChoices, product.kind)}
      archived={archived}
      empty={say('There is no product yet. Begin with the coating you lay most.')}
      editor={product => <ProductEditor product={product} />}
    >
      {say(
        'What goes onto cars. A coating or topper carries its cure profile, each figure marked as the data sheet’s or as common practice. Where the two differ the data sheet decides; handle every product as its safety sheet says.',
      )}
    </RowSection>
  )
}
