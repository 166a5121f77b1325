import { Alert, Button, Checkbox, CopyButton, Group, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { FeedView } from '../../../../main/api/views.ts'
import { dateOf } from '../../../../main/domain/calendar/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { reachWords } from '../../../parts/reachWords.ts'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import { Table } from '../../../parts/Table.tsx'
import { fullDateWords } from '../../../parts/time.ts'

/** Links a calendar program can subscribe to: bookings and visits, to read only. */
export function Feeds() {
  const { zone } = useShop()
  const { data: feeds, error } = useQuery(trpc.feeds.list.queryOptions())
  const [link, setLink] = useState<string | null>(null)
  return (
    <>
      <ScreenTitle title={say('Calendar feeds')} />
      <Refused of={error} />
      <div className={pieces.two}>
        <NewFeed onLink={setLink} />
        <Card title={say('In use')}>
          {link !== null && <Link link={link} onHide={() => setLink(null)} />}
          {feeds && (
            <Table
              rows={feeds}
              keyOf={feed => feed.id}
              empty={say(
                'None yet. A feed shows bay bookings and upkeep visits in a calendar program on a telephone or another computer that reaches this one; nothing can be changed through it.',
              )}
              columns={[
                {
                  head: say('Feed'),
                  cell: feed => feed.name,
                  small: feed =>
                    say('since {createdAt}', { createdAt: fullDateWords(dateOf(feed.createdAt, zone)) }),
                },
                {
                  head: say('Shows'),
                  cell: ({ details }) => (details ? say('names and plates too') : say('times and bays only')),
                },
                { head: say('End||a feed'), cell: feed => <EndFeed feed={feed} /> },
              ]}
            />
          )}
        </Card>
      </div>
    </>
  )
}

/** The secret, shown once. */
function Link({ link, onHide }: { link: string; onHide(): void }) {
  const reach = reachWords(link)
  return (
    <Alert variant="outline" color="orange" title={say('The secret link')} role="status" mb="sm">
      <p>
        {say(
          'It is shown this once and kept nowhere: whoever has it can read the feed. Copy it into the calendar program now.',
        )}
      </p>
      {reach && <p>{reach}</p>}
      <TextInput
        aria-label={say('The secret link')}
        readOnly
        value={link}
        onFocus={event => event.target.select()}
      />
      <Group mt="sm" gap="sm">
        <CopyButton value={link}>
          {({ copied, copy }) => (
            <Button size="compact-md" onClick={copy}>
              {copied ? say('✓ Copied') : say('Copy it')}
            </Button>
          )}
        </CopyButton>
        <Button size="compact-md" variant="default" onClick={onHide}>
          {say('Hide it')}
        </Button>
      </Group>
    </Alert>
  )
}

function NewFeed({ onLink }: { onLink(link: string): void }) {
  const form = useForm({
    saved: { name: '', details: false },
    saving: trpc.feeds.create.mutationOptions(),
    send: value => value,
    done: ({ path }) => onLink(new URL(path, window.location.origin).href),
  })
  return (
    <Card title={say('A new feed')}>
      <Form form={form} label={say('A new feed')} save={say('Make a secret link')}>
        <TextInput
          label={say('For whom')}
          placeholder={say('the owner’s telephone')}
          {...form.field('name')}
        />
        <Checkbox
          label={say('Show names and plates too')}
          description={say('Left out otherwise: a calendar is easily seen over a shoulder, or shared on.')}
          {...form.tick('details')}
        />
      </Form>
    </Card>
  )
}

function EndFeed({ feed: { id, name } }: { feed: FeedView }) {
  const saving = useSaving(trpc.feeds.revoke.mutationOptions())
  return (
    <>
      <Button
        variant="default"
        size="compact-sm"
        loading={saving.busy}
        aria-label={say('End it: {name}', { name })}
        onClick={() => saving.save({ id })}
      >
        {say('End it')}
      </Button>
      <Refused of={saving.error} />
    </>
  )
}
