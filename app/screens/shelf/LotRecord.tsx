import { useQuery } from '@tanstack/react-query'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import { Say } from '../../parts/Say.tsx'
import type { SectionProps } from '../../parts/Sections.tsx'
import { Waiting } from '../../parts/Waiting.tsx'
import { ProductPage } from './product/ProductPage.tsx'

/** The record of one bottle, where the code on its label leads: its product's page, with the bottle named above. */
export function LotRecord({ id = '' }: SectionProps) {
  const { data, error } = useQuery(trpc.shelf.scan.queryOptions({ code: `/shelf/lot/${id}` }))
  if (!data) return <Waiting error={error} words={say('Looking up the bottle')} />
  if (data.kind !== 'bottle')
    return <p className={pieces.empty}>{say('This bottle is not in the records of this shop.')}</p>
  return (
    <>
      <p className={pieces.soft}>
        <Say text="The label leads to <b>{words}</b>." values={{ words: data.lot.words }} />
      </p>
      <ProductPage id={data.productId} />
    </>
  )
}
