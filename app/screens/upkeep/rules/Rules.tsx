import { useQuery } from '@tanstack/react-query'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { Factors } from './Factors.tsx'
import { Lives } from './Lives.tsx'
import { RulesForm } from './RulesForm.tsx'

/** What the shop decides for its upkeep: politeness, intervals, and what exposure does to them. */
export function Rules() {
  const query = useQuery(trpc.reminders.settings.queryOptions())
  return (
    <>
      <ScreenTitle title={say('Rules')} />
      <Refused of={query.error} />
      {query.data && (
        <div className={pieces.two}>
          <RulesForm rules={query.data} />
          <div className={pieces.column}>
            <Lives />
            <Factors rules={query.data} />
          </div>
        </div>
      )}
    </>
  )
}
