import { Button, CopyButton, Group, SegmentedControl, Stack, Textarea } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { JobView } from '../../../main/api/views.ts'
import { hasMovedSince, type SaidTimes } from '../../../main/domain/job/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { mailHref } from '../../parts/mailHref.ts'
import pieces from '../../parts/pieces.module.css'
import { toldWords } from '../../parts/toldWords.ts'
import { useJobAct } from './useJobAct.ts'

type Kind = keyof typeof toldWords

/** What the customer is to be told as the job stands, to be copied or read out, and what they were told. */
export function Told({ job }: { job: JobView }) {
  const view = useQuery(trpc.jobs.told.queryOptions({ id: job.id })).data
  const [chosen, setChosen] = useState<Kind | null>(null)
  const [typed, setTyped] = useState<{ text: string; says: SaidTimes } | null>(null)
  const tell = useJobAct(trpc.jobs.tell.mutationOptions(), () => setTyped(null))
  // What the outbox is given goes out by its own clock too; asked at once, nobody waits a minute for it.
  const run = useJobAct(trpc.reminders.send.mutationOptions())
  const send = useJobAct(trpc.jobs.sendWords.mutationOptions(), () => {
    setTyped(null)
    run.mutate()
  })
  const again = useJobAct(trpc.jobs.sendWordsAgain.mutationOptions(), () => run.mutate())
  if (!view) return null
  const draft = view.drafts.find(each => each.kind === chosen) ?? view.drafts[0]
  if (!draft && view.said.length === 0) return null
  const text = typed?.text ?? draft?.text ?? ''
  const save = (channel: 'call' | 'email') =>
    draft && tell.mutate({ id: job.id, kind: draft.kind, channel, text })
  return (
    <Card title={say('Tell {name}', { name: job.customer.name })}>
      {draft && (
        <Stack gap="xs" mb="xs">
          <SegmentedControl
            w="fit-content"
            maw="100%"
            aria-label={say('What about')}
            data={view.drafts.map(({ kind }) => ({ value: kind, label: toldWords[kind] }))}
            value={draft.kind}
            onChange={kind => {
              setChosen(kind)
              setTyped(null)
            }}
          />
          <Textarea
            label={say('What to say')}
            value={text}
            maxLength={4_000}
            autosize
            minRows={4}
            onChange={event => setTyped({ text: event.currentTarget.value, says: typed?.says ?? draft.says })}
          />
          {typed && hasMovedSince(typed.says, job) && (
            <Group gap="sm" role="status">
              <span className={pieces.late}>
                {say('⚑ The times have moved since you began to write: look them over.')}
              </span>
              <Button size="compact-sm" variant="default" onClick={() => setTyped(null)}>
                {say('Draft it anew')}
              </Button>
            </Group>
          )}
          <Group gap="sm">
            <CopyButton value={text}>
              {({ copied, copy }) => (
                <Button size="compact-sm" variant="default" onClick={copy}>
                  {copied ? say('Copied ✓') : say('Copy the text')}
                </Button>
              )}
            </CopyButton>
            {view.to && (
              <Button
                size="compact-sm"
                variant="default"
                disabled={send.isPending}
                onClick={() => send.mutate({ id: job.id, ...draft, text })}
              >
                {say('Send by e-mail')}
              </Button>
            )}
            {view.to && (
              <Button
                size="compact-sm"
                variant="default"
                component="a"
                href={mailHref({ to: view.to, subject: draft.subject, text })}
              >
                {say('Open as e-mail')}
              </Button>
            )}
            <Button
              size="compact-sm"
              variant="default"
              disabled={tell.isPending}
              onClick={() => save('call')}
            >
              {say('Said by phone')}
            </Button>
            <Button
              size="compact-sm"
              variant="default"
              disabled={tell.isPending}
              onClick={() => save('email')}
            >
              {say('Written')}
            </Button>
          </Group>
        </Stack>
      )}
      {view.said.length > 0 && (
        <ul className={`${pieces.bare} ${pieces.lines}`} aria-label={say('What was said')}>
          {view.said.map(({ id, version, kind, channel, text, when, who, outcome, again: tries }) => (
            <li key={id}>
              {when} · {who} · {toldWords[kind]} ·{' '}
              {outcome ?? (channel === 'call' ? say('by phone') : say('in writing'))}
              {tries && (
                <Button
                  size="compact-sm"
                  variant="default"
                  disabled={again.isPending}
                  onClick={() => again.mutate({ id, version })}
                >
                  {say('Send again')}
                </Button>
              )}
              <pre className={pieces.quoted}>{text}</pre>
            </li>
          ))}
        </ul>
      )}
    </Card>
  )
}
