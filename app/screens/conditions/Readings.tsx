import { Group, SegmentedControl, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { daySpans } from '../../parts/daySpans.ts'
import { degrees, percentWords } from '../../parts/degrees.ts'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import table from '../../parts/table.module.css'
import { nearWords } from '../../parts/time.ts'
import { ReadingsChart } from './ReadingsChart.tsx'

const shownRows = 8

/** A bay's last days as lines, and its newest readings one by one. */
export function Readings({ bay, view }: { bay: BayConditionsView; view: ConditionsView }) {
  const { units } = useShop()
  const [days, setDays] = useState('3')
  const [productId, setProductId] = useState<string | null>(view.products[0]?.id ?? null)
  const toAt = view.nowAt
  const fromAt = toAt - Number(days) * 1440
  const { data: readings = [] } = useQuery({
    ...trpc.readings.list.queryOptions({ bayId: bay.bayId, fromAt, toAt }),
    placeholderData: before => before,
  })
  const { save, busy } = useSaving(trpc.readings.void.mutationOptions())
  const product = view.products.find(each => each.id === productId) ?? null
  const when = (at: number) => nearWords(at, view.zone, view.nowAt)
  return (
    <Card title={`${bay.bayName}, the last days`}>
      <Group align="end" gap="0.625rem" mb="xs">
        <SegmentedControl aria-label="Days shown" data={daySpans} value={days} onChange={setDays} />
        <Select
          label="Range of"
          placeholder="no product"
          data={view.products.map(({ id, name }) => ({ value: id, label: name }))}
          value={productId}
          onChange={setProductId}
          clearable
          clearButtonProps={{ 'aria-label': 'Show no range' }}
        />
      </Group>
      {readings.length === 0 ? (
        <p className={pieces.soft}>
          Nothing was read in these days. Type a reading in, take in a logger’s file below, or let a sensor
          post.
        </p>
      ) : (
        <>
          <ReadingsChart readings={readings} fromAt={fromAt} toAt={toAt} zone={view.zone} product={product} />
          <h3>Newest</h3>
          <table className={table.table}>
            <HeadRow
              columns={['When', 'Air', 'Humidity', 'Panel', 'Dew point', 'From', '(What may be done)']}
            />
            <tbody>
              {readings
                .slice(-shownRows)
                .reverse()
                .map(reading => (
                  <tr key={reading.id}>
                    <td>{when(reading.at)}</td>
                    <td>{degrees(reading.airC, units)}</td>
                    <td>{percentWords(reading.humidityPercent)}</td>
                    <td>{degrees(reading.panelC, units)}</td>
                    <td>{degrees(reading.dewC, units)}</td>
                    <td>{reading.source}</td>
                    <td>
                      <RowButton
                        does="Take out"
                        of={`the reading of ${when(reading.at)}: it was wrong`}
                        size="compact-xs"
                        disabled={busy}
                        onClick={() => save({ id: reading.id })}
                      />
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
        </>
      )}
    </Card>
  )
}
