import { Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { ShelfProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'

/** From which concentrate a product is made, at which share, and how long a mixed batch keeps. */
export function DilutionForm({ product }: { product: ShelfProductView }) {
  const { id, name, shelf, madeFrom, makes } = product
  const list = useQuery(trpc.shelf.list.queryOptions()).data ?? []
  const removing = useSaving(trpc.shelf.removeDilution.mutationOptions())
  const form = useForm({
    saved: madeFrom ?? { concentrateId: '', waterParts: 9, lifeDays: 30 },
    version: madeFrom?.version ?? 0,
    saving: trpc.shelf.saveDilution.mutationOptions(),
    send: ({ concentrateId, waterParts, lifeDays }, version) => ({
      productId: id,
      concentrateId,
      waterParts,
      lifeDays,
      version,
    }),
  })
  if (makes.length > 0)
    return (
      <Card title={say('A concentrate')}>
        <p>{say('Made from it: {makes}.', { makes: makes.map(each => each.words).join('; ') })}</p>
      </Card>
    )
  const concentrates = list.filter(item => item.id !== id && item.unit === shelf?.unit)
  return (
    <Card title={say('Made from a concentrate')}>
      <p className={pieces.soft}>
        {say(
          'Only where the shop mixes it: bookings that draw it then count back to the concentrate. The data sheet of the concentrate decides the share; the mixed product has its own hazard marks under Safety.',
        )}
      </p>
      <Form form={form} label={say('What {name} is made from', { name })} save={say('Save the share')}>
        <div className={pieces.fields}>
          <Select
            label={say('Concentrate')}
            data={concentrates.map(item => ({ value: item.id, label: item.name }))}
            {...form.choice('concentrateId')}
            value={form.value.concentrateId || null}
          />
          <DecimalInput label={say('Water to one part')} unit={say('parts')} {...form.field('waterParts')} />
          <DecimalInput label={say('A batch keeps')} unit={say('days')} whole {...form.field('lifeDays')} />
        </div>
      </Form>
      {madeFrom && (
        <RowButton
          does={say('Not made here any more')}
          variant="subtle"
          onClick={() => removing.save({ productId: id, version: madeFrom.version })}
        />
      )}
      <Refused of={removing.error} />
    </Card>
  )
}
