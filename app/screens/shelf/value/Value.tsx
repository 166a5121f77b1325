import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ShelfValueView } from '../../../../main/api/views.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import { amountText } from '../../../parts/shelf/amounts.ts'
import { dateWords, fullDateWords, fullWords } from '../../../parts/time.ts'
import styles from '../Shelf.module.css'

/** What the shelf is worth, what each job's chemicals cost, and what was written off. */
export function Value() {
  const value = useQuery(trpc.shelf.value.queryOptions()).data
  if (!value) return <p className={styles.soft}>Adding it up …</p>
  const show = (minor: number) => money(minor, value.currency)
  return (
    <>
      <div className={styles.heading}>
        <h1>Value</h1>
        <span className={styles.soft}>
          {dateWords(value.date)} · {show(value.averageMinor)} by weighted average, {show(value.fifoMinor)}{' '}
          first in, first out
        </span>
      </div>
      <div className={styles.two}>
        <div className={styles.stack}>
          <Products value={value} show={show} />
          <WriteOffs value={value} show={show} />
        </div>
        <Jobs value={value} show={show} />
      </div>
    </>
  )
}

interface Props {
  value: ShelfValueView
  show(minor: number): string
}

const ways = (
  <>
    <th scope="col" className={styles.number}>
      Average
    </th>
    <th scope="col" className={styles.number}>
      First in, first out
    </th>
  </>
)

function Products({ value, show }: Props) {
  return (
    <div className={styles.card}>
      <h2>On the shelf</h2>
      {value.products.length === 0 ? (
        <p className={styles.soft}>Nothing of a known price stands there.</p>
      ) : (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Product</th>
              <th scope="col" className={styles.number}>
                On hand
              </th>
              <th scope="col" className={styles.number}>
                100 units
              </th>
              {ways}
            </tr>
          </thead>
          <tbody>
            {value.products.map(product => (
              <tr key={product.productId}>
                <td>
                  <Link to="/shelf/$section/$id" params={{ section: 'product', id: product.productId }}>
                    {product.productName}
                  </Link>
                </td>
                <td className={styles.number}>{amountText(product.onHand, product.unit)}</td>
                <td className={styles.number}>
                  {product.per100Minor === null ? '—' : show(Math.round(product.per100Minor))}
                </td>
                <td className={styles.number}>{show(product.averageMinor)}</td>
                <td className={styles.number}>{show(product.fifoMinor)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}

function WriteOffs({ value, show }: Props) {
  const { zone } = useShop()
  return (
    <div className={styles.card}>
      <h2>
        Written off <small>the last year, {show(value.writeOffAverageMinor)}</small>
      </h2>
      {value.writeOffs.length === 0 ? (
        <p className={styles.soft}>Nothing was thrown away.</p>
      ) : (
        <table className={styles.table}>
          <tbody>
            {value.writeOffs.map(each => (
              <tr key={`${each.at} ${each.productId} ${each.amount} ${each.why}`}>
                <td>
                  {amountText(each.amount, each.unit)} {each.productName}
                  <small>
                    {fullWords(each.at, zone)} · {each.by} · {each.why}
                  </small>
                </td>
                <td className={styles.number}>{show(each.averageMinor)}</td>
                <td className={styles.number}>{show(each.fifoMinor)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}

function Jobs({ value, show }: Props) {
  return (
    <div className={styles.card}>
      <h2>
        Chemicals of each job <small>the last 90 days</small>
      </h2>
      {value.jobs.length === 0 ? (
        <p className={styles.soft}>No confirmed step has drawn anything yet.</p>
      ) : (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Job</th>
              {ways}
            </tr>
          </thead>
          <tbody>
            {value.jobs.map(job => (
              <tr key={job.jobId}>
                <td>
                  <Link to="/jobs/$id" params={{ id: job.jobId }}>
                    {job.plate}
                  </Link>{' '}
                  job {job.jobNumber}
                  <small>
                    {fullDateWords(job.date)} ·{' '}
                    {job.lines
                      .map(line => `${amountText(line.amount, line.unit)} ${line.productName}`)
                      .join(', ')}
                  </small>
                </td>
                <td className={styles.number}>{show(job.averageMinor)}</td>
                <td className={styles.number}>{show(job.fifoMinor)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}
