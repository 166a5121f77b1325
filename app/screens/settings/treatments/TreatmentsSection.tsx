import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { Heading } from '../Heading.tsx'
import { RowList } from '../RowList.tsx'
import { TreatmentEditor } from './TreatmentEditor.tsx'

/** What the shop sells. */
export function TreatmentsSection({ id }: SectionProps) {
  const { currency } = useShop()
  const [archived, setArchived] = useState(false)
  const treatments = useQuery(trpc.treatments.list.queryOptions({ archived })).data
  const products = useQuery(trpc.products.list.queryOptions()).data
  const ordering = useSaving(trpc.treatments.order.mutationOptions())
  const treatment = treatments?.find(each => each.id === id)
  return (
    <>
      <Heading title="Treatments">
        What the shop sells, each with its hands-on steps. Cure holds are not steps: they follow from the
        product a coat step lays. Booked cars keep the steps and prices they were sold with.
      </Heading>
      <RowList
        section="treatments"
        what="treatment"
        rows={(treatments ?? []).map(each => ({
          ...each,
          about: `${each.steps.length === 1 ? '1 step' : `${each.steps.length} steps`}, ${
            each.prices.medium > 0 ? money(each.prices.medium, currency) : 'no price yet'
          }`,
        }))}
        chosenId={(treatment || id === 'new') && products ? id : undefined}
        onOrder={ids => ordering.save({ ids })}
        archivedShown={archived}
        onShowArchived={setArchived}
        empty="Nothing is sold yet. Add the first treatment with its steps."
      >
        <TreatmentEditor key={id} treatment={treatment} products={products ?? []} />
      </RowList>
    </>
  )
}
