import { useQuery } from '@tanstack/react-query'
import { wasteStreamsOf } from '../../../main/domain/hazard/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { ProductKind } from '../../../main/domain/shop/index.ts'
import { trpc } from '../../data/trpc.ts'
import styles from './shelf.module.css'

/** Where what is left of this work goes: the shop's own rule where it has one, and always what to beware of. */
export function WasteNotes({ productIds }: { productIds: readonly string[] }) {
  const list = useQuery({ ...trpc.shelf.list.queryOptions(), staleTime: 300_000 }).data ?? []
  const rules = useQuery({ ...trpc.safety.waste.queryOptions(), staleTime: 300_000 }).data ?? []
  const kinds = list.filter(item => productIds.includes(item.id)).map(item => item.kind as ProductKind)
  const streams = wasteStreamsOf(kinds)
  const shown = rules.filter(({ stream }) => streams.includes(stream))
  if (shown.length === 0) return null
  return (
    <aside className={styles.wasteNotes} aria-label={say('Where the waste goes')}>
      {shown.map(({ stream, title, rule, caution }) => (
        <p key={stream}>
          <b>{title}:</b> {rule && <b>{rule} </b>}
          {caution}
        </p>
      ))}
    </aside>
  )
}
