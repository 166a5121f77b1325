import { Button, Checkbox, Textarea, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import type { ProductView, TreatmentView } from '../../../../main/api/views.ts'
import type { TreatmentStep } from '../../../../main/domain/shop/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { MoneyInput } from '../../../parts/inputs.tsx'
import { sizeChoices } from '../../../parts/shopWords.ts'
import settings from '../Settings.module.css'
import { LaidOut } from './LaidOut.tsx'
import { StepEditor } from './StepEditor.tsx'
import styles from './Treatments.module.css'

interface Fields {
  name: string
  summary: string
  prices: TreatmentView['prices']
  needsTwoPeople: boolean
  steps: TreatmentStep[]
}

const freshStep: TreatmentStep = {
  name: '',
  stage: 'prepare',
  needs: 'wet',
  skill: 'wash',
  crew: 1,
  splittable: false,
  sameBay: false,
  waitMin: null,
  waitMax: null,
  minutes: { small: 60, medium: 60, large: 60, xl: 60 },
  byCondition: false,
  productId: null,
}

const fresh: Fields = {
  name: '',
  summary: '',
  prices: { small: 0, medium: 0, large: 0, xl: 0 },
  needsTwoPeople: false,
  steps: [freshStep],
}

interface Props {
  treatment: TreatmentView | undefined
  products: ProductView[]
}

/** One treatment: name, prices, steps, and what they come to on a car. */
export function TreatmentEditor({ treatment, products }: Props) {
  const navigate = useNavigate()
  const { name, summary, prices, needsTwoPeople, steps } = treatment ?? fresh
  const form = useForm({
    saved: { name, summary, prices, needsTwoPeople, steps } as Fields,
    version: treatment?.version,
    saving: trpc.treatments.save.mutationOptions(),
    send: (value, version) => ({ ...value, ...(treatment && { id: treatment.id, version }) }),
    done: ({ id }) => {
      if (!treatment) void navigate({ to: '/settings/$section/$id', params: { section: 'treatments', id } })
    },
  })
  const { value: now, change, faults } = form
  const putStep = (index: number, step: TreatmentStep) =>
    change({ steps: now.steps.map((each, i) => (i === index ? step : each)) })
  const moveStep = (index: number, by: 1 | -1) => {
    const moved = now.steps.filter((_, i) => i !== index)
    moved.splice(index + by, 0, now.steps[index]!)
    change({ steps: moved })
  }
  return (
    <>
      <div className={settings.card}>
        <Form form={form} label={treatment ? treatment.name : 'A new treatment'}>
          <TextInput label="Name" maw={420} autoFocus={!treatment} {...form.field('name')} />
          <Textarea label="What it is, for the customer" autosize minRows={1} {...form.field('summary')} />
          <fieldset className={styles.sizes}>
            <legend>Price by size, 0 for not priced</legend>
            {sizeChoices.map(({ value: size, label }) => (
              <MoneyInput
                key={size}
                label={label}
                value={now.prices[size]}
                onChange={minor => change({ prices: { ...now.prices, [size]: minor } })}
                error={faults.at(`prices.${size}`)}
              />
            ))}
          </fieldset>
          <Checkbox label="Needs two people: no step is done by one alone" {...form.tick('needsTwoPeople')} />
          {now.steps.map((step, i) => (
            <StepEditor
              // biome-ignore lint/suspicious/noArrayIndexKey: a step has no other name than its place
              key={i}
              index={i}
              count={now.steps.length}
              step={step}
              products={products}
              faults={faults}
              onChange={next => putStep(i, next)}
              onMove={by => moveStep(i, by)}
              onRemove={() => change({ steps: now.steps.filter((_, k) => k !== i) })}
            />
          ))}
          <div>
            <Button
              variant="default"
              onClick={() =>
                change({ steps: [...now.steps, { ...(now.steps.at(-1) ?? freshStep), name: '' }] })
              }
            >
              Add a step
            </Button>
          </div>
          <LaidOut treatment={now} products={products} />
          {faults.at('steps') && <p role="alert">{faults.at('steps')}</p>}
        </Form>
      </div>
      {treatment && (
        <ArchiveButton
          row={treatment}
          archive={trpc.treatments.archive.mutationOptions()}
          restore={trpc.treatments.restore.mutationOptions()}
          label="Archive this treatment"
        />
      )}
    </>
  )
}
