import { useQuery } from '@tanstack/react-query'
import type { EffortView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
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
      <Heading title={say('Hands-on times')}>
        {say(
          'Learned from this shop’s own finished visits: how long work really took against what the treatments say, by size, condition, how much of the paint, what the intake marked, and who did it. Laying keeps its minutes.',
        )}
      </Heading>
      {query.data ? (
        <Learned effort={query.data} />
      ) : (
        <Waiting error={query.error} words={say('Working out the times')} />
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
      <Card title={say('Hands-on times used for bookings')}>
        <Form form={form} label={say('Hands-on times')}>
          <OptionalDecimalInput
            label={say('Out of 100 visits, how many take no longer than booked')}
            description={say('Empty: hands-on times as the treatments say. 80 keeps four promises of five.')}
            whole
            least={50}
            most={99}
            w={360}
            {...form.field('promisePercent')}
          />
        </Form>
      </Card>
      <Card
        title={say('How promises held')}
        empty={
          promises.of === 0 &&
          say('No visit with all its times has been handed over yet; begin and finish each step on the job.')
        }
      >
        <Facts
          of={{
            [say('Ready by the promise')]: say('{kept} of the last {of}; in the long run {low} to {high}', {
              kept: promises.kept,
              of: promises.of,
              low: percent(promises.low),
              high: percent(promises.high),
            }),
            [say('Nine of ten were late by at most')]:
              promises.lateMin === 0 ? say('not late at all') : durationWords(promises.lateMin),
            [say('A usual visit takes')]: say(
              '{median} of what is written; {promisePercent} of 100 take {safe} at most',
              {
                median: percent(usual.median),
                promisePercent: effort.promisePercent ?? 80,
                safe: percent(usual.safe),
              },
            ),
            [say('Learned from')]: say(
              '{visits, plural, one {1 finished visit} other {{visits} finished visits}}',
              {
                visits,
              },
            ),
            ...Object.fromEntries(
              people.map(({ name, count, median }) => [
                name,
                say('{median} of what is written ({count, plural, one {1 visit} other {{count} visits}})', {
                  median: percent(median),
                  count,
                }),
              ]),
            ),
          }}
        />
      </Card>
      {recent.length > 0 && (
        <Card title={say('The last visits')}>
          <table className={table.table}>
            <HeadRow columns={[say('Job'), say('Written'), say('Took'), say('Promise')]} />
            <tbody>
              {recent.map(({ jobNumber, plannedMin, realMin, lateMin }) => (
                <tr key={jobNumber}>
                  <td>{jobNumber}</td>
                  <td>{durationWords(plannedMin)}</td>
                  <td>{durationWords(realMin)}</td>
                  <td className={lateMin > 0 ? pieces.late : pieces.kept}>
                    {lateMin > 0
                      ? say('⚑ {lateMin} late', { lateMin: durationWords(lateMin) })
                      : say('✓ kept')}
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
