import type { OffersView, PlaceView } from '../../../main/api/views.ts'
import { difference, startOfDay } from '../../../main/domain/calendar/index.ts'
import { Chart } from '../../parts/Chart.tsx'
import { columnWords } from '../../parts/time.ts'
import boardStyles from '../board/Board.module.css'
import { dayHeads } from '../board/geometry/ticks.ts'
import { timeAxis } from '../board/geometry/timeAxis.ts'
import { Block } from '../board/layers/Blocks.tsx'
import { Patterns } from '../board/layers/Patterns.tsx'

const row = 34
const left = 56

/** An offer as a small board: its bays down, the days from drop-off to handover across. */
export function MiniBoard({ offer, offers }: { offer: PlaceView; offers: OffersView }) {
  const { zone, open, profiles, nowAt } = offers
  const heads = dayHeads(offer.dropOffAt, offer.handoverAt + 1, zone)
  const fromAt = startOfDay(heads[0]!.date, zone)
  const toAt = startOfDay(Temporal.PlainDate.from(heads.at(-1)!.date).add({ days: 1 }).toString(), zone)
  const rows = [...new Map(offer.stays.map(stay => [stay.bayId, stay.bayName])).entries()]
  const floor = rows.length * row
  return (
    <div className={boardStyles.mini} aria-hidden="true">
      <Chart
        label="The place on the board"
        shape={({ width }) => ({
          height: floor + 18,
          axis: timeAxis(open, fromAt, toAt, left, Math.max(left + 10, width), 0.2),
        })}
      >
        {({ height, axis }) => (
          <>
            <Patterns />
            {difference([{ from: fromAt, to: toAt }], open).map(({ from, to }) => (
              <rect
                key={from}
                className={boardStyles.closed}
                x={axis.x(from)}
                width={axis.x(to) - axis.x(from)}
                height={floor}
              />
            ))}
            {rows.map(([bayId, name], index) => {
              const box = { top: index * row + 3, height: row - 6 }
              return (
                <g key={bayId}>
                  <text className={boardStyles.soft} x={0} y={index * row + row / 2 + 4}>
                    {name}
                  </text>
                  {offer.stays
                    .filter(stay => stay.bayId === bayId)
                    .map(stay => (
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
                            canvas={{ axis, unit: 1, board: { open, profiles, nowAt } }}
                            box={box}
                          />
                        ))}
                      </g>
                    ))}
                </g>
              )
            })}
            {dayHeads(fromAt, toAt, zone).map(day => (
              <text
                key={day.date}
                className={boardStyles.soft}
                x={(axis.x(day.fromAt) + axis.x(day.toAt)) / 2}
                y={height - 4}
                textAnchor="middle"
              >
                {columnWords(day.date)}
              </text>
            ))}
          </>
        )}
      </Chart>
    </div>
  )
}
