import { Alert } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import type { BatchView } from '../../../../main/api/views.ts'
import pieces from '../../../parts/pieces.module.css'

/** How the outbox stands, and what the desk should know of it. */
export function Outbox({ batch }: { batch: BatchView }) {
  const { sentToday, dailyLimit, automatic, stopped, possiblyTwice, riskWords } = batch
  return (
    <>
      {stopped !== null && (
        <Alert color="red" variant="outline" title="Mail cannot go out" role="alert">
          {stopped}{' '}
          <Link to="/shelf/$section" params={{ section: 'rules' }}>
            The mail settings
          </Link>
        </Alert>
      )}
      {possiblyTwice > 0 && (
        <Alert color="orange" variant="outline" title="May have arrived twice">
          {possiblyTwice === 1 ? '1 message was' : `${possiblyTwice} messages were`} cut off before the mail
          server answered: nobody can know whether it had arrived by then. If an owner asks about a second
          copy, this is why.
        </Alert>
      )}
      <p className={pieces.soft}>
        {sentToday} of at most {dailyLimit} sent today ·{' '}
        {automatic ? 'goes out by itself' : 'nothing goes out before it is approved'} · {riskWords}
      </p>
    </>
  )
}
