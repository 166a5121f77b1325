import { Link } from '@tanstack/react-router'
import type { PastJobView } from '../../../main/api/views.ts'
import { isAmiss, standingWords } from '../../../main/domain/floor/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useShop } from '../../data/shop.ts'
import { Card } from '../../parts/Card.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { Say } from '../../parts/Say.tsx'
import { statusWords } from '../../parts/statusWords.ts'
import table from '../../parts/table.module.css'
import { fullWords } from '../../parts/time.ts'

/** Every visit of a customer's cars, newest first. */
export function Visits({ visits }: { visits: PastJobView[] }) {
  const { zone, currency } = useShop()
  return (
    <Card title={say('Visits')}>
      {visits.length === 0 ? (
        <p className={pieces.soft}>
          <Say
            text="No visit yet. {book}, and it is listed here with what was done and when."
            values={{ book: <Link to="/book">{say('Book one')}</Link> }}
          />
        </p>
      ) : (
        <table className={table.table}>
          <HeadRow
            columns={[say('Job'), say('Car'), say('Came'), say('Went home'), say('What'), say('Price')]}
            figures={{ columns: [say('Price')], className: table.number }}
          />
          <tbody>
            {visits.map(visit => (
              <tr key={visit.jobId}>
                <td>
                  <Link to="/jobs/$id" params={{ id: visit.jobId }}>
                    {visit.number}
                  </Link>
                </td>
                <td>{visit.plate}</td>
                <td>{fullWords(visit.dropOffAt, zone)}</td>
                <td>
                  {whenHome(visit, zone)}
                  {visit.leftAt === null && isAmiss(visit) && (
                    <b className={pieces.late}> {standingWords(visit, at => fullWords(at, zone))}</b>
                  )}
                </td>
                <td>{visit.treatments.join(', ')}</td>
                <td className={table.number}>{money(visit.priceMinor, currency)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Card>
  )
}

function whenHome(visit: PastJobView, zone: string): string {
  if (visit.leftAt !== null) return fullWords(visit.leftAt, zone)
  const words = statusWords[visit.status]
  return visit.status === 'booked' || visit.status === 'inShop' || visit.status === 'held'
    ? `${fullWords(visit.handoverAt, zone)} (${words})`
    : words
}
