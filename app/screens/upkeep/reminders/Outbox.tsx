import { Alert } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { BatchView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import pieces from '../../../parts/pieces.module.css'

/** How the outbox stands, and what the desk should know of it. */
export function Outbox({ batch }: { batch: BatchView }) {
  const { sentToday, dailyLimit, automatic, stopped, possiblyTwice, riskWords } = batch
  return (
    <>
      {stopped !== null && (
        <Alert color="red" variant="outline" title={say('Mail cannot go out')} role="alert">
          {stopped}{' '}
          <Link to="/shelf/$section" params={{ section: 'rules' }}>
            {say('The mail settings')}
          </Link>
        </Alert>
      )}
      {possiblyTwice > 0 && (
        <Alert color="orange" variant="outline" title={say('May have arrived twice')}>
          {say(
            '{possiblyTwice, plural, one {1 message was} other {{possiblyTwice} messages were}} cut off before the mail server answered: nobody can know whether it had arrived by then. If an owner asks about a second copy, this is why.',
            { possiblyTwice },
          )}
        </Alert>
      )}
      <p className={pieces.soft}>
        {say('{sentToday} of at most {dailyLimit} sent today · {automatic} · {riskWords}', {
          sentToday,
          dailyLimit,
          automatic: automatic ? say('goes out by itself') : say('nothing goes out before it is approved'),
          riskWords,
        })}
      </p>
    </>
  )
}
