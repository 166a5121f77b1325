import { SegmentedControl } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { UseView } from '../../../../main/api/views.ts'
import { decimalNow, say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { Table } from '../../../parts/Table.tsx'
import { dateWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'
import styles from './Use.module.css'
import { Key, UsedBar } from './UsedBar.tsx'

const spans = [
  { value: '4', label: say('4 weeks') },
  { value: '12', label: say('12 weeks') },
  { value: '26', label: say('Half a year') },
]

/** What the bays' opening hours went into, week by week, and which treatment blocks most for what it earns. */
export function Use() {
  const [weeks, setWeeks] = useState('12')
  const [chosenOn, setChosenOn] = useState<string | null>(null)
  const query = useQuery({
    ...trpc.dayPlan.bayUse.queryOptions({ weeks: Number(weeks) }),
    placeholderData: before => before,
  })
  const view = query.data
  if (!view) return <Waiting error={query.error} words={say('Adding up the hours')} />
  const chosen = view.weeks.find(week => week.beginsOn === chosenOn) ?? view.weeks.at(-1)!
  const now = chosen === view.weeks.at(-1)
  return (
    <>
      <div className={pieces.heading}>
        <h1>{say('Use of the bays')}</h1>
        <div className={pieces.end}>
          <SegmentedControl aria-label={say('Weeks shown')} data={spans} value={weeks} onChange={setWeeks} />
        </div>
      </div>
      <Key />
      <Card
        title={now ? say('This week') : say('Week of {beginsOn}', { beginsOn: dateWords(chosen.beginsOn) })}
        about={say("each bay's opening hours")}
      >
        <ul className={styles.bays}>
          {chosen.bays.map(bay => (
            <li key={bay.bayId}>
              <b>{bay.name}</b>
              <UsedBar used={bay} name={bay.name} />
            </li>
          ))}
        </ul>
      </Card>
      <Card title={say('Week by week')} about={say('all bays together; choose a week to see its bays')}>
        <ul className={styles.weeks}>
          {view.weeks.map(week => (
            <li key={week.beginsOn}>
              <button
                type="button"
                aria-pressed={week === chosen}
                aria-label={say('Week of {beginsOn}', { beginsOn: dateWords(week.beginsOn) })}
                title={say('Week of {beginsOn}', { beginsOn: dateWords(week.beginsOn) })}
                onClick={() => setChosenOn(week.beginsOn)}
              >
                <UsedBar
                  used={week.all}
                  name={say('Week of {beginsOn}', { beginsOn: dateWords(week.beginsOn) })}
                  upright
                />
              </button>
            </li>
          ))}
        </ul>
        <p className={pieces.soft}>
          {say('{beginsOn} to {lastOn}. {view}', {
            beginsOn: dateWords(view.weeks[0]!.beginsOn),
            lastOn: dateWords(view.weeks.at(-1)!.beginsOn),
            view: trendWords(view),
          })}
        </p>
      </Card>
      <Treatments view={view} />
    </>
  )
}

/** The blocked share of the first half of the weeks against the second, in whole percent. */
function trendWords({ weeks }: UseView): string {
  const share = (part: UseView['weeks']) => {
    const used = part.map(week => week.all)
    const open = used.reduce((sum, one) => sum + one.handsOnMin + one.blockedMin + one.idleMin, 0)
    return open === 0 ? 0 : Math.round((100 * used.reduce((sum, one) => sum + one.blockedMin, 0)) / open)
  }
  const half = weeks.length >> 1
  const [before, after] = [share(weeks.slice(0, half)), share(weeks.slice(half))]
  if (before === after) return say('Blocked while open: {after} % of the time, before and now.', { after })
  return say('Blocked while open: {after} % of the time, {before} % before.', { after, before })
}

function Treatments({ view: { treatments, currency, hundredMinor } }: { view: UseView }) {
  const most = Math.max(...treatments.map(each => each.blockedPerHundred ?? 0), 1)
  return (
    <Card
      title={say('What blocks most for what it earns')}
      empty={
        treatments.length === 0 &&
        say('No car was here in these weeks: each that was handed over counts here.')
      }
    >
      <Table
        rows={treatments}
        keyOf={each => each.name}
        columns={[
          {
            head: say('Treatment'),
            cell: each => each.name,
            small: each => say('{visits} sold', { visits: each.visits }),
          },
          {
            head: say('Blocked for each {hundredMinor}', { hundredMinor: money(hundredMinor, currency) }),
            cell: each =>
              each.blockedPerHundred === null ? (
                say('no revenue')
              ) : (
                <span className={styles.cost}>
                  <i style={{ width: `${(60 * each.blockedPerHundred) / most}%` }} />
                  {hours(each.blockedPerHundred)}
                </span>
              ),
          },
          { head: say('Blocked in all'), number: true, cell: each => hours(each.blockedMin) },
          {
            head: say('Revenue, without tax'),
            number: true,
            cell: each => money(each.revenueMinor, currency),
          },
        ]}
      />
      <p className={pieces.soft}>
        {say(
          'What is earned is as billed: what was taken off is off, and extras are left out. A car with several treatments shares its blocked hours among them by that.',
        )}
      </p>
    </Card>
  )
}

/** Hours to a tenth: nobody plans by less over weeks. */
function hours(minutes: number): string {
  return `${decimalNow((minutes / 60).toFixed(minutes < 600 ? 1 : 0))} h`
}
