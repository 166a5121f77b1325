import { Alert } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { faultOf, trpc } from '../../../data/trpc.ts'
import styles from '../Upkeep.module.css'
import { Factors } from './Factors.tsx'
import { Lives } from './Lives.tsx'
import { RulesForm } from './RulesForm.tsx'

/** What the shop decides for its upkeep: politeness, intervals, and what exposure does to them. */
export function Rules() {
  const query = useQuery(trpc.reminders.settings.queryOptions())
  if (query.error) return <Alert color="red">{faultOf(query.error).message}</Alert>
  return (
    <>
      <div className={styles.heading}>
        <h1>Rules</h1>
      </div>
      {query.data && (
        <div className={styles.two}>
          <RulesForm rules={query.data} />
          <div className={styles.stack}>
            <Lives />
            <Factors rules={query.data} />
          </div>
        </div>
      )}
    </>
  )
}
