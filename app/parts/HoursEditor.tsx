import { Button, Checkbox, Text } from '@mantine/core'
import type { OpeningHours } from '../../main/domain/calendar/index.ts'
import { say } from '../../main/domain/language/index.ts'
import type { Faults } from './faults.ts'
import { HoursAxis, HoursBar } from './HoursBar.tsx'
import styles from './HoursEditor.module.css'
import { WallSpans } from './WallSpans.tsx'
import { copyDay, hoursOf, weekdays } from './weekHours.ts'

interface Props {
  label: string
  weekly: OpeningHours[]
  onChange(weekly: OpeningHours[]): void
  faults: Faults
  /** The field's name in the input that is saved. */
  field?: string
}

/** The openings of a week: a row a day, as a bar on one axis whose ends are dragged, and beside it in figures. */
export function HoursEditor({ label, weekly, onChange, faults, field = 'weekly' }: Props) {
  return (
    <fieldset className={styles.week}>
      <legend>{label}</legend>
      <div className={styles.day}>
        <span />
        <HoursAxis />
      </div>
      {weekdays().map(({ weekday, name }) => {
        const day = hoursOf(weekly, weekday)
        const put = (index: number, hours: OpeningHours | null) =>
          onChange(weekly.flatMap((each, i) => (i === index ? (hours ? [hours] : []) : [each])))
        const open = () => {
          const model = weekly.filter(each => each.weekday === (weekly[0]?.weekday ?? 1))
          const hours = model.length > 0 ? model : [{ from: 480, to: 1080 }]
          onChange([...weekly, ...hours.map(each => ({ ...each, weekday }))])
        }
        return (
          <div key={weekday} className={styles.day}>
            <Checkbox
              label={name}
              checked={day.length > 0}
              onChange={event =>
                event.currentTarget.checked
                  ? open()
                  : onChange(weekly.filter(each => each.weekday !== weekday))
              }
            />
            {day.length > 0 ? (
              <>
                <HoursBar
                  name={name}
                  spans={day}
                  onChange={(i, span) => put(day[i]!.index, { weekday, ...span })}
                />
                <WallSpans
                  name={name}
                  spans={day}
                  onChange={(i, span) => put(day[i]!.index, { weekday, from: span.from, to: span.to })}
                  onAdd={span => onChange([...weekly, { weekday, ...span }])}
                  onRemove={i => put(day[i]!.index, null)}
                  errorAt={(i, end) => faults.at(`${field}.${day[i]!.index}.${end}`)}
                />
              </>
            ) : (
              <Text c="dimmed" size="sm" className={styles.closed}>
                {say('closed')}
              </Text>
            )}
            {weekday === 1 && day.length > 0 && (
              <Button
                variant="subtle"
                size="compact-sm"
                className={styles.copy}
                onClick={() => onChange(copyDay(weekly, 1, [2, 3, 4, 5]))}
              >
                {say('Same until Friday')}
              </Button>
            )}
          </div>
        )
      })}
      {faults.at(field) && (
        <Text c="var(--mantine-color-error)" size="sm" role="alert">
          {faults.at(field)}
        </Text>
      )}
    </fieldset>
  )
}
