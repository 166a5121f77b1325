import { Button, Group, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type {
  RecipeView,
  ShelfProductView,
  ShelfUnit,
  TreatmentRecipesView,
} from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { AmountInput } from '../../../parts/shelf/AmountInput.tsx'
import { choicesOf, sizeChoices } from '../../../parts/shopWords.ts'

type BySize = RecipeView['bySize']

interface Props {
  product: ShelfProductView
  unit: ShelfUnit
  /** Null: of a step that does not draw it yet. */
  recipe: RecipeView | null
  onClose(): void
}

const none = { amount: 0, spread: 0 }
const nothing: BySize = { small: none, medium: none, large: none, xl: none }

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
            label={say('Treatment')}
            data={choicesOf(treatments)}
            allowDeselect={false}
            value={treatmentId}
            onChange={value => {
              setTreatmentId(value)
              setPosition(null)
            }}
          />
          <Select
            label={say('Step')}
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
    saved: drawn?.bySize ?? nothing,
    version: recipes.version,
    saving: trpc.shelf.saveRecipe.mutationOptions(),
    send: (bySize, version) => input([{ productId: product.id, bySize }], version),
    place: `draws.${others.length}.bySize`,
    done: onClose,
  })
  const emptying = useSaving(trpc.shelf.saveRecipe.mutationOptions())
  return (
    <Form
      form={form}
      label={say('Recipe of {name}', { name: product.name })}
      save={say('Save the recipe')}
      onCancel={onClose}
      more={
        drawn && (
          <Button
            variant="subtle"
            color="red"
            onClick={() => emptying.save(input([], form.version), onClose)}
          >
            {say('The step draws none')}
          </Button>
        )
      }
    >
      {sizeChoices.map(({ value: size, label }) => (
        <Group key={size} align="flex-start" wrap="nowrap">
          <AmountInput
            of={unit}
            label={say('{label} car', { label })}
            w={140}
            {...form.within(size).field('amount')}
          />
          <AmountInput
            of={unit}
            label={say('{label} car, more or less', { label })}
            w={190}
            {...form.within(size).field('spread')}
          />
        </Group>
      ))}
      <Refused of={emptying.error} />
      <p className={pieces.soft}>
        {say(
          'More or less: two steps in three lie within it. Booked jobs with this step draw by the new recipe.',
        )}
      </p>
    </Form>
  )
}
