import { Button, FileButton, Group, Select, Stack } from '@mantine/core'
import { useState } from 'react'
import type {
  BayConditionsView,
  ConditionsView,
  ImportPreview,
  ImportReport,
} from '../../../main/api/views.ts'
import { localeNow, say } from '../../../main/domain/language/index.ts'
import { fieldsOf } from '../../data/fields.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { Say } from '../../parts/Say.tsx'
import { Scrolled } from '../../parts/Scrolled.tsx'
import table from '../../parts/table.module.css'
import { ReportTable } from './ReportTable.tsx'
import { TakenFiles } from './TakenFiles.tsx'

interface Opened {
  name: string
  text: string
  preview: ImportPreview
}

const fields = [
  ['time', say('Time'), true],
  ['air', say('Air temperature'), true],
  ['humidity', say('Humidity'), false],
  ['dewPoint', say('Dew point'), false],
  ['panel', say('Panel temperature'), false],
] as const

const orders = [
  { value: 'ymd', label: say('year, month, day') },
  { value: 'dmy', label: say('day, month, year') },
  { value: 'mdy', label: say('month, day, year') },
]

/** A logger's file: opened, its columns looked over, taken in, and told row by row what was not. */
export function ImportFile({ bay, view }: { bay: BayConditionsView; view: ConditionsView }) {
  const [opened, setOpened] = useState<Opened | null>(null)
  const [report, setReport] = useState<ImportReport | null>(null)
  const preview = useSaving(trpc.readings.preview.mutationOptions())
  const taking = useSaving(trpc.readings.import.mutationOptions())
  const open = async (file: File | null) => {
    if (!file) return
    const text = await file.text()
    setReport(null)
    setOpened(null)
    taking.reset()
    preview.save({ text }, found => setOpened({ name: file.name, text, preview: found }))
  }
  const change = (part: Partial<ImportPreview>) =>
    setOpened(before => before && { ...before, preview: { ...before.preview, ...part } })
  const take = ({ name, text, preview: { mapping, dateOrder, unit } }: Opened) =>
    unit &&
    taking.save({ bayId: bay.bayId, fileName: name, text, mapping, dateOrder, unit }, done => {
      setReport(done)
      setOpened(null)
    })
  return (
    <Card title={say('Read a logger’s file')}>
      <Group gap="sm">
        <FileButton
          onChange={open}
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          inputProps={{ 'aria-label': say('File of readings') }}
        >
          {props => (
            <Button {...props} variant="default" loading={preview.busy}>
              {say('Open a CSV file')}
            </Button>
          )}
        </FileButton>
        <span className={pieces.soft}>
          {say('Rows that cannot be right are told and left out; the rest is kept.')}
        </span>
      </Group>
      <Refused of={preview.error} />
      {opened && (
        <Mapping
          opened={opened}
          change={change}
          error={taking.error}
          busy={taking.busy}
          onTake={() => take(opened)}
          bayName={bay.bayName}
        />
      )}
      {report && <ReportTable report={report} />}
      <TakenFiles bay={bay} view={view} />
    </Card>
  )
}

interface MappingProps {
  opened: Opened
  change(part: Partial<ImportPreview>): void
  error: unknown
  busy: boolean
  bayName: string
  onTake(): void
}

function Mapping({ opened, change, error, busy, bayName, onTake }: MappingProps) {
  const { name, preview } = opened
  const faults = faultsOf(error)
  const own = fieldsOf(preview, change, faults.at)
  const columns = own.within('mapping')
  return (
    <Stack gap="sm" mt="sm">
      <span>
        <Say
          text="<b>{name}</b>, {rows} rows. {remembered}"
          values={{
            name,
            rows: preview.rows.toLocaleString(localeNow()),
            remembered: preview.remembered
              ? say('Its columns are known from an earlier file.')
              : say('Look whether each column was recognised; the choice is remembered for files like it.'),
          }}
        />
      </span>
      <Group gap="sm" align="flex-start">
        {fields.map(([field, label, needed]) => (
          <Select
            key={field}
            label={label}
            w={180}
            data={preview.columns}
            {...columns.field(field)}
            clearable={!needed}
            clearButtonProps={{ 'aria-label': say('No column for {label}', { label }) }}
            placeholder={say('not in the file')}
            allowDeselect={!needed}
          />
        ))}
        <Select label={say('Dates are written')} w={180} data={orders} {...own.choice('dateOrder')} />
        <Select
          label={say('Degrees are')}
          w={130}
          data={[
            { value: 'C', label: '°C' },
            { value: 'F', label: '°F' },
          ]}
          {...own.choice('unit')}
          placeholder={say('choose')}
          description={preview.unit === null ? say('The file does not say.') : undefined}
        />
      </Group>
      <Scrolled label={say('First rows of the file')}>
        <table className={table.table}>
          <HeadRow columns={preview.columns} />
          <tbody>
            {preview.sample.map(cells => (
              <tr key={cells.join()}>
                {cells.map((cell, i) => (
                  <td key={preview.columns[i]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
      <Refused words={faults.rest()} />
      <Group>
        <Button onClick={onTake} loading={busy} disabled={preview.unit === null}>
          {say('Read it in for {bayName}', { bayName })}
        </Button>
      </Group>
    </Stack>
  )
}
