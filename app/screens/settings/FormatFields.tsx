import { Select } from '@mantine/core'
import type { ShopView } from '../../../main/api/views.ts'
import { weekdayNames } from '../../../main/domain/calendar/index.ts'
import {
  type ClockHours,
  type DateOrder,
  type Formats,
  say,
  usualFormats,
} from '../../../main/domain/language/index.ts'

type Chosen = Pick<ShopView, 'clockHours' | 'dateOrder' | 'weekBegins'>

interface Props {
  shop: Chosen & Pick<ShopView, 'country' | 'language'>
  change(part: Partial<Chosen>): void
}

const clocks: Record<ClockHours, string> = {
  12: say('12 hours, 5:30 pm'),
  24: say('24 hours, 17:30'),
}

const orders: Record<DateOrder, string> = {
  dayFirst: say('Day first, 14/9'),
  monthFirst: say('Month first, 9/14'),
}

/** Of the days a week begins on somewhere these are all that is asked for; Friday is left to where it is usual. */
const firstDays = [1, 6, 7] as const

/** How the shop writes times, dates and weeks, where not as is usual in its country. */
export function FormatFields({ shop, change }: Props) {
  const usual = usualFormats(`${shop.language}-${shop.country}`)
  const dayName = (weekday: number) => say(weekdayNames[weekday - 1] ?? '')
  const field = (name: keyof Formats, usually: string, choices: [string, string][]) => ({
    data: [
      { value: '', label: say('Usual there: {usually}', { usually }) },
      ...choices.map(([value, label]) => ({ value, label })),
    ],
    value: String(shop[name] ?? ''),
    allowDeselect: false,
  })
  const number = (given: string | null) => (given ? Number(given) : null)
  return (
    <>
      <Select
        label={say('Times')}
        {...field('clockHours', usual.clockHours === 12 ? say('5:30 pm') : '17:30', Object.entries(clocks))}
        onChange={given => change({ clockHours: number(given) as ClockHours | null })}
      />
      <Select
        label={say('Order of day and month')}
        {...field('dateOrder', usual.dateOrder === 'dayFirst' ? say('14/9') : '9/14', Object.entries(orders))}
        onChange={given => change({ dateOrder: (given || null) as DateOrder | null })}
      />
      <Select
        label={say('The week begins on')}
        {...field(
          'weekBegins',
          dayName(usual.weekBegins),
          firstDays.map(day => [String(day), dayName(day)]),
        )}
        onChange={given => change({ weekBegins: number(given) })}
      />
    </>
  )
}
