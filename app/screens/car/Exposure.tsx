import { Select } from '@mantine/core'
import type { CarView } from '../../../main/api/views.ts'
import { decimalNow, say, sayKept } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'

/** How the car lives, and what that makes of the product's interval: every figure marked for what it rests on. */
export function Exposure({ car }: { car: CarView }) {
  const { factors, version } = car.exposure
  const saved: Record<string, string> = Object.fromEntries(
    factors.flatMap(factor => (factor.chosen === null ? [] : [[factor.id, factor.chosen]])),
  )
  const form = useForm({
    saved,
    version,
    saving: trpc.upkeep.exposure.save.mutationOptions(),
    send: (value, version) => ({
      vehicleId: car.vehicleId,
      choices: Object.fromEntries(Object.entries(value).filter(([, choice]) => choice !== '')),
      version,
    }),
  })
  const { faults } = form
  const { interval } = car
  return (
    <Card
      title={say('How it lives')}
      about={say('rules of thumb, for the shop to change; inspections correct them')}
    >
      <Form form={form} label={say('How it lives')}>
        <div className={pieces.fields}>
          {factors.map(factor => {
            const choices = factor.choices.map(choice => ({
              value: choice.id,
              label: `${sayKept(choice.label)} (× ${decimalNow(choice.multiplier)})`,
            }))
            return (
              <Select
                key={factor.id}
                title={choices.find(({ value }) => value === form.value[factor.id])?.label}
                label={sayKept(factor.label)}
                description={sayKept(factor.mark)}
                placeholder={say('not known')}
                clearable
                clearButtonProps={{ 'aria-label': say('Clear {label}', { label: sayKept(factor.label) }) }}
                data={choices}
                value={form.value[factor.id] || null}
                onChange={choice => form.change({ [factor.id]: choice ?? '' })}
                error={faults.at(`exposure.${factor.id}`) ?? faults.at(`choices.${factor.id}`)}
              />
            )
          })}
        </div>
        {interval && (
          <p>
            {interval.sentence}{' '}
            <span className={pieces.soft}>
              {say('The product’s {productDays} days: {productMark}.', {
                productDays: interval.productDays,
                productMark: sayKept(interval.productMark),
              })}
            </span>
          </p>
        )}
      </Form>
    </Card>
  )
}
