import { Button, SegmentedControl, Select, Table } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { degrees } from '../../parts/degrees.ts'
import { nearWords } from '../../parts/time.ts'
import styles from './Conditions.module.css'
import { ReadingsChart } from './ReadingsChart.tsx'

const spans = [
  { value: '1', label: 'Day' },
  { value: '3', label: 'Three days' },
  { value: '7', label: 'Week' },
]

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
  return (
    <section className={styles.card}>
      <h2>{bay.bayName}, the last days</h2>
      <div className={styles.tools}>
        <SegmentedControl aria-label="Days shown" data={spans} value={days} onChange={setDays} />
        <Select
          label="Range of"
          placeholder="no product"
          data={view.products.map(({ id, name }) => ({ value: id, label: name }))}
          value={productId}
          onChange={setProductId}
          clearable
          clearButtonProps={{ 'aria-label': 'Show no range' }}
        />
      </div>
      {readings.length === 0 ? (
        <p className={styles.soft}>
          Nothing was read in these days. Type a reading in, take in a logger’s file below, or let a sensor
          post.
        </p>
      ) : (
        <>
          <ReadingsChart readings={readings} fromAt={fromAt} toAt={toAt} zone={view.zone} product={product} />
          <h3>Newest</h3>
          <Table verticalSpacing={4}>
            <Table.Thead>
              <Table.Tr>
                <Table.Th>When</Table.Th>
                <Table.Th>Air</Table.Th>
                <Table.Th>Humidity</Table.Th>
                <Table.Th>Panel</Table.Th>
                <Table.Th>Dew point</Table.Th>
                <Table.Th>From</Table.Th>
                <Table.Th aria-label="What may be done" />
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {readings
                .slice(-shownRows)
                .reverse()
                .map(reading => (
                  <Table.Tr key={reading.id}>
                    <Table.Td>{nearWords(reading.at, view.zone, view.nowAt)}</Table.Td>
                    <Table.Td>{degrees(reading.airC, units)}</Table.Td>
                    <Table.Td>
                      {reading.humidityPercent === null ? '—' : `${Math.round(reading.humidityPercent)} %`}
                    </Table.Td>
                    <Table.Td>{degrees(reading.panelC, units)}</Table.Td>
                    <Table.Td>{degrees(reading.dewC, units)}</Table.Td>
                    <Table.Td>{reading.source}</Table.Td>
                    <Table.Td>
                      <Button
                        size="compact-xs"
                        variant="default"
                        disabled={busy}
                        onClick={() => save({ id: reading.id })}
                        aria-label={`Take out the reading of ${nearWords(reading.at, view.zone, view.nowAt)}: it was wrong`}
                      >
                        Take out
                      </Button>
                    </Table.Td>
                  </Table.Tr>
                ))}
            </Table.Tbody>
          </Table>
        </>
      )}
    </section>
  )
}
