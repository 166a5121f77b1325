import { Alert, Button, Group, Select, TextInput } from '@mantine/core'
import type { JobView } from '../../../main/api/views.ts'
import { decimalNow, say } from '../../../main/domain/language/index.ts'
import { takenOffWords } from '../../../main/domain/measure/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Fact } from '../../parts/Facts.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { DecimalInput, MoneyInput, OptionalDecimalInput } from '../../parts/inputs.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { Table } from '../../parts/Table.tsx'
import { ThicknessInput } from '../../parts/ThicknessInput.tsx'
import { durationWords, nearWords } from '../../parts/time.ts'
import { useJobAct } from './useJobAct.ts'

/** By which way the customer answered, beside the name. */
const by = { phone: say('phone'), 'in person': say('in person'), message: say('message') } as const

type Spot = NonNullable<JobView['testSpot']>

/** The test spot: what it showed, what that does to the rest, and what the customer says to it. */
export function TestSpot({ job }: { job: JobView }) {
  const back = useJobAct(trpc.jobs.spotBack.mutationOptions())
  const { units } = useShop()
  const spot = job.testSpot
  if (!spot || (spot.result === null && !spot.canRecord)) return null
  const { result, answer, change } = spot
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  return (
    <Card title={say('Test spot')}>
      {result && (
        <dl>
          <Fact name={say('What worked')}>{result.combination}</Fact>
          <Fact name={say('One panel takes')}>{durationWords(result.perPanelMin)}</Fact>
          <Fact name={say('Readings')}>{readings(result, units)}</Fact>
          {answer && (
            <Fact name={answer.said === 'agreed' ? say('Agreed') : say('Declined')}>
              {answer.by}, {by[answer.how as keyof typeof by] ?? answer.how}, {when(answer.at)}
            </Fact>
          )}
        </dl>
      )}
      {spot.cautions.map(words => (
        <Alert key={words} color="orange" my="xs">
          {words}
        </Alert>
      ))}
      {change && <Change job={job} change={change} when={when} />}
      {result && spot.canAnswer && change && (
        <AnswerForm key={job.version} job={job} priceMinor={change.priceMinor.after} />
      )}
      {spot.canRecord &&
        (result === null ? (
          <ResultForm job={job} result={null} />
        ) : (
          <details>
            <summary>{say('Change the result')}</summary>
            <ResultForm job={job} result={result} />
          </details>
        ))}
      {spot.canTakeBack && (
        <Button
          size="compact-sm"
          variant="default"
          mt="xs"
          loading={back.isPending}
          onClick={() => back.mutate({ id: job.id, version: job.version })}
        >
          {answer ? say('Take the answer back') : say('Take the result back')}
        </Button>
      )}
    </Card>
  )
}

function readings(
  { lostUm, glossBefore, glossAfter }: NonNullable<Spot['result']>,
  units: 'us' | 'metric',
): string {
  const said = [
    ...(lostUm === null ? [] : [say('{lost} off', { lost: takenOffWords(lostUm, units) })]),
    ...(glossBefore === null && glossAfter === null
      ? []
      : [
          say('gloss {glossBefore} to {glossAfter}', {
            glossBefore: glossBefore === null ? say('not measured') : decimalNow(glossBefore),
            glossAfter: glossAfter === null ? say('not measured') : decimalNow(glossAfter),
          }),
        ]),
  ]
  return said.join(', ') || say('None taken')
}

interface ChangeProps {
  job: JobView
  change: NonNullable<Spot['change']>
  when(at: number): string
}

/** As it was booked, and as it is by the spot. */
function Change({ job, change, when }: ChangeProps) {
  const { minutes, handoverAt, priceMinor, places } = change
  const rows = [
    { name: say('Correction'), before: durationWords(minutes.before), after: durationWords(minutes.after) },
    { name: say('Now expected'), before: when(handoverAt.before), after: when(handoverAt.after) },
    {
      name: say('Price'),
      before: money(priceMinor.before, job.currency),
      after: money(priceMinor.after, job.currency),
    },
  ]
  return (
    <>
      <Table
        rows={rows}
        keyOf={row => row.name}
        columns={[
          { head: '', cell: row => row.name },
          { head: say('As booked'), cell: row => row.before },
          { head: say('By the spot'), cell: row => <b>{row.after}</b> },
        ]}
      />
      <p className={pieces.soft}>
        {say('The car is counted as eleven panels alike (common practice, no source).')}
      </p>
      {places.length > 0 && <p className={pieces.soft}>{places.join('; ')}</p>}
    </>
  )
}

/** What the spot showed. */
function ResultForm({ job, result }: { job: JobView; result: Spot['result'] }) {
  const form = useForm({
    saved: {
      combination: result?.combination ?? '',
      perPanelMin: result?.perPanelMin ?? 45,
      lostUm: result?.lostUm ?? null,
      glossBefore: result?.glossBefore ?? null,
      glossAfter: result?.glossAfter ?? null,
    },
    version: job.version,
    saving: trpc.jobs.spot.mutationOptions(),
    send: (value, version) => ({ ...value, id: job.id, version }),
  })
  return (
    <Form form={form} label={say('Test spot')} save={say('Save the result')}>
      <TextInput label={say('What worked: product, pad, passes')} required {...form.field('combination')} />
      <Group align="flex-start" gap="0.75rem" my="xs">
        <DecimalInput
          label={say('One panel takes')}
          unit={say('min')}
          whole
          least={1}
          most={1440}
          {...form.field('perPanelMin')}
        />
        <ThicknessInput label={say('Clear coat off')} least={0} most={100} {...form.field('lostUm')} />
        <OptionalDecimalInput
          label={say('Gloss before')}
          unit={say('GU')}
          least={0}
          most={2000}
          {...form.field('glossBefore')}
        />
        <OptionalDecimalInput
          label={say('Gloss after')}
          unit={say('GU')}
          least={0}
          most={2000}
          {...form.field('glossAfter')}
        />
      </Group>
    </Form>
  )
}

const answers = [
  { value: 'agreed', label: say('Agreed') },
  { value: 'declined', label: say('Declined, as booked') },
]
const ways = ['phone', 'in person', 'message'] as const
const wayWords = { phone: say('By phone'), 'in person': say('In person'), message: say('By message') }

/** What the customer says to it. */
function AnswerForm({ job, priceMinor }: { job: JobView; priceMinor: number }) {
  const form = useForm({
    saved: {
      answer: 'agreed' as 'agreed' | 'declined',
      by: job.customer.name,
      how: 'phone' as (typeof ways)[number],
      priceMinor,
    },
    saving: trpc.jobs.spotAnswer.mutationOptions(),
    send: value => ({ ...value, id: job.id, version: job.version }),
  })
  const { answer, how } = form.value
  return (
    <Form form={form} label={say('The customer’s answer')} save={say('Save the answer')}>
      <Group align="flex-end" gap="0.75rem" my="xs">
        <Select
          label={say('The answer')}
          data={answers}
          allowDeselect={false}
          value={answer}
          onChange={said => form.change({ answer: said === 'declined' ? said : 'agreed' })}
        />
        <Select
          label={say('How')}
          data={ways.map(way => ({ value: way, label: wayWords[way] }))}
          allowDeselect={false}
          value={how}
          onChange={said => form.change({ how: ways.find(way => way === said) ?? 'phone' })}
        />
        <TextInput label={say('Who answered')} required {...form.field('by')} />
        {answer === 'agreed' && <MoneyInput label={say('Price agreed')} {...form.field('priceMinor')} />}
      </Group>
    </Form>
  )
}
