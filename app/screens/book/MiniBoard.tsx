import { useElementSize } from '@mantine/hooks'
import type { OffersView, PlaceView } from '../../../main/api/views.ts'
import { difference } from '../../../main/domain/calendar/index.ts'
import { columnWords } from '../../parts/time.ts'
import boardStyles from '../board/Board.module.css'
import { dayHeads } from '../board/geometry/ticks.ts'
import { timeAxis } from '../board/geometry/timeAxis.ts'
import { Block } from '../board/layers/Blocks.tsx'
import { Patterns } from '../board/layers/Patterns.tsx'

/** An offer as a small board: its bays down, the days from drop-off to handover across. */
export function MiniBoard({ offer, offers }: { offer: PlaceView; offers: OffersView }) {
  const { ref, width } = useElementSize()
  const { zone, open, profiles, nowAt } = offers
  const heads = dayHeads(offer.dropOffAt, offer.handoverAt + 1, zone)
  const first = Temporal.PlainDate.from(heads[0]!.date)
  const lastDate = Temporal.PlainDate.from(heads.at(-1)!.date).add({ days: 1 })
  const start = (day: Temporal.PlainDate) => day.toZonedDateTime(zone).epochMilliseconds / 60_000
  const fromAt = start(first)
  const toAt = start(lastDate)
  const rows = [...new Map(offer.stays.map(stay => [stay.bayId, stay.bayName])).entries()]
  const row = 34
  const left = 56
  const height = rows.length * row + 18
  const axis = timeAxis(open, fromAt, toAt, left, Math.max(left + 10, width), 0.2)
  const days = dayHeads(fromAt, toAt, zone)
  return (
    <div ref={ref}>
      <svg className={boardStyles.mini} width={width} height={height} aria-hidden="true">
        <Patterns />
        {difference([{ from: fromAt, to: toAt }], open).map(span => (
          <rect
            key={span.from}
            className={boardStyles.closed}
            x={axis.x(span.from)}
            width={axis.x(span.to) - axis.x(span.from)}
            y={0}
            height={rows.length * row}
          />
        ))}
        {rows.map(([bayId, name], index) => (
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
                    y={index * row + 3}
                    height={row - 6}
                    rx={2}
                  />
                  {stay.blocks.map(block => (
                    <Block
                      key={`${block.position}-${block.fromAt}`}
                      block={block}
                      canvas={{ axis, unit: 1, board: { open, profiles, nowAt } }}
                      box={{ top: index * row + 3, height: row - 6 }}
                    />
                  ))}
                </g>
              ))}
          </g>
        ))}
        {days.map(day => (
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
      </svg>
    </div>
  )
}
