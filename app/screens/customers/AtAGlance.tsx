import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import type { CustomerView, PastJobView } from '../../../main/api/views.ts'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { money } from '../../parts/money.ts'
import { fullDateWords } from '../../parts/time.ts'
import { toldWords } from '../../parts/toldWords.ts'
import { channelWords } from '../upkeep/words.ts'
import styles from './Customers.module.css'

/** What somebody at the telephone wants to know of a customer first: the visits, what is owed, what was said last and how they may be reached. */
export function AtAGlance({ customer }: { customer: CustomerView }) {
  const { zone, currency, country } = useShop()
  const consents = useQuery(trpc.consents.list.queryOptions({ customerId: customer.id })).data
  const account = useQuery(trpc.money.statement.queryOptions({ id: customer.id })).data
  const done = customer.visits.filter(visit => visit.leftAt !== null)
  const coming = customer.visits.filter(isComing)
  const last = done[0]
  const next = coming.at(-1)
  return (
    <dl className={styles.glance} aria-label={say('At a glance')}>
      <Figure
        name={say('Reach')}
        more={customer.email && <a href={`mailto:${customer.email}`}>{customer.email}</a>}
      >
        {customer.phone ? (
          <a href={`tel:${customer.phone}`}>{showPhone(customer.phone, country)}</a>
        ) : (
          say('no number')
        )}
      </Figure>
      <Figure
        name={say('{visits, plural, one {1 visit} other {{visits} visits}}', { visits: done.length })}
        more={
          last
            ? say('last home {leftAt}', {
                leftAt: fullDateWords(dateOf(last.leftAt ?? last.handoverAt, zone)),
              })
            : say('none finished yet')
        }
      >
        {money(sum(done), currency)}
      </Figure>
      <Figure
        name={next?.status === 'inShop' ? say('In the shop since') : say('Comes next')}
        more={next && `${next.treatments.join(', ')} · ${money(sum(coming), currency)}`}
      >
        {next ? fullDateWords(dateOf(next.dropOffAt, zone)) : say('nothing booked')}
      </Figure>
      <Figure
        name={say('Owes')}
        more={
          <Link to="/money/$section/$id" params={{ section: 'statement', id: customer.id }}>
            {say('Statement')}
          </Link>
        }
      >
        {account && money(account.owedMinor, account.currency)}
      </Figure>
      <Figure name={say('Last message')} more={customer.lastSaid && saidWords(customer.lastSaid)}>
        {customer.lastSaid ? fullDateWords(dateOf(customer.lastSaid.at, zone)) : say('nothing yet')}
      </Figure>
      <Figure name={say('May be reminded by')}>
        <span className={styles.ways}>
          {consents?.states.map(({ channel, state }) => (
            <span key={channel} data-given={state?.given ?? false}>
              {state?.given ? '✓' : '–'} {channelWords[channel]}
            </span>
          ))}
        </span>
      </Figure>
    </dl>
  )
}

/** "E-mail: The car is ready". */
function saidWords({ channel, kind, subject }: NonNullable<CustomerView['lastSaid']>): string {
  const told = kind !== null && kind in toldWords ? toldWords[kind as keyof typeof toldWords] : subject
  return `${channelWords[channel]}: ${told}`
}

const isComing = ({ status }: PastJobView) => status === 'booked' || status === 'inShop' || status === 'held'

const sum = (visits: readonly PastJobView[]) => visits.reduce((total, visit) => total + visit.priceMinor, 0)

interface FigureProps {
  name: string
  /** A line beneath. */
  more?: ReactNode
  children: ReactNode
}

function Figure({ name, more, children }: FigureProps) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {children}
        {more && <small>{more}</small>}
      </dd>
    </div>
  )
}
