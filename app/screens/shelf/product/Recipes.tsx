import { Button } from '@mantine/core'
import type { LearningView, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { say, withinSentence } from '../../../../main/domain/language/index.ts'
import { amountText } from '../../../../main/domain/shelf/index.ts'
import { useEditing } from '../../../data/editing.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Fact } from '../../../parts/Facts.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'
import { labelOf, sizeChoices, stageChoices } from '../../../parts/shopWords.ts'
import { Table } from '../../../parts/Table.tsx'
import { RecipeForm } from './RecipeForm.tsx'

/** What each step should draw of the product, and what steps really drew. */
export function Recipes({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  return (
    <div className={pieces.two}>
      <Card title={say('Recipe')}>
        <RecipeList product={product} unit={unit} />
      </Card>
      <Card title={say('Real use')} about={say('spills and typing errors are left out')}>
        {product.learning.length === 0 && (
          <p className={pieces.soft}>
            {say(
              'No step has been confirmed yet. Once a few have, what they drew stands here beside the recipe, by size class and by who did it.',
            )}
          </p>
        )}
        {product.learning.map(each => (
          <Learned
            key={`${each.stage} ${each.stepName} ${each.sizeClass}`}
            learning={each}
            productId={product.id}
            unit={unit}
          />
        ))}
      </Card>
    </div>
  )
}

interface Draw {
  amount: number
  spread: number
}

const drawWords = ({ amount, spread }: Draw, unit: ShelfUnit) =>
  `${amountText(amount, unit)} ± ${amountText(spread, unit)}`

function RecipeList({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  const { editing, edit, close } = useEditing()
  const keyOf = (recipe: { treatmentId: string; position: number }) =>
    `${recipe.treatmentId} ${recipe.position}`
  const form = { product, unit, onClose: close }
  return (
    <>
      {product.recipes.length === 0 && (
        <p className={pieces.soft}>
          {say(
            'No treatment draws it yet. Say which step does, and how much by size of car; booked jobs then count.',
          )}
        </p>
      )}
      {product.recipes.map(recipe =>
        editing === keyOf(recipe) ? (
          <RecipeForm key={keyOf(recipe)} {...form} recipe={recipe} />
        ) : (
          <div key={keyOf(recipe)}>
            <h3>
              {recipe.treatmentName}: {recipe.stepName}{' '}
              <small>{withinSentence(labelOf(stageChoices, recipe.stage as never))}</small>
            </h3>
            <Table
              rows={[recipe]}
              keyOf={keyOf}
              columns={[
                ...sizeChoices.map(({ value, label }) => ({
                  cell: () => (
                    <>
                      {recipe.bySize[value].spread > 0
                        ? drawWords(recipe.bySize[value], unit)
                        : amountText(recipe.bySize[value].amount, unit)}
                      <small>{withinSentence(label)}</small>
                    </>
                  ),
                })),
                {
                  cell: () => (
                    <RowButton
                      does={say('Change')}
                      of={say('the recipe of {stepName}', { stepName: recipe.stepName })}
                      onClick={edit(keyOf(recipe))}
                    />
                  ),
                },
              ]}
            />
          </div>
        ),
      )}
      {editing === 'new' ? (
        <RecipeForm {...form} recipe={null} />
      ) : (
        <Button variant="default" size="xs" mt="sm" onClick={edit('new')}>
          {say('Another step draws it')}
        </Button>
      )}
    </>
  )
}

interface LearnedProps {
  learning: LearningView
  productId: string
  unit: ShelfUnit
}

function Learned({ learning, productId, unit }: LearnedProps) {
  const using = useSaving(trpc.shelf.useAsRecipe.mutationOptions())
  const { stage, stepName, sizeClass, suggestion, steps, outliers } = learning
  const really = drawWords({ amount: learning.typical, spread: learning.spread }, unit)
  const use = ({ amount, spread }: Draw) =>
    using.save({ stage: stage as never, stepName, productId, sizeClass, amount, spread })
  return (
    <div>
      <h3>
        {stepName} <small>{withinSentence(labelOf(sizeChoices, sizeClass))}</small>
      </h3>
      <p className={pieces.soft}>{learning.words}</p>
      <dl>
        <Fact name={say('Recipe')}>
          {learning.recipe ? drawWords(learning.recipe, unit) : say('none||the recipe')}
        </Fact>
        <Fact name={say('Really')}>
          {say('{really} over {steps} {steps, plural, one {step} other {steps}}', { really, steps })}
          {outliers > 0 && say(', {outliers} out of line set aside', { outliers })}
        </Fact>
        {learning.byCrew.map(person => (
          <Fact key={person.crewId} name={person.name}>
            {person.words}
          </Fact>
        ))}
      </dl>
      {suggestion && (
        <>
          <p>{suggestion.words}</p>
          <Button
            size="xs"
            loading={using.busy}
            aria-label={say('Use this as the recipe: {stepName}, {sizeClass}', { stepName, sizeClass })}
            onClick={() => use(suggestion)}
          >
            {say('Use this as the recipe')}
          </Button>
        </>
      )}
      <Refused of={using.error} />
    </div>
  )
}
