import { useQuery } from '@tanstack/react-query'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { MailForm } from './MailForm.tsx'
import { RulesForm } from './RulesForm.tsx'

/** What the owner decides for the shelf as a whole, and how orders leave the shop. */
export function Rules() {
  const rules = useQuery(trpc.shelf.rules.queryOptions()).data
  const mail = useQuery(trpc.mail.get.queryOptions()).data
  return (
    <>
      <ScreenTitle title={say('Rules and mail')} />
      <div className={pieces.two}>
        {rules && <RulesForm rules={rules} />}
        {mail !== undefined && <MailForm mail={mail} />}
      </div>
    </>
  )
}
