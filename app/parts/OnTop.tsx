import { Button, Popover, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { say } from '../../main/domain/language/index.ts'
import { trpc } from '../data/trpc.ts'
import { Chip, Chips } from './Chip.tsx'
import { money } from './money.ts'
import pieces from './pieces.module.css'

/** What is sold beside the treatments, and what is taken off the whole, as it is being typed. */
export interface OnTopValue {
  extraKeys: readonly string[]
  discount: { percent: string; reason: string }
}

interface Props {
  value: OnTopValue
  change(part: Partial<OnTopValue>): void
  currency: string
  /** Where it opens where there is room on both sides. */
  position: 'top-start' | 'bottom-start'
  /** Said under the reason. */
  about?: string
  /** Which of several, to who has it read. */
  label?: string
}

/** Extras and one discount with its reason. */
export function OnTop({ value, change, currency, position, about, label }: Props) {
  const extras = useQuery(trpc.money.rules.queryOptions()).data?.extras ?? []
  const { discount, extraKeys } = value
  const put = (part: Partial<OnTopValue['discount']>) => change({ discount: { ...discount, ...part } })
  return (
    <Popover position={position} shadow="md" width={340}>
      <Popover.Target>
        <Button variant="default" size="compact-sm" aria-label={label}>
          {say('Extras and discount')}
        </Button>
      </Popover.Target>
      <Popover.Dropdown>
        <div className={pieces.form}>
          {extras.length > 0 && (
            <Chips legend={say('Extras')}>
              {extras.map(extra => (
                <Chip
                  key={extra.key}
                  type="checkbox"
                  label={extra.name}
                  about={money(extra.priceMinor, currency)}
                  checked={extraKeys.includes(extra.key)}
                  onChange={event =>
                    change({
                      extraKeys: event.currentTarget.checked
                        ? [...extraKeys, extra.key]
                        : extraKeys.filter(key => key !== extra.key),
                    })
                  }
                />
              ))}
            </Chips>
          )}
          <TextInput
            label={say('Discount, percent')}
            inputMode="decimal"
            value={discount.percent}
            maxLength={6}
            onChange={event => put({ percent: event.currentTarget.value })}
          />
          <TextInput
            label={say('Why')}
            description={about}
            value={discount.reason}
            maxLength={160}
            onChange={event => put({ reason: event.currentTarget.value })}
          />
        </div>
      </Popover.Dropdown>
    </Popover>
  )
}
