import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { trpc } from '../../../data/trpc.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { labelOf, productKindChoices } from '../../../parts/shopWords.ts'
import { Heading } from '../Heading.tsx'
import { RowList } from '../RowList.tsx'
import { ProductEditor } from './ProductEditor.tsx'

/** What the shop applies, and for what cures, the profile its promises count from. */
export function ProductsSection({ id }: SectionProps) {
  const [archived, setArchived] = useState(false)
  const products = useQuery(trpc.products.list.queryOptions({ archived })).data
  const product = products?.find(each => each.id === id)
  return (
    <>
      <Heading title="Products">
        What goes onto cars. A coating or topper carries its cure profile, each figure marked as the data
        sheet’s or as common practice. Where the two differ the data sheet decides; handle every product as
        its safety sheet says.
      </Heading>
      <RowList
        section="products"
        what="product"
        rows={(products ?? []).map(each => ({ ...each, about: labelOf(productKindChoices, each.kind) }))}
        chosenId={product || id === 'new' ? id : undefined}
        archivedShown={archived}
        onShowArchived={setArchived}
        empty="There is no product yet. Begin with the coating you lay most."
      >
        <ProductEditor key={id} product={product} />
      </RowList>
    </>
  )
}
