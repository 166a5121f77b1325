import { useQuery } from '@tanstack/react-query'
import type { EffortView } from '../../../main/api/views.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Facts } from '../../parts/Facts.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import { OptionalDecimalInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import table from '../../parts/table.module.css'
import { durationWords } from '../../parts/time.ts'
import { Waiting } from '../../parts/Waiting.tsx'
import { Heading } from './Heading.tsx'

/** What hands-on work really takes here, how promises held, and whether bookings reckon with it. */
export function TimesSection() {
  const query = useQuery(trpc.effort.get.queryOptions())
  return (
    <>
      <Heading title="Hands-on times">
        Learned from this shop’s own finished visits: how long work really took against what the treatments
        say, by size, condition, how much of the paint, what the intake marked, and who did it. Laying keeps
        its minutes.
      </Heading>
      {query.data ? (
        <Learned effort={query.data} />
      ) : (
        <Waiting error={query.error} words="Working out the times" />
      )}
    </>
  )
}

function Learned({ effort }: { effort: EffortView }) {
  const form = useForm({
    saved: { promisePercent: effort.promisePercent },
    version: effort.version,
    saving: trpc.effort.save.mutationOptions(),
    send: (value, version) => ({ ...value, version }),
  })
  const { visits, usual, promises, people, recent } = effort
  const percent = (share: number) => `${Math.round(100 * share)} %`
  return (
    <>
      <Card title="Bookings reckon with hands-on times">
        <Form form={form} label="Hands-on times">
          <OptionalDecimalInput
            label="Visits of 100 that take no longer than booked"
            description="Empty: hands-on times as the treatments say. 80 keeps four promises of five."
            whole
            least={50}
            most={99}
            w={360}
            {...form.field('promisePercent')}
          />
        </Form>
      </Card>
      <Card
        title="How promises held"
        empty={
          promises.of === 0 &&
          'No visit with all its times has been handed over yet; begin and finish each step on the job.'
        }
      >
        <Facts
          of={{
            'Ready by the promise': `${promises.kept} of the last ${promises.of}; in the long run ${percent(promises.low)} to ${percent(promises.high)}`,
            'A usual visit takes': `${percent(usual.median)} of what is written; ${effort.promisePercent ?? 80} of 100 take ${percent(usual.safe)} at most`,
            'Learned from': visits === 1 ? '1 finished visit' : `${visits} finished visits`,
            ...Object.fromEntries(
              people.map(({ name, count, median }) => [
                name,
                `${percent(median)} of what is written (${count === 1 ? '1 visit' : `${count} visits`})`,
              ]),
            ),
          }}
        />
      </Card>
      {recent.length > 0 && (
        <Card title="The last visits">
          <table className={table.table}>
            <HeadRow columns={['Job', 'Written', 'Took', 'Promise']} />
            <tbody>
              {recent.map(({ jobNumber, plannedMin, realMin, lateMin }) => (
                <tr key={jobNumber}>
                  <td>{jobNumber}</td>
                  <td>{durationWords(plannedMin)}</td>
                  <td>{durationWords(realMin)}</td>
                  <td className={lateMin > 0 ? pieces.late : pieces.kept}>
                    {lateMin > 0 ? `⚑ ${durationWords(lateMin)} late` : '✓ kept'}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Card>
      )}
    </>
  )
}
