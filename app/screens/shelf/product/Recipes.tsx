import { Button } from '@mantine/core'
import type { LearningView, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { useEditing } from '../../../data/editing.ts'
import { useSaving } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { amountText } from '../../../parts/shelf/amounts.ts'
import { labelOf, sizeChoices, stageChoices } from '../../../parts/shopWords.ts'
import styles from '../Shelf.module.css'
import { RecipeForm } from './RecipeForm.tsx'

/** What each step should draw of the product, and what steps really drew. */
export function Recipes({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  return (
    <div className={styles.two}>
      <section className={styles.card} aria-label="Recipe">
        <h2>Recipe</h2>
        <RecipeList product={product} unit={unit} />
      </section>
      <div className={styles.card}>
        <h2>
          Real use <small>a spill or a slip of the pen does not count</small>
        </h2>
        {product.learning.length === 0 ? (
          <p className={styles.soft}>
            No step has been confirmed yet. Once a few have, what they drew stands here beside the recipe, by
            size class and by who did it.
          </p>
        ) : (
          product.learning.map(each => (
            <Learned
              key={`${each.stage} ${each.stepName} ${each.sizeClass}`}
              learning={each}
              productId={product.id}
              unit={unit}
            />
          ))
        )}
      </div>
    </div>
  )
}

function RecipeList({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  const { editing, edit, close } = useEditing()
  const keyOf = (recipe: { treatmentId: string; position: number }) =>
    `${recipe.treatmentId} ${recipe.position}`
  return (
    <>
      {product.recipes.length === 0 && (
        <p className={styles.soft}>
          No treatment draws it yet. Say which step does, and how much by size of car; booked jobs then count.
        </p>
      )}
      {product.recipes.map(recipe =>
        editing === keyOf(recipe) ? (
          <RecipeForm key={keyOf(recipe)} product={product} unit={unit} recipe={recipe} onClose={close} />
        ) : (
          <div key={keyOf(recipe)}>
            <h3>
              {recipe.treatmentName}: {recipe.stepName}{' '}
              <small>{labelOf(stageChoices, recipe.stage as never).toLowerCase()}</small>
            </h3>
            <table className={styles.table}>
              <tbody>
                <tr>
                  {sizeChoices.map(size => (
                    <td key={size.value}>
                      {amountText(recipe.bySize[size.value].amount, unit)}
                      {recipe.bySize[size.value].spread > 0 &&
                        ` ± ${amountText(recipe.bySize[size.value].spread, unit)}`}
                      <small>{size.label.toLowerCase()}</small>
                    </td>
                  ))}
                  <td>
                    <Button
                      variant="subtle"
                      size="compact-xs"
                      aria-label={`Change the recipe of ${recipe.stepName}`}
                      onClick={edit(keyOf(recipe))}
                    >
                      Change
                    </Button>
                  </td>
                </tr>
              </tbody>
            </table>
          </div>
        ),
      )}
      {editing === 'new' ? (
        <RecipeForm product={product} unit={unit} recipe={null} onClose={close} />
      ) : (
        <Button variant="default" size="xs" mt="sm" onClick={edit('new')}>
          Another step draws it
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
  const { stage, stepName, sizeClass, suggestion } = learning
  return (
    <div>
      <h3>
        {stepName} <small>{labelOf(sizeChoices, sizeClass).toLowerCase()}</small>
      </h3>
      <p className={styles.soft}>{learning.words}</p>
      <dl>
        <dt>Recipe</dt>
        <dd>
          {learning.recipe
            ? `${amountText(learning.recipe.amount, unit)} ± ${amountText(learning.recipe.spread, unit)}`
            : 'none'}
        </dd>
        <dt>Really</dt>
        <dd>
          {amountText(learning.typical, unit)} ± {amountText(learning.spread, unit)} over {learning.steps}{' '}
          {learning.steps === 1 ? 'step' : 'steps'}
          {learning.outliers > 0 && `, ${learning.outliers} out of line set aside`}
        </dd>
        {learning.byCrew.map(person => (
          <Person key={person.crewId} name={person.name} words={person.words} />
        ))}
      </dl>
      {suggestion && (
        <>
          <p>{suggestion.words}</p>
          <Button
            size="xs"
            loading={using.busy}
            aria-label={`Use this as the recipe: ${stepName}, ${sizeClass}`}
            onClick={() =>
              using.save({
                stage: stage as never,
                stepName,
                productId,
                sizeClass,
                amount: suggestion.amount,
                spread: suggestion.spread,
              })
            }
          >
            Use this as the recipe
          </Button>
        </>
      )}
      {using.error !== null && (
        <p role="alert" className={styles.late}>
          {faultOf(using.error).message}
        </p>
      )}
    </div>
  )
}

function Person({ name, words }: { name: string; words: string }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>{words}</dd>
    </>
  )
}
