import { Button, Group, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { ForbiddenView, IntakeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullWords } from '../../parts/time.ts'
import styles from './Intake.module.css'

/** What the paint forbids of what was sold, each with its ways out; and what was decided so far. */
export function Forbidden({ record }: { record: IntakeView }) {
  const { forbidden, decisions, open, jobId } = record
  if (forbidden.length === 0 && decisions.length === 0) return null
  return (
    <Card
      title={say('What the paint forbids')}
      about={say('common practice; the paint’s and the product’s maker decide')}
    >
      {open &&
        forbidden.map(each => (
          <OneRule key={`${each.treatment} ${each.rule} ${each.panels}`} jobId={jobId} rule={each} />
        ))}
      {!open && forbidden.map(each => <p key={`${each.treatment} ${each.rule}`}>{each.words}</p>)}
      {decisions.length > 0 && (
        <ul className={pieces.plain}>
          {decisions.map(({ treatment, rule, panels, decision, reason, at, who }) => (
            <li key={`${at} ${rule} ${panels} ${treatment}`}>
              {say('{decision}: {panels} of {treatment} ({rule})', {
                decision: decision === 'do it' ? say('⚑ Done anyway') : say('✓ Left out'),
                panels: panels.map(panel => say(panel)).join(', '),
                treatment,
                rule,
              })}
              {reason && say(', because: {reason}', { reason })}{' '}
              <small className={pieces.soft}>
                {who}, {fullWords(at, record.zone)}
              </small>
            </li>
          ))}
        </ul>
      )}
    </Card>
  )
}

function OneRule({ jobId, rule }: { jobId: string; rule: ForbiddenView }) {
  const [reason, setReason] = useState('')
  const deciding = useSaving(trpc.intake.decide.mutationOptions())
  const faults = faultsOf(deciding.error)
  const decide = (decision: 'leave out' | 'do it') =>
    deciding.save({
      jobId,
      treatment: rule.treatment,
      rule: rule.rule,
      panels: [...rule.panels],
      decision,
      reason,
    })
  const error = faults.at('reason')
  return (
    <fieldset className={styles.rule} aria-label={`${rule.treatment}: ${rule.rule}`}>
      <p>
        <b className={pieces.late}>⚑ {rule.treatment}</b>, {rule.step}. {rule.words}
        <br />
        <small className={pieces.soft}>
          {say('Left out, the job takes, draws and costs less; the promise stays.')}
        </small>
      </p>
      <Group align="flex-end">
        <Button onClick={() => decide('leave out')} loading={deciding.busy} disabled={rule.on.length === 0}>
          {say('Leave {panels} out', {
            panels:
              rule.panels.length === 1
                ? say(rule.panels[0] ?? '')
                : say('{panels} panels', { panels: rule.panels.length }),
          })}
        </Button>
        {rule.mayOverride && (
          <>
            <TextInput
              label={say('Why do it anyway')}
              maxLength={500}
              value={reason}
              error={error}
              onChange={event => setReason(event.currentTarget.value)}
            />
            <Button variant="default" onClick={() => decide('do it')} loading={deciding.busy}>
              {say('Do it anyway')}
            </Button>
          </>
        )}
      </Group>
      {rule.on.length === 0 && (
        <p className={pieces.soft}>
          {say('Nothing would be left of it: book another treatment for this car.')}
        </p>
      )}
      <Refused words={faults.rest()} />
    </fieldset>
  )
}
