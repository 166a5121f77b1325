import { SegmentedControl } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { say } from '../../../main/domain/language/index.ts'
import { scopeWords } from '../../../main/domain/shop/index.ts'
import { coatedTwice } from '../../../main/domain/treatment/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Chip, Chips } from '../../parts/Chip.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { choicesFrom } from '../../parts/shopWords.ts'
import { conditions, sizes } from '../../parts/sizeAndPaint.ts'
import styles from './Book.module.css'
import type { Call } from './call.ts'

interface Props {
  call: Call
  currency: string
  change(part: Partial<Call>): void
}

/** What a treatment is for, by what it lays on the car. */
const groups = [say('Wash and paint'), say('Coating'), say('Topper')] as const

function groupOf(steps: readonly { stage: string }[]): (typeof groups)[number] {
  if (steps.some(step => step.stage === 'coat')) return say('Coating')
  return steps.some(step => step.stage === 'topper') ? say('Topper') : say('Wash and paint')
}

/** What is sold, for which size and which paint. */
export function WhatPicker({ call, currency, change }: Props) {
  const treatments = useQuery(trpc.treatments.list.queryOptions()).data ?? []
  const products = useQuery(trpc.products.list.queryOptions()).data ?? []
  const byId = new Map(products.map(product => [product.id, product]))
  const chosen = treatments.filter(treatment => call.treatmentIds.includes(treatment.id))
  const flip = (id: string, on: boolean) =>
    change({
      treatmentIds: on ? [...call.treatmentIds, id] : call.treatmentIds.filter(other => other !== id),
    })
  return (
    <>
      {groups.map(group => {
        const own = treatments.filter(treatment => groupOf(treatment.steps) === group)
        if (own.length === 0) return null
        return (
          <Chips key={group} legend={group}>
            {own.map(treatment => {
              const ticked = call.treatmentIds.includes(treatment.id)
              const twice = ticked ? null : coatedTwice([...chosen, treatment], byId)
              const minor = treatment.prices[call.sizeClass]
              const price = minor > 0 ? money(minor, currency) : say('No price yet')
              return (
                <Chip
                  key={treatment.id}
                  type="checkbox"
                  label={treatment.name}
                  about={twice?.words ?? `${price}. ${treatment.summary}`}
                  checked={ticked}
                  disabled={twice !== null}
                  onChange={event => flip(treatment.id, event.currentTarget.checked)}
                />
              )
            })}
          </Chips>
        )
      })}
      {treatments.length === 0 && (
        <p className={pieces.soft}>
          {say('No treatments yet: add what the shop sells under Settings, Treatments.')}
        </p>
      )}
      <div className={styles.row}>
        <SegmentedControl
          aria-label={say('Vehicle size')}
          size="sm"
          data={[...sizes]}
          value={call.sizeClass}
          onChange={sizeClass => change({ sizeClass })}
        />
        <SegmentedControl
          aria-label={say('Condition of the paint')}
          size="sm"
          data={[...conditions]}
          value={call.condition}
          onChange={condition => change({ condition })}
        />
        <SegmentedControl
          aria-label={say('How much of the paint')}
          size="sm"
          data={choicesFrom(scopeWords)}
          value={call.scope}
          onChange={scope => change({ scope })}
        />
      </div>
    </>
  )
}
