import type { OffersView } from '../../../main/api/views.ts'
import { difference, startOfDay } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Chart, type ChartSize } from '../../parts/Chart.tsx'
import { type DayHead, dayHeads } from '../../parts/ticks.ts'
import { columnWords, durationWords, longWords, nearWords } from '../../parts/time.ts'
import boardStyles from '../board/Board.module.css'
import { type TimeAxis, timeAxis } from '../board/geometry/timeAxis.ts'
import { Block } from '../board/layers/Blocks.tsx'
import { Patterns } from '../board/layers/Patterns.tsx'
import styles from './Book.module.css'
import type { Lane } from './call.ts'

interface Props {
  offers: OffersView
  lanes: Lane[]
  chosen: Lane | undefined
  choose(key: string): void
}

/** All offers on one time axis, each a lane; arrows or a click choose one. */
export function Lanes({ offers, lanes, chosen, choose }: Props) {
  const { zone, open } = offers
  const fromAt = Math.min(...lanes.map(lane => lane.offer.dropOffAt))
  const days = dayHeads(fromAt, Math.max(...lanes.map(lane => lane.offer.handoverAt)) + 1, zone)
  const last = Temporal.PlainDate.from(days.at(-1)!.date).add({ days: 1 }).toString()
  const span = { from: startOfDay(days[0]!.date, zone), to: startOfDay(last, zone) }
  // Which of the two rules is meant, where something cures.
  const leaves =
    Object.keys(offers.profiles).length === 0
      ? null
      : offers.coveredBy === null
        ? say('Stays until it may get wet')
        : say('Leaves under cover')
  const axisIn = ({ width }: ChartSize) =>
    timeAxis(open, span.from, span.to, 0, Math.max(10, width - 8), 0.15)
  return (
    <fieldset className={styles.lanes} aria-label={say('Offers')}>
      <div className={styles.axis} aria-hidden="true">
        <Chart label={say('Days')} shape={size => ({ height: 1.25 * size.rem, axis: axisIn(size) })}>
          {({ axis }, { rem }) => <Days days={dayHeads(span.from, span.to, zone)} axis={axis} rem={rem} />}
        </Chart>
      </div>
      {lanes.map(lane => {
        const { offer, names } = lane
        const when = (at: number) => nearWords(at, zone, offers.nowAt)
        const home = longWords(offer.handoverAt, zone, offers.nowAt)
        return (
          <label key={lane.key} className={styles.lane} data-chosen={lane === chosen}>
            <input
              type="radio"
              name="offer"
              value={lane.key}
              checked={lane === chosen}
              onChange={() => choose(lane.key)}
              aria-label={say('{names}: home {home}', { names: names.join(', '), home })}
            />
            <div aria-hidden="true">
              <Chart
                label={say('The place in time')}
                shape={size => ({ height: 3.5 * size.rem, axis: axisIn(size) })}
              >
                {({ height, axis }, { rem }) => (
                  <LanePicture
                    lane={lane}
                    offers={offers}
                    axis={axis}
                    height={height}
                    rem={rem}
                    span={span}
                  />
                )}
              </Chart>
            </div>
            <span className={styles.says}>
              <small>{names.join(' · ')}</small>
              <b>{home}</b>
              {leaves && <small>{leaves}</small>}
              <small>
                {say('Drop off by {dropOffAt}', { dropOffAt: when(offer.dropOffAt) })}
                {offer.blockedOpenMin > 0 &&
                  ` ${say('· bay blocked {blockedOpenMin}', { blockedOpenMin: durationWords(offer.blockedOpenMin) })}`}
                {offer.closedCureMin > 0 &&
                  ` ${say('· cures overnight {closedCureMin}', { closedCureMin: durationWords(offer.closedCureMin) })}`}
              </small>
              {offer.advisedAt > offer.handoverAt && (
                <small>{say('Recommended pick-up {advisedAt}', { advisedAt: when(offer.advisedAt) })}</small>
              )}
              {lane.ifHere && <small className={styles.ifHere}>⚑ {lane.ifHere}</small>}
            </span>
          </label>
        )
      })}
    </fieldset>
  )
}

/** How far apart the middles of two named days must be, in rem: a closed day is drawn narrower than its name. */
const daysApart = 4

/** The days over the lanes, as many named as there is room for. */
function Days({ days, axis, rem }: { days: DayHead[]; axis: TimeAxis; rem: number }) {
  const named: { date: string; x: number }[] = []
  for (const { date, fromAt, toAt } of days) {
    const x = (axis.x(fromAt) + axis.x(toAt)) / 2
    if (x - (named.at(-1)?.x ?? -Infinity) >= daysApart * rem) named.push({ date, x })
  }
  return named.map(({ date, x }) => (
    <text key={date} className={boardStyles.soft} x={x} y={rem} textAnchor="middle">
      {columnWords(date)}
    </text>
  ))
}

interface PictureProps {
  lane: Lane
  offers: OffersView
  axis: TimeAxis
  height: number
  rem: number
  span: { from: number; to: number }
}

/** One place from drop-off to handover: work, cure and waits in the order the car has them. */
function LanePicture({ lane: { offer }, offers, axis, height, rem, span }: PictureProps) {
  const { open, profiles, nowAt } = offers
  const unit = rem / 16
  const box = { top: 10 * unit, height: height - 18 * unit }
  const foot = box.top + box.height
  return (
    <>
      <Patterns />
      {difference([span], open).map(({ from, to }) => (
        <rect
          key={from}
          className={boardStyles.closed}
          x={axis.x(from)}
          width={axis.x(to) - axis.x(from)}
          height={height}
        />
      ))}
      {offer.stays.map(stay => (
        <g key={stay.fromAt}>
          <rect
            className={boardStyles.ground}
            x={axis.x(stay.fromAt)}
            width={Math.max(3, axis.x(stay.toAt) - axis.x(stay.fromAt))}
            y={box.top}
            height={box.height}
            rx={2}
          />
          {stay.blocks.map(block => (
            <Block
              key={`${block.position}-${block.fromAt}`}
              block={block}
              canvas={{ axis, unit, board: { open, profiles, nowAt } }}
              box={box}
            />
          ))}
        </g>
      ))}
      <line
        className={styles.dropOff}
        x1={axis.x(offer.dropOffAt)}
        x2={axis.x(offer.dropOffAt)}
        y1={4 * unit}
        y2={foot}
      />
      <circle className={styles.home} cx={axis.x(offer.handoverAt)} cy={foot} r={5.5 * unit} />
    </>
  )
}
