import { Button, Checkbox, Group, Select, TextInput } from '@mantine/core'
import { IconMinus, IconPlus } from '@tabler/icons-react'
import type { DrawToConfirm } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { fieldsOf } from '../../data/fields.ts'
import type { Faults } from '../../parts/faults.ts'
import { IconAct } from '../../parts/IconAct.tsx'
import pieces from '../../parts/pieces.module.css'
import { AmountInput, OptionalAmountInput } from '../../parts/shelf/AmountInput.tsx'
import { HazardMark } from '../../parts/shelf/HazardMark.tsx'
import styles from './CloseOfDay.module.css'
import { type DrawDraft, outOfTurn, tapped } from './drawDraft.ts'

interface Props {
  draw: DrawToConfirm
  draft: DrawDraft
  change(draft: DrawDraft): void
  /** `draws.2`: the part of a refusal that belongs here. */
  field: string
  faults: Faults
  /** The shelf holds less by the ledger: more may have been found than was counted. */
  beyondStock: boolean
  /** A second batch of it would go onto this car. */
  mixes: boolean
}

/** What a step drew of one product: taken as proposed, corrected by a tap or two, or weighed. */
export function DrawRow({ draw, draft, change, field, faults, beyondStock, mixes }: Props) {
  const { productName, unit, lots } = draw
  const set = (part: Partial<DrawDraft>) => change({ ...draft, ...part })
  const own = fieldsOf(draft, set, name => faults.at(`${field}.${name}`))
  const bottles = lots.map(lot => ({ value: lot.id, label: lot.words }))
  return (
    <div className={styles.draw}>
      <div>
        <b>{productName}</b>
        <HazardMark productId={draw.productId} />
        <small>
          {say('by the recipe {expected}', { expected: amountText(draw.expected, unit) })}
          {draw.spread > 0 && ` ± ${amountText(draw.spread, unit)}`}
        </small>
      </div>
      <Select
        aria-label={say('Bottle of {productName}', { productName })}
        size="sm"
        title={bottles.find(({ value }) => value === draft.lotId)?.label}
        data={bottles}
        placeholder={draw.lotWords}
        disabled={bottles.length === 0}
        {...own.choice('lotId')}
      />
      {draft.weighing ? (
        <OptionalAmountInput
          of="g"
          aria-label={say('Weight of the bottle of {productName}', { productName })}
          placeholder={say('bottle with its cap')}
          size="sm"
          autoFocus
          {...own.field('grossG')}
          error={faults.under(`${field}.weighed`)}
        />
      ) : (
        <Group gap={4} wrap="nowrap" align="flex-start">
          <IconAct
            label={say('Less {productName}', { productName })}
            icon={IconMinus}
            variant="default"
            size={36}
            onClick={() => change(tapped(draft, draw, -1))}
          />
          <AmountInput
            of={unit}
            aria-label={say('Used of {productName}', { productName })}
            size="sm"
            flex={1}
            {...own.field('amount')}
          />
          <IconAct
            label={say('More {productName}', { productName })}
            icon={IconPlus}
            variant="default"
            size={36}
            onClick={() => change(tapped(draft, draw, 1))}
          />
        </Group>
      )}
      {draw.canWeigh ? (
        <Button
          variant="subtle"
          size="sm"
          aria-label={
            draft.weighing
              ? say('Do not weigh {productName}', { productName })
              : say('Weigh the bottle of {productName}', { productName })
          }
          onClick={() => set({ weighing: !draft.weighing, grossG: null })}
        >
          {draft.weighing ? say('Do not weigh') : say('Weigh')}
        </Button>
      ) : (
        <small className={pieces.soft}>{unit === 'piece' ? '' : draw.weighWords}</small>
      )}
      {outOfTurn(draft, draw) && (
        <TextInput
          className={styles.whole}
          label={say('Why this bottle of {productName} and not the one next in line?', { productName })}
          size="sm"
          {...own.field('reason')}
        />
      )}
      {(mixes || draft.mixing) && (
        <TextInput
          className={styles.whole}
          label={say('Why two batches of {productName} on one car?', { productName })}
          size="sm"
          styles={{ error: { whiteSpace: 'pre-line' } }}
          {...own.field('mixing')}
        />
      )}
      {beyondStock && (
        <Checkbox
          className={styles.whole}
          label={say('More {productName} was found than the ledger held: record the rest as found', {
            productName,
          })}
          {...own.tick('foundMore')}
        />
      )}
    </div>
  )
}
