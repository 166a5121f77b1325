import { Alert, Button, Checkbox, CopyButton, Group, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { FeedView } from '../../../../main/api/views.ts'
import { dateOf } from '../../../../main/domain/calendar/index.ts'
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
      <ScreenTitle title="Calendar feeds" />
      <Refused of={error} />
      <div className={pieces.two}>
        <NewFeed onLink={setLink} />
        <Card title="In use">
          {link !== null && <Link link={link} onHide={() => setLink(null)} />}
          {feeds && (
            <Table
              rows={feeds}
              keyOf={feed => feed.id}
              empty="None yet. A feed shows bay bookings and upkeep visits in a calendar program on a telephone or
              another computer that reaches this one; nothing can be changed through it."
              columns={[
                {
                  head: 'Feed',
                  cell: feed => feed.name,
                  small: feed => `since ${fullDateWords(dateOf(feed.createdAt, zone))}`,
                },
                {
                  head: 'Tells',
                  cell: ({ details }) => (details ? 'names and plates too' : 'times and bays only'),
                },
                { head: 'End', cell: feed => <EndFeed feed={feed} /> },
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
    <Alert variant="outline" color="orange" title="The secret link" role="status" mb="sm">
      <p>
        It is shown this once and kept nowhere: whoever has it can read the feed. Copy it into the calendar
        program now.
      </p>
      {reach && <p>{reach}</p>}
      <TextInput
        aria-label="The secret link"
        readOnly
        value={link}
        onFocus={event => event.target.select()}
      />
      <Group mt="sm" gap="sm">
        <CopyButton value={link}>
          {({ copied, copy }) => (
            <Button size="compact-md" onClick={copy}>
              {copied ? '✓ Copied' : 'Copy it'}
            </Button>
          )}
        </CopyButton>
        <Button size="compact-md" variant="default" onClick={onHide}>
          Hide it
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
    <Card title="A new feed">
      <Form form={form} label="A new feed" save="Make a secret link">
        <TextInput label="For whom" placeholder="the owner’s telephone" {...form.field('name')} />
        <Checkbox
          label="Tell names and plates too"
          description="Left out otherwise: a calendar is easily seen over a shoulder, or shared on."
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
        aria-label={`End it: ${name}`}
        onClick={() => saving.save({ id })}
      >
        End it
      </Button>
      <Refused of={saving.error} />
    </>
  )
}
