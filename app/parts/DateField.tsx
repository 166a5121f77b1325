import { ActionIcon, Popover, TextInput, type TextInputProps } from '@mantine/core'
import { DatePicker } from '@mantine/dates'
import { useMediaQuery } from '@mantine/hooks'
import { IconCalendar } from '@tabler/icons-react'
import { type KeyboardEvent, type SyntheticEvent, useRef, useState } from 'react'
import { dateOf, dateText, inShopYears, shopYears } from '../../main/domain/calendar/index.ts'
import { dateOrderNow, say } from '../../main/domain/language/index.ts'
import { useNowAt } from '../data/now.ts'
import { useShop } from '../data/shop.ts'
import { type DateTyped, movedDate, readTyped } from './dateTyped.ts'
import { useEscapeFirst } from './escapeFirst.ts'

type Rest = Omit<TextInputProps, 'value' | 'onChange' | 'error'> & { error?: string | undefined }

interface Props<T> extends Rest {
  /** `YYYY-MM-DD`. */
  value: T
  onChange(date: T): void
}

/** A day of the calendar. */
export function DateField({ value, onChange, ...rest }: Props<string>) {
  return (
    <DayField {...rest} needed value={value || null} onChange={date => date !== null && onChange(date)} />
  )
}

/** The same, or none. */
export function OptionalDateField(props: Props<string | null>) {
  return <DayField {...props} needed={false} />
}

/**
 * A day typed as the shop orders day and month (or year first, which is never taken for anything else), moved a day by
 * the arrows up and down, or picked from a calendar whose weeks begin as the shop's do (Alt and arrow down, or the
 * button). What is typed is read while it is typed, judged when it is left.
 */
function DayField({ value, onChange, needed, error, ...rest }: Props<string | null> & { needed: boolean }) {
  const { zone } = useShop()
  const nowAt = useNowAt()
  /** Where the keys go back to: the field, or its button, so that a tablet's keyboard stays down. */
  const opener = useRef<HTMLElement>(null)
  const [text, setText] = useState<string | null>(null)
  const [left, setLeft] = useState(false)
  const [opened, setOpened] = useState(false)
  const finger = useMediaQuery('(pointer: coarse)')
  const typed: DateTyped = text === null ? { date: value } : readTyped(text, needed, left)
  const bad = 'remedy' in typed
  const take = (date: string | null) => {
    setText(null)
    setLeft(false)
    if (date !== value) onChange(date)
  }
  const leave = () => {
    if (text === null) return
    const whole = readTyped(text, needed, true)
    if ('date' in whole) take(whole.date)
    else setLeft(true)
  }
  const open = ({ currentTarget }: SyntheticEvent<HTMLElement>) => {
    opener.current = currentTarget
    setOpened(true)
  }
  const close = () => {
    setOpened(false)
    // After the calendar's own, which may still be about to take the keys.
    setTimeout(() => opener.current?.focus({ preventScroll: true }))
  }
  useEscapeFirst(opened, close)
  const keys = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === 'Enter') return leave()
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key]
    if (by === undefined || event.ctrlKey || event.metaKey || event.shiftKey) return
    event.preventDefault()
    if (event.altKey) return by < 0 ? open(event) : close()
    const from = 'date' in typed ? typed.date : null
    const moved = movedDate(from, by, nowAt === null ? null : dateOf(nowAt, zone))
    if (moved !== null) take(moved)
  }
  return (
    <TextInput
      autoComplete="off"
      maxLength={40}
      placeholder={dateOrderNow() === 'monthFirst' ? say('MM/DD/YYYY') : say('DD/MM/YYYY')}
      {...rest}
      value={text ?? (value ? dateText(value) : '')}
      error={bad && left ? typed.remedy : error}
      data-unreadable={bad}
      onChange={event => {
        const now = event.currentTarget.value
        setText(now)
        const read = readTyped(now, needed, false)
        if ('remedy' in read) return
        setLeft(false)
        if (read.date !== value) onChange(read.date)
      }}
      onBlur={leave}
      onKeyDown={keys}
      rightSection={
        <Popover
          opened={opened}
          onChange={setOpened}
          position="bottom-end"
          trapFocus
          closeOnEscape={false}
          shadow="md"
          withinPortal
        >
          <Popover.Target>
            <ActionIcon
              variant="subtle"
              color="gray"
              disabled={rest.disabled ?? false}
              aria-label={say('Open the calendar')}
              onClick={event => (opened ? close() : open(event))}
            >
              <IconCalendar size="1rem" aria-hidden="true" />
            </ActionIcon>
          </Popover.Target>
          <Popover.Dropdown>
            <DatePicker
              size={finger ? 'lg' : 'sm'}
              minDate={shopYears.first}
              maxDate={shopYears.last}
              value={value && inShopYears(value) ? value : null}
              defaultDate={value && inShopYears(value) ? value : dateOf(nowAt ?? 0, zone)}
              onChange={date => {
                if (date !== null) take(date)
                close()
              }}
            />
          </Popover.Dropdown>
        </Popover>
      }
    />
  )
}
