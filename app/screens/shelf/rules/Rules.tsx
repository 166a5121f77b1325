import { useQuery } from '@tanstack/react-query'
import { trpc } from '../../../data/trpc.ts'
import styles from '../Shelf.module.css'
import { MailForm } from './MailForm.tsx'
import { RulesForm } from './RulesForm.tsx'

/** What the owner decides for the shelf as a whole, and how orders leave the shop. */
export function Rules() {
  const rules = useQuery(trpc.shelf.rules.queryOptions()).data
  const mail = useQuery(trpc.mail.get.queryOptions()).data
  return (
    <>
      <div className={styles.heading}>
        <h1>Rules and mail</h1>
      </div>
      <div className={styles.two}>
        {rules && <RulesForm rules={rules} />}
        {mail !== undefined && <MailForm mail={mail} />}
      </div>
    </>
  )
}
