import { Button, Checkbox } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { VisitView } from '../../../../main/api/views.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import { useShop } from '../../../data/shop.ts'
import pieces from '../../../parts/pieces.module.css'
import { Table } from '../../../parts/Table.tsx'
import { dateWords, longWords } from '../../../parts/time.ts'
import type { Acts } from '../useActs.tsx'
import { channelWords, dueSigns, dueWords, outcomeWords, stateSigns, stateWords } from '../words.ts'
import own from './Due.module.css'
import { mayAct, VisitActs } from './VisitActs.tsx'

interface Props {
  visits: readonly VisitView[]
  today: string
  acts: Acts
  /** Visits whose reminders are to be approved together, by key. */
  chosen: readonly string[]
  onChoose(keys: readonly string[]): void
}

/** How many rows are drawn at once; a year of a large shop is read by its picture and its filter. */
const page = 60

/** Visits by due day, each with its window, its reason and what was done about it. */
export function DueTable({ visits, today, acts, chosen, onChoose }: Props) {
  const [shown, setShown] = useState(page)
  // The one next act is that of the first line, or approving what was chosen.
  const next = chosen.length > 0 ? null : visits.find(visit => !visit.projected && mayAct(visit))
  const choosable = visits.filter(mayApprove).map(visit => visit.key)
  const all = choosable.length > 0 && choosable.every(key => chosen.includes(key))
  return (
    <>
      <Table
        rows={visits.slice(0, shown)}
        keyOf={visit => visit.key}
        past={visit => visit.projected}
        columns={[
          {
            head: choosable.length > 0 && (
              <Checkbox
                aria-label={say('Choose all reminders to review')}
                checked={all}
                indeterminate={!all && chosen.length > 0}
                onChange={() => onChoose(all ? [] : choosable)}
              />
            ),
            cell: visit =>
              mayApprove(visit) && (
                <Checkbox
                  aria-label={say('Choose the reminder for {plate}, {title}', {
                    plate: visit.plate,
                    title: visit.title,
                  })}
                  checked={chosen.includes(visit.key)}
                  onChange={event =>
                    onChoose(
                      event.currentTarget.checked
                        ? [...chosen, visit.key]
                        : chosen.filter(key => key !== visit.key),
                    )
                  }
                />
              ),
          },
          { head: say('When'), className: own.when, cell: visit => <When visit={visit} /> },
          {
            head: say('Car'),
            cell: visit => (
              <Link to="/cars/$id" params={{ id: visit.vehicleId }} className={own.plate}>
                {visit.plate || say('no plate')}
              </Link>
            ),
            small: visit => `${visit.customerName}, ${visit.vehicleWords}`,
          },
          {
            head: say('Visit'),
            cell: visit => <What visit={visit} />,
          },
          { head: say('Booked, reminded'), className: own.reminder, cell: visit => <Fate visit={visit} /> },
          {
            heard: say('What may be done'),
            cell: visit =>
              !visit.projected && (
                <VisitActs quiet={visit !== next} visit={visit} today={today} acts={acts} />
              ),
          },
        ]}
      />
      {visits.length > shown && (
        <div>
          <Button variant="default" onClick={() => setShown(shown + page)}>
            {say('Show more ({visits} left)', { visits: visits.length - shown })}
          </Button>
        </div>
      )}
    </>
  )
}

/** A visit whose reminder waits to be reviewed. */
export function mayApprove(visit: VisitView): boolean {
  return visit.reminder?.state === 'draft'
}

function When({ visit }: { visit: VisitView }) {
  return (
    <>
      <span className={own.state} data-state={visit.state}>
        {dueSigns[visit.state]}{' '}
        {visit.state === 'overdue'
          ? say('Overdue, {daysLate, plural, one {1 day} other {{daysLate} days}}', {
              daysLate: visit.daysLate,
            })
          : dueWords[visit.state]}
      </span>
      <div className={own.nowrap}>{dateWords(visit.dueOn)}</div>
      {visit.sentence === null && visit.firstOn !== visit.lastOn && (
        <small>
          {say('any day from {firstOn} to {lastOn}', {
            firstOn: dateWords(visit.firstOn),
            lastOn: dateWords(visit.lastOn),
          })}
        </small>
      )}
      {visit.targetOn !== null && visit.targetOn !== visit.dueOn && (
        <small>{say('planned for {targetOn}', { targetOn: dateWords(visit.targetOn) })}</small>
      )}
    </>
  )
}

/** What is to be done; why then is there to be opened. */
function What({ visit: { title, productName, plate, sentence } }: { visit: VisitView }) {
  return (
    <>
      {productName ? `${title} · ${productName}` : title}
      <details className={own.why}>
        <summary aria-label={say('Why then: {plate}, {title}', { plate, title })}>{say('why then')}</summary>
        <p>{sentence ?? say('A later visit of this plan, if all before it come when due.')}</p>
      </details>
    </>
  )
}

/** Why the owner is not to be rung, where writing may be allowed. */
const noCallWords: Record<NonNullable<VisitView['noCall']>, string> = {
  'no-number': say('no call: there is no phone number'),
  never: say('no call: the owner has not agreed to calls'),
  withdrawn: say('no call: the owner asked for none'),
  'address-withdrawn': say('no call: somebody with this number asked for none'),
}

function Fate({ visit }: { visit: VisitView }) {
  const { zone } = useShop()
  const { booking, reminder, closedBecause, channels, noCall } = visit
  return (
    <>
      {booking && (
        <div>
          <Link to="/jobs/$id" params={{ id: booking.jobId }}>
            {say('job {jobNumber}', { jobNumber: booking.jobNumber })}
          </Link>
          , {longWords(booking.dropOffAt, zone)}
        </div>
      )}
      {reminder && (
        <div>
          <Link
            to="/upkeep/$section"
            params={{ section: reminder.channel === 'email' ? 'reminders' : 'calls' }}
          >
            {stateSigns[reminder.state]} {channelWords[reminder.channel]} {stateWords[reminder.state]}
          </Link>
          {reminder.outcome && `, ${outcomeWords[reminder.outcome]}`}
          {reminder.nextTryOn && (
            <small>{say('again on {nextTryOn}', { nextTryOn: dateWords(reminder.nextTryOn) })}</small>
          )}
        </div>
      )}
      {closedBecause && <small>{closedBecause}</small>}
      {!reminder && !booking && (
        <span className={pieces.soft}>
          {channels.length === 0
            ? say('may not be written to')
            : channels.map(channel => withinSentence(channelWords[channel])).join(', ')}
          {noCall !== null && <small>{noCallWords[noCall]}</small>}
        </span>
      )}
    </>
  )
}
