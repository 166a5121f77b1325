import { useQuery } from '@tanstack/react-query'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../pieces.module.css'
import styles from './CopiesWarnings.module.css'

/** What somebody should hear of the shop's data and its copies; nothing while all is well. */
export function CopiesWarnings() {
  const { data } = useQuery({ ...trpc.backups.standing.queryOptions(), refetchInterval: 60_000 })
  if (!data || data.warnings.length === 0) return null
  return (
    <ul className={`${styles.warnings} ${pieces.unprinted}`} aria-label={say('The shop’s data')}>
      {data.warnings.map(({ about, words }) => (
        <li key={`${about} ${words}`}>⚑ {words}</li>
      ))}
    </ul>
  )
}
