import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { money } from '../../parts/money.ts'

/** What came in today, in a line that leads to it. */
export function TakenToday({ date }: { date: string }) {
  const day = useQuery(trpc.money.takings.queryOptions({ date })).data
  if (!day) return null
  return (
    <Link to="/money/$section" params={{ section: 'takings' }}>
      {say('Takings {totalMinor}', { totalMinor: money(day.totalMinor, day.currency) })}
    </Link>
  )
}
