import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { say } from '../../../../main/domain/language/index.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { RowSection } from '../RowSection.tsx'
import { TreatmentEditor } from './TreatmentEditor.tsx'

/** What the shop sells. */
export function TreatmentsSection({ id }: SectionProps) {
  const { currency } = useShop()
  const archived = useState(false)
  const treatments = useQuery(trpc.treatments.list.queryOptions({ archived: archived[0] })).data
  const products = useQuery(trpc.products.list.queryOptions()).data
  return (
    <RowSection
      id={id}
      section="treatments"
      title={say('Treatments')}
      what={say('treatment')}
      rows={products && treatments}
      about={({ steps, prices }) =>
        `${say('{steps, plural, one {1 step} other {{steps} steps}}', { steps: steps.length })}, ${
          prices.medium > 0 ? money(prices.medium, currency) : say('no price yet')
        }`
      }
      order={trpc.treatments.order.mutationOptions()}
      archived={archived}
      empty={say('Nothing is sold yet. Add the first treatment with its steps.')}
      editor={treatment => <TreatmentEditor treatment={treatment} products={products ?? []} />}
    >
      {say(
        'What the shop sells, each with its hands-on steps. Cure holds are not steps: they follow from the product a coat step lays. Booked cars keep the steps and prices they were sold with.',
      )}
    </RowSection>
  )
}
