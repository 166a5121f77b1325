import { useQuery } from '@tanstack/react-query'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import type { SectionProps } from '../../parts/Sections.tsx'
import { Waiting } from '../../parts/Waiting.tsx'
import { ProductPage } from './product/ProductPage.tsx'

/** The record of one bottle, where the code on its label leads: its product's page, with the bottle named above. */
export function LotRecord({ id = '' }: SectionProps) {
  const { data, error } = useQuery(trpc.shelf.scan.queryOptions({ code: `/shelf/lot/${id}` }))
  if (!data) return <Waiting error={error} words="Looking up the bottle" />
  if (data.kind !== 'bottle')
    return <p className={pieces.empty}>This bottle is not in the records of this shop.</p>
  return (
    <>
      <p className={pieces.soft}>
        The label leads to <b>{data.lot.words}</b>.
      </p>
      <ProductPage id={data.productId} />
    </>
  )
}
