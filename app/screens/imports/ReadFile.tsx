import { Button, Group, Progress, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { OpenedView } from '../../../main/api/views.ts'
import { importFields, type Reading } from '../../../main/domain/imports/index.ts'
import { localeNow, say } from '../../../main/domain/language/index.ts'
import { useAct, useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import { Scrolled } from '../../parts/Scrolled.tsx'
import table from '../../parts/table.module.css'
import styles from './Imports.module.css'
import { Report } from './Report.tsx'
import { dayOrderChoices, markChoices, volumeChoices } from './words.ts'

interface Props {
  opened: OpenedView
  onDone(): void
}

/** How a file is read, what each of its rows would become, and the act that takes it in. */
export function ReadFile({ opened, onDone }: Props) {
  const { fileId } = opened
  const [reading, setReading] = useState<Reading>(opened.reading)
  /** What the report on the screen was made of. */
  const [checked, setChecked] = useState<string | null>(null)
  const settled = useQuery(
    trpc.imports.settle.queryOptions(
      { fileId, reading },
      { placeholderData: before => before, retry: false },
    ),
  ).data
  const ask = settled?.ask ?? opened.ask
  const standing = useQuery({
    ...trpc.imports.standing.queryOptions(),
    refetchInterval: query => (query.state.data?.working ? 300 : false),
  }).data
  const checking = useSaving(trpc.imports.check.mutationOptions())
  const taking = useSaving(trpc.imports.take.mutationOptions())
  const stopping = useAct(trpc.imports.stop.mutationOptions())
  const faults = faultsOf(checking.error ?? taking.error)
  const change = (part: Partial<Reading>) => {
    setReading({ ...reading, ...part })
    setChecked(null)
  }
  const current = JSON.stringify(reading)
  const check = () => checking.save({ fileId, reading }, () => setChecked(current))
  const report = standing?.report?.fileId === fileId ? standing.report : null
  const done = report !== null && report.importId !== null
  const fresh = report !== null && (done || checked === current)
  return (
    <>
      {!done && (
        <Card
          title={opened.fileName}
          about={say('{rows} rows{remembered}', {
            rows: opened.rows.toLocaleString(localeNow()),
            remembered: opened.remembered ? say(', read as the last file like it') : '',
          })}
        >
          <Columns opened={opened} reading={reading} change={change} errorAt={faults.at} />
          <Group gap="sm" mt="sm" align="flex-start">
            {(ask.includes('dayOrder') || reading.dayOrder !== null) && (
              <Select
                label={say('Days are written')}
                placeholder={say('choose')}
                data={dayOrderChoices}
                value={reading.dayOrder ?? settled?.reading.dayOrder ?? null}
                allowDeselect={false}
                onChange={dayOrder => change({ dayOrder })}
              />
            )}
            {(ask.includes('volume') || reading.volume !== null) && (
              <Select
                label={say('Contents are in')}
                placeholder={say('choose')}
                data={volumeChoices}
                value={reading.volume}
                allowDeselect={false}
                onChange={volume => change({ volume })}
              />
            )}
            {(ask.includes('mark') || (reading.mark !== null && reading.mark !== opened.reading.mark)) && (
              <Select
                label={say('Fractions are written')}
                placeholder={say('choose')}
                data={markChoices}
                value={reading.mark}
                allowDeselect={false}
                onChange={mark => change({ mark })}
              />
            )}
          </Group>
          <Sample opened={opened} />
          <Refused words={faults.rest() ?? standing?.failed} />
          {standing?.working ? (
            <Working {...standing.working} onStop={() => stopping.run()} />
          ) : (
            <Group mt="sm">
              <Button
                variant={fresh ? 'default' : 'filled'}
                loading={checking.busy}
                disabled={ask.length > 0}
                onClick={check}
              >
                {say('Look the rows through')}
              </Button>
              {fresh && report.added > 0 && (
                <Button loading={taking.busy} onClick={() => taking.save({ fileId, reading })}>
                  {say('Take in {added} rows', { added: report.added.toLocaleString(localeNow()) })}
                </Button>
              )}
              {ask.length > 0 && (
                <span className={pieces.soft}>{say('The file does not say how these are written.')}</span>
              )}
            </Group>
          )}
        </Card>
      )}
      {fresh && !standing?.working && <Report report={report} onDone={onDone} />}
    </>
  )
}

interface ColumnsProps {
  opened: OpenedView
  reading: Reading
  change(part: Partial<Reading>): void
  errorAt(field: string): string | undefined
}

/** Which column holds what. */
function Columns({ opened, reading, change, errorAt }: ColumnsProps) {
  const data = opened.columns.map((label, i) => ({ value: String(i), label }))
  return (
    <div className={styles.columns}>
      {importFields[opened.kind].map(({ field, label, needed }) => (
        <Select
          key={field}
          label={say(label)}
          data={data}
          placeholder={say('not in the file')}
          clearable={!needed}
          allowDeselect={!needed}
          clearButtonProps={{ 'aria-label': say('No column for {label}', { label: say(label) }) }}
          value={reading.columns[field] === null ? null : String(reading.columns[field] ?? '')}
          error={errorAt(`columns.${field}`)}
          onChange={chosen =>
            change({ columns: { ...reading.columns, [field]: chosen === null ? null : Number(chosen) } })
          }
        />
      ))}
    </div>
  )
}

function Sample({ opened: { columns, sample } }: { opened: OpenedView }) {
  return (
    <Scrolled label={say('First rows of the file')}>
      <table className={`${table.table} ${styles.wide}`}>
        <HeadRow columns={columns} />
        <tbody>
          {sample.map((cells, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of a file that never move
            <tr key={row}>
              {cells.map((cell, i) => (
                <td key={columns[i]}>
                  <bdi>{cell}</bdi>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scrolled>
  )
}

function Working({ done, total, onStop }: { done: number; total: number; onStop(): void }) {
  const share = total > 0 ? (100 * done) / total : 0
  return (
    <>
      <p role="status">
        {say('{share} % of the rows. The desk goes on meanwhile.', { share: Math.floor(share) })}
      </p>
      <Progress value={share} aria-label={say('Rows looked through so far')} my="sm" />
      <Button variant="default" onClick={onStop}>
        {say('Stop')}
      </Button>
    </>
  )
}
