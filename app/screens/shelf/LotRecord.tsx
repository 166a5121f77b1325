import { useQuery } from '@tanstack/react-query'
import { faultOf, trpc } from '../../data/trpc.ts'
import type { SectionProps } from '../../parts/Sections.tsx'
import { ProductPage } from './product/ProductPage.tsx'
import styles from './Shelf.module.css'

/** The record of one bottle, where the code on its label leads: its product's page, with the bottle named above. */
export function LotRecord({ id = '' }: SectionProps) {
  const query = useQuery(trpc.shelf.scan.queryOptions({ code: `/shelf/lot/${id}` }))
  if (query.error) return <p className={styles.late}>{faultOf(query.error).message}</p>
  if (!query.data) return <p className={styles.soft}>Looking up the bottle …</p>
  if (query.data.kind !== 'bottle')
    return <p className={styles.empty}>This bottle is not in the records of this shop.</p>
  const { productId, lot } = query.data
  return (
    <>
      <p className={styles.soft}>
        The label leads to <b>{lot.words}</b>.
      </p>
      <ProductPage id={productId} />
    </>
  )
}
