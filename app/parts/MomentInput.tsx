import { Group } from '@mantine/core'
import { atWall, dateOf, wallMinuteOf } from '../../main/domain/calendar/index.ts'
import { say } from '../../main/domain/language/index.ts'
import { useShop } from '../data/shop.ts'
import { DateField } from './DateField.tsx'
import { WallInput } from './inputs.tsx'

interface Props {
  label: string
  /** Epoch minutes. */
  value: number
  onChange(at: number): void
  error?: string | undefined
}

/** A date and a time of day on the shop's clock. */
export function MomentInput({ label, value, onChange, error }: Props) {
  const { zone } = useShop()
  const date = dateOf(value, zone)
  const wall = wallMinuteOf(value, zone)
  return (
    <Group gap="xs" align="flex-start" wrap="nowrap">
      <DateField
        label={label}
        value={date}
        error={error}
        onChange={next => onChange(atWall(next, wall, zone))}
        w={170}
      />
      <WallInput
        label={say('{label}, time', { label })}
        value={wall}
        onChange={next => onChange(atWall(date, next, zone))}
        w={110}
      />
    </Group>
  )
}
