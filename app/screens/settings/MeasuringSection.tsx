import { useQuery } from '@tanstack/react-query'
import type { MeasuringView } from '../../../main/api/views.ts'
import { decimalNow, say } from '../../../main/domain/language/index.ts'
import { takenOffWords } from '../../../main/domain/measure/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import { OptionalDecimalInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { Scrolled } from '../../parts/Scrolled.tsx'
import { ThicknessInput } from '../../parts/ThicknessInput.tsx'
import table from '../../parts/table.module.css'
import { Waiting } from '../../parts/Waiting.tsx'
import { Heading } from './Heading.tsx'

/** What readings of paint and gloss are judged by. */
export function MeasuringSection() {
  const query = useQuery(trpc.intake.measuring.queryOptions())
  return (
    <>
      <Heading title={say('Measuring')}>
        {say(
          'What readings of paint and gloss are judged by from now on; pages that are signed keep what they were judged by.',
        )}
      </Heading>
      <Meters />
      {query.data ? (
        <Figures measuring={query.data} />
      ) : (
        <Waiting error={query.error} words={say('Reading the figures')} />
      )}
    </>
  )
}

/** What the meters read of their tiles, over the intakes: drift shows before a reading goes wrong. */
function Meters() {
  const { data: meters = [] } = useQuery(trpc.intake.meters.queryOptions())
  if (meters.length === 0) return null
  const gu = (value: number) => `${value > 0 ? '+' : ''}${decimalNow(value.toFixed(1))}`
  return (
    <Card title={say('Gloss meters, on their tiles')}>
      <Scrolled label={say('Gloss meters, on their tiles')}>
        <table className={table.table}>
          <HeadRow
            columns={[
              say('Meter'),
              say('Tile'),
              say('Read before sets'),
              say('Last off by, GU'),
              say('Drift a year, GU'),
              say('Next one likely, GU'),
            ]}
          />
          <tbody>
            {meters.map(meter => (
              <tr key={`${meter.instrument} ${meter.tile} ${meter.geometryDeg}`}>
                <td>{`${meter.instrument}, ${meter.geometryDeg}°`}</td>
                <td>{meter.tile}</td>
                <td>{meter.readings}</td>
                <td>{gu(meter.lastOffGu)}</td>
                <td>{meter.aYearGu === null ? '–' : gu(meter.aYearGu)}</td>
                <td className={meter.leaves ? pieces.late : undefined}>
                  {meter.leaves && '⚑ '}
                  {meter.next === null
                    ? say('too few readings')
                    : say('{low} to {high}', { low: gu(meter.next.low), high: gu(meter.next.high) })}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
    </Card>
  )
}

function Figures({ measuring: { version, usual, ...saved } }: { measuring: MeasuringView }) {
  const { units } = useShop()
  const form = useForm({
    saved,
    version,
    saving: trpc.intake.saveMeasuring.mutationOptions(),
    send: (value, version) => ({ ...value, version }),
  })
  const empty = (figure: string) =>
    say('Empty: {figure}, as is usual (common practice, no source).', { figure })
  const emptyUm = (um: number) => empty(takenOffWords(um, units))
  const gu = say('GU')
  const emptyGu = (figure: number) => empty(`${decimalNow(String(figure))} ${gu}`)
  return (
    <Form form={form} label={say('Measuring')}>
      <div className={pieces.column}>
        <Card title={say('Paint thickness')}>
          <div className={pieces.fields}>
            <ThicknessInput
              label={say('Thinnest paint that is corrected without a reason')}
              description={emptyUm(usual.thickness.floorUm)}
              least={40}
              most={300}
              {...form.field('floorUm')}
            />
            <ThicknessInput
              label={say('The gauge repeats a spot to')}
              description={emptyUm(usual.gaugeRepeatabilityUm)}
              least={0.1}
              most={20}
              {...form.field('gaugeRepeatabilityUm')}
            />
          </div>
        </Card>
        <Card title={say('Gloss')}>
          <div className={pieces.fields}>
            <OptionalDecimalInput
              label={say('The meter may be off its tile by')}
              description={emptyGu(usual.glossAllowedGu)}
              unit={gu}
              least={0.1}
              most={10}
              {...form.field('glossAllowedGu')}
            />
            <OptionalDecimalInput
              label={say('The meter repeats a spot to')}
              description={emptyGu(usual.glossRepeatabilityGu)}
              unit={gu}
              least={0.05}
              most={10}
              {...form.field('glossRepeatabilityGu')}
            />
          </div>
          <p className={pieces.soft}>
            {say(
              'How well an instrument repeats stands on its own sheet, as a standard deviation. Before and after differ for sure where they are further apart than repeating would make them (ISO 5725-6).',
            )}
          </p>
        </Card>
      </div>
    </Form>
  )
}
