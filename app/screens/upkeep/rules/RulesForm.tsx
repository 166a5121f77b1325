import { Checkbox, Radio, TextInput } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { ReminderSettingsView } from '../../../../main/api/views.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { ChoiceChips } from '../../../parts/ChoiceChips.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput, WallInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { weekdayChoices } from '../../../parts/weekHours.ts'
import { VisitTreatments } from './VisitTreatments.tsx'

/** When owners may be written to, how often, and what is proposed to them. */
export function RulesForm({ rules }: { rules: ReminderSettingsView }) {
  const { version, ...saved } = rules
  const form = useForm({
    saved,
    version,
    saving: trpc.reminders.saveSettings.mutationOptions(),
    send: (value, version) => ({ ...value, version }),
  })
  const { value, change, faults } = form
  const number = (name: NumberRule, label: string, unit?: string) => (
    <DecimalInput label={label} {...(unit && { unit })} most={3_660} whole {...form.field(name)} />
  )
  const share = (name: 'level' | 'roomShare', label: string) => (
    <DecimalInput
      label={label}
      unit="%"
      most={100}
      value={Math.round(value[name] * 1_000) / 10}
      onChange={percent => change({ [name]: percent / 100 })}
      error={faults.at(name)}
    />
  )
  return (
    <Card title="How owners are reminded">
      <Form form={form} label="How owners are reminded" save="Save the rules">
        <div className={pieces.fields}>
          <WallInput label="Not before" description="by the owner’s clock" {...form.field('fromMin')} />
          <WallInput label="Not after" description="by the owner’s clock" {...form.field('toMin')} />
          <div className={pieces.whole}>
            <ChoiceChips
              label="Never on"
              choices={weekdayChoices}
              value={value.closedWeekdays.map(String)}
              onChange={days => change({ closedWeekdays: days.map(Number) })}
              error={faults.under('closedWeekdays')}
            />
          </div>
          <TextInput
            className={pieces.whole}
            label="Never on these dates"
            description="As 2026-12-25 2026-12-26"
            value={value.closedDates.join(' ')}
            onChange={event =>
              change({ closedDates: event.currentTarget.value.split(/[\s,]+/).filter(Boolean) })
            }
            error={faults.under('closedDates')}
          />
          <Checkbox
            className={pieces.whole}
            label="Nor on dates on which the shop is closed by exception"
            {...form.tick('closedWithShop')}
          />
          {number('dailyLimit', 'At most a day')}
          {number('gapDays', 'Days between two to one owner', 'd')}
          {number('maxTries', 'Tries for one visit')}
          {number('againDays', 'Tried again without an answer after', 'd')}
          {number('laterDays', 'Asked again after “later”', 'd')}
          {number('leadDays', 'Written before it is due by', 'd')}
          {number('holdDays', 'Proposed times are held for', 'd')}
          {number('checkUpDays', 'Check-up after a coating', 'd')}
          {share('roomShare', 'Of the free hours, upkeep may fill')}
          {share('level', 'Renew while there still work')}
          <TextInput
            label="Language"
            description="of owners who have none on file"
            {...form.field('language')}
          />
          <TextInput
            label="“No more” is mailed to"
            description="empty: the address letters come from"
            type="email"
            {...form.field('stopAddress')}
          />
        </div>
        <VisitTreatments
          treatments={value.treatments}
          onChange={treatments => change({ treatments })}
          error={faults.under('treatments')}
        />
        <Radio.Group
          label="Where the program was cut off before the mail server answered"
          description="Nobody can know then whether the message arrived; one of the two has to be chosen."
          value={value.crashRisk}
          onChange={risk => change({ crashRisk: risk as ReminderSettingsView['crashRisk'] })}
          error={faults.at('crashRisk')}
        >
          <Radio value="again" mt={6} label="Send it again: none is lost, but that one may arrive twice" />
          <Radio value="ask" mt={6} label="Ask the desk: none arrives twice, but that one may be lost" />
        </Radio.Group>
        <Checkbox
          label="Write, approve and send by itself"
          description="Off unless you switch it on. The rules above hold all the same, and nobody reads the words before they go."
          {...form.tick('automatic')}
        />
        <p className={pieces.soft}>
          The mail server is entered under{' '}
          <Link to="/shelf/$section" params={{ section: 'rules' }}>
            Shelf, rules and mail
          </Link>
          : orders and reminders leave by the same one.
        </p>
      </Form>
    </Card>
  )
}

type NumberRule =
  | 'dailyLimit'
  | 'gapDays'
  | 'maxTries'
  | 'againDays'
  | 'laterDays'
  | 'leadDays'
  | 'holdDays'
  | 'checkUpDays'
