import { Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { ResultShare } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useNowAt } from '../../../data/now.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { Table } from '../../../parts/Table.tsx'
import { Waiting } from '../../../parts/Waiting.tsx'
import { channelWords } from '../words.ts'
import own from './Results.module.css'

const periods = [
  { value: '91', label: say('the last 3 months') },
  { value: '365', label: say('the last year') },
  { value: 'all', label: say('all time') },
]

/** What came of the reminders, by channel and template; ranges, because a share of few says little. */
export function Results() {
  const [days, setDays] = useState('365')
  const nowAt = useNowAt()
  // By whole days, so that the question stays the same while the clock ticks on.
  const fromAt = nowAt === null || days === 'all' ? null : (Math.floor(nowAt / 1_440) - Number(days)) * 1_440
  const query = useQuery({
    ...trpc.results.summary.queryOptions(fromAt === null ? {} : { fromAt }),
    enabled: nowAt !== null,
    placeholderData: before => before,
  })
  const results = query.data
  if (!results) return <Waiting error={query.error} words={say('Counting')} />
  return (
    <>
      <ScreenTitle title={say('Results')}>
        <Select
          aria-label={say('Reminders of')}
          data={periods}
          allowDeselect={false}
          value={days}
          onChange={value => value && setDays(value)}
        />
      </ScreenTitle>
      {results.lines.length === 0 ? (
        <p className={pieces.empty}>
          {say(
            'No reminder went out in this time. Once some have, this shows for each channel and template how many owners were reminded, booked and came.',
          )}
        </p>
      ) : (
        <Card aria-label={say('Results by channel and template')}>
          <Table
            rows={results.lines}
            keyOf={line => `${line.channel} ${line.templateId}`}
            columns={[
              {
                head: say('Channel, template'),
                cell: line => channelWords[line.channel],
                small: line => line.templateName,
              },
              { head: say('Reminded'), number: true, cell: line => line.reminded },
              { head: say('Booked'), cell: line => <Share share={line.booked} /> },
              { head: say('Came'), cell: line => <Share share={line.came} /> },
              {
                cell: line =>
                  line.booked.few && <span className={pieces.soft}>{say('too few to compare')}</span>,
              },
            ]}
          />
          <p className={pieces.soft}>
            {say('A visit counts once, under its last reminder.')}
            {results.lines.some(line => !line.booked.few) &&
              ` ${say('The pale bar is where it would settle with many more.')}`}
          </p>
        </Card>
      )}
    </>
  )
}

/** What came of so many; with enough of them, its range on a scale from none to all, and a mark at what was counted. */
function Share({ share }: { share: ResultShare }) {
  const { count, of, range, few, words } = share
  return (
    <div className={own.share}>
      {!few && of > 0 && (
        <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
          <line x1={0} x2={100} y1={5} y2={5} className={own.scale} />
          <rect
            x={range.low * 100}
            width={(range.high - range.low) * 100}
            y={2}
            height={6}
            className={own.range}
          />
          <rect x={(count / of) * 100 - 0.5} width={1} y={0} height={10} className={own.counted} />
        </svg>
      )}
      {words}
    </div>
  )
}
