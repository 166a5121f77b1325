import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ShelfValueView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { amountText, comparedBy } from '../../../../main/domain/shelf/index.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { Table } from '../../../parts/Table.tsx'
import { dateWords, fullDateWords, fullWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import { ProductLink } from '../ProductLink.tsx'

interface Worth {
  averageMinor: number
  fifoMinor: number
}

const drawn = (line: ShelfValueView['jobs'][number]['lines'][number]) =>
  `${amountText(line.amount, line.unit)} ${line.productName}`

/** What the shelf is worth, what each job's chemicals cost, and what was written off. */
export function Value() {
  const { zone } = useShop()
  const { data: value, error } = useQuery(trpc.shelf.value.queryOptions())
  if (!value) return <Waiting error={error} words={say('Adding it up')} />
  const show = (minor: number) => money(minor, value.currency)
  const ways = [
    { head: say('Average'), number: true, cell: ({ averageMinor }: Worth) => show(averageMinor) },
    { head: say('First in, first out'), number: true, cell: ({ fifoMinor }: Worth) => show(fifoMinor) },
  ]
  return (
    <>
      <ScreenTitle title={say('Value')}>
        <span className={pieces.soft}>
          {say('{date} · {averageMinor} by weighted average, {fifoMinor} first in, first out', {
            date: dateWords(value.date),
            averageMinor: show(value.averageMinor),
            fifoMinor: show(value.fifoMinor),
          })}
        </span>
      </ScreenTitle>
      <div className={pieces.two}>
        <div className={pieces.column}>
          <Card title={say('On the shelf')}>
            <Table
              rows={value.products}
              keyOf={product => product.productId}
              empty={say(
                'Nothing of a known price stands there: prices come with what is received on a product’s page.',
              )}
              columns={[
                {
                  head: say('Product'),
                  cell: each => <ProductLink id={each.productId} name={each.productName} />,
                },
                { head: say('On hand'), number: true, cell: each => amountText(each.onHand, each.unit) },
                {
                  head: say('Price'),
                  number: true,
                  cell: ({ per100Minor, unit }) => {
                    const { words, hundreds } = comparedBy(unit)
                    return per100Minor === null
                      ? '—'
                      : say('{price} for {amount}', {
                          price: show(Math.round(per100Minor * hundreds)),
                          amount: words,
                        })
                  },
                },
                ...ways,
              ]}
            />
          </Card>
          <Card
            title={say('Written off')}
            about={say('the last year, {writeOffAverageMinor}', {
              writeOffAverageMinor: show(value.writeOffAverageMinor),
            })}
          >
            <Table
              rows={value.writeOffs}
              keyOf={each => `${each.at} ${each.productId} ${each.amount} ${each.why}`}
              empty={say('Nothing was thrown away: what is stands here with its reason and its cost.')}
              columns={[
                {
                  cell: each => `${amountText(each.amount, each.unit)} ${each.productName}`,
                  small: each => `${fullWords(each.at, zone)} · ${each.by} · ${each.why}`,
                },
                ...ways.map(({ head, ...way }) => way),
              ]}
            />
          </Card>
        </div>
        <Card title={say('Chemicals of each job')} about={say('the last 90 days')}>
          <Table
            rows={value.jobs}
            keyOf={job => job.jobId}
            empty={say('No confirmed step has drawn anything yet: usage is confirmed at the close of day.')}
            columns={[
              {
                head: say('Job'),
                cell: job => (
                  <>
                    <Link to="/jobs/$id" params={{ id: job.jobId }}>
                      {job.plate}
                    </Link>{' '}
                    {say('job {jobNumber}', { jobNumber: job.jobNumber })}
                  </>
                ),
                small: ({ date, lines }) => `${fullDateWords(date)} · ${lines.map(drawn).join(', ')}`,
              },
              ...ways,
            ]}
          />
        </Card>
      </div>
    </>
  )
}
