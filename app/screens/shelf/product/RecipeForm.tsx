import { Button, Group, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type {
  RecipeView,
  ShelfProductView,
  ShelfUnit,
  TreatmentRecipesView,
} from '../../../../main/api/views.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { faultsOf } from '../../../parts/faults.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
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

/** How much of the product one step draws by size of car: which step, and then the amounts. */
export function RecipeForm({ product, unit, recipe, onClose }: Props) {
  const [treatmentId, setTreatmentId] = useState(recipe?.treatmentId ?? null)
  const [position, setPosition] = useState(recipe ? String(recipe.position) : null)
  const treatments = useQuery(trpc.treatments.list.queryOptions({ archived: false })).data
  const chosen = useQuery({
    ...trpc.shelf.recipes.queryOptions({ treatmentId: treatmentId ?? '' }),
    enabled: treatmentId !== null,
  }).data
  const step = chosen?.steps.find(each => String(each.position) === position)
  return (
    <>
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
          />
        </Group>
      )}
      {chosen && step && (
        <Amounts
          key={`${chosen.treatmentId} ${step.position}`}
          product={product}
          unit={unit}
          recipes={chosen}
          step={step}
          onClose={onClose}
        />
      )}
    </>
  )
}

interface AmountsProps extends Omit<Props, 'recipe'> {
  recipes: TreatmentRecipesView
  step: TreatmentRecipesView['steps'][number]
}

/** What one step draws of the product; what it draws of others stays as it is. */
function Amounts({ product, unit, recipes, step, onClose }: AmountsProps) {
  const drawn = step.draws.find(draw => draw.productId === product.id)
  const others = step.draws.filter(draw => draw !== drawn)
  const input = (own: { productId: string; bySize: BySize }[], version: number) => ({
    treatmentId: recipes.treatmentId,
    position: step.position,
    version,
    draws: [...others.map(({ productId, bySize }) => ({ productId, bySize })), ...own],
  })
  const form = useForm({
    saved: drawn?.bySize ?? nothing(),
    version: recipes.version,
    saving: trpc.shelf.saveRecipe.mutationOptions(),
    send: (bySize, version) => input([{ productId: product.id, bySize }], version),
    done: onClose,
  })
  const emptying = useSaving(trpc.shelf.saveRecipe.mutationOptions())
  const { value, change, faults } = form
  const field = `draws.${others.length}`
  return (
    <Form
      form={form}
      label={`Recipe of ${product.name}`}
      save="Save the recipe"
      onCancel={onClose}
      more={
        drawn && (
          <Button
            variant="subtle"
            color="red"
            onClick={() => emptying.save(input([], form.version), onClose)}
          >
            The step draws none
          </Button>
        )
      }
    >
      {sizeChoices.map(({ value: size, label }) => (
        <Group key={size} align="flex-start" wrap="nowrap">
          <DecimalInput
            label={`${label} car`}
            w={140}
            unit={unitText(unit)}
            value={value[size].amount}
            onChange={amount => change({ [size]: { ...value[size], amount } })}
            error={faults.at(`${field}.bySize.${size}.amount`)}
          />
          <DecimalInput
            label={`${label} car, more or less`}
            w={190}
            unit={unitText(unit)}
            value={value[size].spread}
            onChange={spread => change({ [size]: { ...value[size], spread } })}
            error={faults.at(`${field}.bySize.${size}.spread`)}
          />
        </Group>
      ))}
      <Refused words={faultsOf(emptying.error).rest()} />
      <p className={styles.soft}>
        More or less: two steps in three lie within it. Booked jobs with this step draw by the new recipe.
      </p>
    </Form>
  )
}
