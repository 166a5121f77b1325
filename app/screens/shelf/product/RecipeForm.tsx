import { Button, Group, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { RecipeView, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import type { SizeClass } from '../../../../main/domain/vehicle/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'
import { unitText } from '../../../parts/shelf/amounts.ts'
import { sizeChoices } from '../../../parts/shopWords.ts'
import styles from '../Shelf.module.css'

type BySize = RecipeView['bySize']

interface Props {
  product: ShelfProductView
  unit: ShelfUnit
  /** Null: of a step that does not draw it yet. */
  recipe: RecipeView | null
  onClose(): void
}

const nothing = (): BySize => ({
  small: { amount: 0, spread: 0 },
  medium: { amount: 0, spread: 0 },
  large: { amount: 0, spread: 0 },
  xl: { amount: 0, spread: 0 },
})

/** How much of the product one step draws by size of car; what the step draws of others stays as it is. */
export function RecipeForm({ product, unit, recipe, onClose }: Props) {
  const [treatmentId, setTreatmentId] = useState(recipe?.treatmentId ?? null)
  const [position, setPosition] = useState(recipe ? String(recipe.position) : null)
  const [bySize, setBySize] = useState<BySize>(recipe?.bySize ?? nothing())
  const treatments = useQuery(trpc.treatments.list.queryOptions({ archived: false })).data
  const chosen = useQuery({
    ...trpc.shelf.recipes.queryOptions({ treatmentId: treatmentId ?? '' }),
    enabled: treatmentId !== null,
  }).data
  const saving = useSaving(trpc.shelf.saveRecipe.mutationOptions())
  const faults = faultsOf(saving.error)
  const step = chosen?.steps.find(each => String(each.position) === position)
  const others = (step?.draws ?? []).filter(draw => draw.productId !== product.id)
  const save = (own: { productId: string; bySize: BySize }[]) => {
    if (!chosen || !step) return
    const kept = others.map(draw => ({ productId: draw.productId, bySize: draw.bySize }))
    saving.save(
      {
        treatmentId: chosen.treatmentId,
        position: step.position,
        version: chosen.version,
        draws: [...kept, ...own],
      },
      onClose,
    )
  }
  const set = (size: SizeClass, part: Partial<BySize[SizeClass]>) =>
    setBySize(now => ({ ...now, [size]: { ...now[size], ...part } }))
  const field = `draws.${others.length}`
  return (
    <Form
      error={saving.error}
      label={`Recipe of ${product.name}`}
      onSave={() => save([{ productId: product.id, bySize }])}
    >
      {recipe ? (
        <h3>
          {recipe.treatmentName}: {recipe.stepName}
        </h3>
      ) : (
        <Group align="flex-start" mt="sm">
          <Select
            label="Treatment"
            data={(treatments ?? []).map(each => ({ value: each.id, label: each.name }))}
            allowDeselect={false}
            value={treatmentId}
            onChange={value => {
              setTreatmentId(value)
              setPosition(null)
            }}
            error={faults.at('treatmentId')}
          />
          <Select
            label="Step"
            data={(chosen?.steps ?? []).map(each => ({
              value: String(each.position),
              label: each.stepName,
            }))}
            allowDeselect={false}
            disabled={!chosen}
            value={position}
            onChange={setPosition}
            error={faults.at('position')}
          />
        </Group>
      )}
      {sizeChoices.map(({ value: size, label }) => (
        <Group key={size} align="flex-start" wrap="nowrap">
          <DecimalInput
            label={`${label} car`}
            w={140}
            unit={unitText(unit)}
            value={bySize[size].amount}
            onChange={amount => set(size, { amount })}
            error={faults.at(`${field}.bySize.${size}.amount`)}
          />
          <DecimalInput
            label={`${label} car, more or less`}
            w={190}
            unit={unitText(unit)}
            value={bySize[size].spread}
            onChange={spread => set(size, { spread })}
            error={faults.at(`${field}.bySize.${size}.spread`)}
          />
        </Group>
      ))}
      <p className={styles.soft}>
        More or less: two steps in three lie within it. Booked jobs with this step draw by the new recipe.
      </p>
      <FormFoot faults={faults} busy={saving.busy} label="Save the recipe" dirty={step !== undefined}>
        {recipe && (
          <Button variant="subtle" color="red" onClick={() => save([])}>
            The step draws none
          </Button>
        )}
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
      </FormFoot>
    </Form>
  )
}
