import { Group, SegmentedControl, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
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
import { Waiting } from '../../parts/Waiting.tsx'
import { ReadingsChart } from './ReadingsChart.tsx'

const shownRows = 8

const sources = { typed: say('typed'), imported: say('imported'), sensor: say('sensor') } as const

/** A bay's last days as lines, and its newest readings one by one. */
export function Readings({ bay, view }: { bay: BayConditionsView; view: ConditionsView }) {
  const { units } = useShop()
  const [days, setDays] = useState('3')
  const [productId, setProductId] = useState<string | null>(view.products[0]?.id ?? null)
  const toAt = view.nowAt
  const fromAt = toAt - Number(days) * 1440
  const { data: readings, error } = useQuery({
    ...trpc.readings.list.queryOptions({ bayId: bay.bayId, fromAt, toAt }),
    placeholderData: before => before,
  })
  const { save, busy } = useSaving(trpc.readings.void.mutationOptions())
  const product = view.products.find(each => each.id === productId) ?? null
  const when = (at: number) => nearWords(at, view.zone, view.nowAt)
  return (
    <Card title={say('{bayName}, the last days', { bayName: bay.bayName })}>
      <Group align="end" gap="0.625rem" mb="xs">
        <SegmentedControl aria-label={say('Days shown')} data={daySpans} value={days} onChange={setDays} />
        <Select
          label={say('Range of')}
          placeholder={say('no product')}
          data={view.products.map(({ id, name }) => ({ value: id, label: name }))}
          value={productId}
          onChange={setProductId}
          clearable
          clearButtonProps={{ 'aria-label': say('Show no range') }}
        />
      </Group>
      {!readings ? (
        <Waiting error={error} words={say('Looking up what was read')} />
      ) : readings.length === 0 ? (
        <p className={pieces.soft}>
          {say(
            'Nothing was read in these days. Type a reading in, take in a logger’s file below, or let a sensor post.',
          )}
        </p>
      ) : (
        <>
          <ReadingsChart readings={readings} fromAt={fromAt} toAt={toAt} zone={view.zone} product={product} />
          <h3>{say('Newest')}</h3>
          <table className={table.table}>
            <HeadRow
              columns={[
                say('When'),
                say('Air'),
                say('Humidity'),
                say('Panel'),
                say('Dew point'),
                say('From'),
                say('(What may be done)'),
              ]}
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
                    <td>{sources[reading.source]}</td>
                    <td>
                      <RowButton
                        does={say('Take out')}
                        of={say('the reading of {at}: it was wrong', { at: when(reading.at) })}
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
