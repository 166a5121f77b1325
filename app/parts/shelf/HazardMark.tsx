import { useQuery } from '@tanstack/react-query'
import { type PictogramCode, pictogramCodes } from '../../../main/domain/hazard/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Pictograms } from './Pictograms.tsx'
import styles from './shelf.module.css'

/** Pictograms by their codes; a code unknown here is left out. */
export function knownPictograms(codes: readonly string[]): PictogramCode[] {
  return codes.filter((code): code is PictogramCode => (pictogramCodes as string[]).includes(code))
}

/** Signal word and pictograms of a product that is handed to somebody; nothing where none are known. */
export function HazardMark({ productId }: { productId: string }) {
  const list = useQuery({ ...trpc.shelf.list.queryOptions(), staleTime: 300_000 }).data
  const item = list?.find(each => each.id === productId)
  if (!item || (item.pictograms.length === 0 && !item.signalWord)) return null
  return (
    <span className={styles.hazard}>
      <Pictograms codes={knownPictograms(item.pictograms)} size={1.35} />
      {item.signalWord && <b>{say(item.signalWord)}</b>}
    </span>
  )
}
