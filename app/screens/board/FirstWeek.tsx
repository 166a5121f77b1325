import { VisuallyHidden } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import type { FirstStep } from '../../../main/domain/shop/index.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import styles from './FirstWeek.module.css'

const steps: Readonly<Record<FirstStep, { label: string; to: string }>> = {
  prices: { label: say('Your prices'), to: '/settings/treatments' },
  cure: { label: say('Cure times from the data sheets'), to: '/settings/products' },
  booking: { label: say('A first booking'), to: '/book' },
  shelf: { label: say('What is on the shelf'), to: '/shelf/stock' },
  papers: { label: say('Address and phone for the papers'), to: '/settings/shop' },
  mail: { label: say('Outgoing mail'), to: '/shelf/rules' },
}

/** What a new shop enters in its first weeks, each a link to where; gone once all of it is done. */
export function FirstWeek() {
  const list = useQuery(trpc.shop.firstWeek.queryOptions()).data
  if (!list) return null
  const next = list.find(({ done }) => !done)?.step
  return (
    <nav className={`${styles.week} ${pieces.unprinted}`} aria-label={say('Your first week')}>
      <b>{say('Your first week')}</b>
      <ol>
        {list.map(({ step, done }) => (
          <li key={step} data-next={step === next}>
            <span className={done ? pieces.kept : pieces.soft} aria-hidden="true">
              {done ? '✓' : '○'}
            </span>{' '}
            <Link to={steps[step].to}>{steps[step].label}</Link>
            {done && <VisuallyHidden>{say('done')}</VisuallyHidden>}
          </li>
        ))}
      </ol>
    </nav>
  )
}
