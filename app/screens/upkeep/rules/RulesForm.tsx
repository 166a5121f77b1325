import { Checkbox, Radio, TextInput } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { ReminderSettingsView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { ChoiceChips } from '../../../parts/ChoiceChips.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput, WallInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { Say } from '../../../parts/Say.tsx'
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
    <Card title={say('How owners are reminded')}>
      <Form form={form} label={say('How owners are reminded')} save={say('Save the rules')}>
        <div className={pieces.fields}>
          <WallInput
            label={say('Not before')}
            description={say('by the owner’s clock')}
            {...form.field('fromMin')}
          />
          <WallInput
            label={say('Not after')}
            description={say('by the owner’s clock')}
            {...form.field('toMin')}
          />
          <div className={pieces.whole}>
            <ChoiceChips
              label={say('Never on')}
              choices={weekdayChoices()}
              value={value.closedWeekdays.map(String)}
              onChange={days => change({ closedWeekdays: days.map(Number) })}
              error={faults.under('closedWeekdays')}
            />
          </div>
          <TextInput
            className={pieces.whole}
            label={say('Never on these dates')}
            description={say('As 2026-12-25 2026-12-26')}
            value={value.closedDates.join(' ')}
            onChange={event =>
              change({ closedDates: event.currentTarget.value.split(/[\s,]+/).filter(Boolean) })
            }
            error={faults.under('closedDates')}
          />
          <Checkbox
            className={pieces.whole}
            label={say('Nor on dates on which the shop is closed by exception')}
            {...form.tick('closedWithShop')}
          />
          {number('dailyLimit', say('At most a day'))}
          {number('gapDays', say('Days between two to one owner'), say('d||days'))}
          {number('maxTries', say('Tries for one visit'))}
          {number('againDays', say('Tried again without an answer after'), say('d||days'))}
          {number('laterDays', say('Asked again after “later”'), say('d||days'))}
          {number('leadDays', say('Written before it is due by'), say('d||days'))}
          {number('holdDays', say('Proposed times are held for'), say('d||days'))}
          {number('checkUpDays', say('Check-up after a coating'), say('d||days'))}
          {share('roomShare', say('Of the free hours, upkeep may fill'))}
          {share('level', say('Renew while there still work'))}
          <TextInput
            label={say('Language')}
            description={say('of owners who have none on file')}
            {...form.field('language')}
          />
          <TextInput
            label={say('“No more” is mailed to')}
            description={say('empty: the address letters come from')}
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
          label={say('Where the program was cut off before the mail server answered')}
          description={say(
            'Nobody can know then whether the message arrived; one of the two has to be chosen.',
          )}
          value={value.crashRisk}
          onChange={risk => change({ crashRisk: risk as ReminderSettingsView['crashRisk'] })}
          error={faults.at('crashRisk')}
        >
          <Radio
            value="again"
            mt={6}
            label={say('Send it again: none is lost, but that one may arrive twice')}
          />
          <Radio
            value="ask"
            mt={6}
            label={say('Ask the desk: none arrives twice, but that one may be lost')}
          />
        </Radio.Group>
        <Checkbox
          label={say('Write, approve and send by itself')}
          description={say(
            'Off unless you switch it on. The rules above hold all the same, and nobody reads the words before they go.',
          )}
          {...form.tick('automatic')}
        />
        <p className={pieces.soft}>
          <Say
            text="The mail server is entered under {link}: orders and reminders leave by the same one."
            values={{
              link: (
                <Link to="/shelf/$section" params={{ section: 'rules' }}>
                  {say('Shelf, rules and mail')}
                </Link>
              ),
            }}
          />
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
