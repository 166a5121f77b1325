import { Link } from '@tanstack/react-router'
import type { PastJobView } from '../../../main/api/views.ts'
import { useShop } from '../../data/shop.ts'
import { money } from '../../parts/money.ts'
import { statusWords } from '../../parts/statusWords.ts'
import { fullWords } from '../../parts/time.ts'
import styles from './Customers.module.css'

/** Every visit of a customer's cars, newest first. */
export function Visits({ visits }: { visits: PastJobView[] }) {
  const { zone, currency } = useShop()
  return (
    <section className={styles.card} aria-labelledby="visits">
      <h2 id="visits">Visits</h2>
      {visits.length === 0 ? (
        <p className={styles.soft}>
          No visit yet. <Link to="/book">Book one</Link>, and it is listed here with what was done and when.
        </p>
      ) : (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Job</th>
              <th scope="col">Car</th>
              <th scope="col">Came</th>
              <th scope="col">Went home</th>
              <th scope="col">What</th>
              <th scope="col" className={styles.number}>
                Price
              </th>
            </tr>
          </thead>
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
                <td>{whenHome(visit, zone)}</td>
                <td>{visit.treatments.join(', ')}</td>
                <td className={styles.number}>{money(visit.priceMinor, currency)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}

function whenHome(visit: PastJobView, zone: string): string {
  if (visit.leftAt !== null) return fullWords(visit.leftAt, zone)
  const words = statusWords[visit.status]
  return visit.status === 'booked' || visit.status === 'inShop' || visit.status === 'held'
    ? `${fullWords(visit.handoverAt, zone)} (${words})`
    : words
}
