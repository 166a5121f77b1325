import { Alert, Button, Checkbox, CopyButton, Group, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { FeedView } from '../../../../main/api/views.ts'
import { dateOf } from '../../../../main/domain/calendar/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { faultsOf } from '../../../parts/faults.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { reachWords } from '../../../parts/reachWords.ts'
import { fullDateWords } from '../../../parts/time.ts'
import styles from '../Upkeep.module.css'

/** Links a calendar program can subscribe to: bookings and visits, to read only. */
export function Feeds() {
  const query = useQuery(trpc.feeds.list.queryOptions())
  const [link, setLink] = useState<string | null>(null)
  return (
    <>
      <div className={styles.heading}>
        <h1>Calendar feeds</h1>
      </div>
      {query.error && <Alert color="red">{faultOf(query.error).message}</Alert>}
      <div className={styles.two}>
        <NewFeed onLink={setLink} />
        <section className={styles.card} aria-labelledby="feeds">
          <h2 id="feeds">In use</h2>
          {link !== null && <Link link={link} onHide={() => setLink(null)} />}
          {query.data?.length === 0 && (
            <p className={styles.soft}>
              None yet. A feed shows bay bookings and upkeep visits in a calendar program on a telephone or
              another computer that reaches this one; nothing can be changed through it.
            </p>
          )}
          {query.data && query.data.length > 0 && (
            <table className={styles.table}>
              <thead>
                <tr>
                  <th scope="col">Feed</th>
                  <th scope="col">Tells</th>
                  <th scope="col">End</th>
                </tr>
              </thead>
              <tbody>
                {query.data.map(feed => (
                  <Feed key={feed.id} feed={feed} />
                ))}
              </tbody>
            </table>
          )}
        </section>
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
    <section className={styles.card} aria-labelledby="new-feed">
      <h2 id="new-feed">A new feed</h2>
      <Form form={form} label="A new feed" save="Make a secret link">
        <TextInput label="For whom" placeholder="the owner’s telephone" {...form.field('name')} />
        <Checkbox
          label="Tell names and plates too"
          description="Left out otherwise: a calendar is easily seen over a shoulder, or shared on."
          {...form.tick('details')}
        />
      </Form>
    </section>
  )
}

function Feed({ feed }: { feed: FeedView }) {
  const { zone } = useShop()
  const saving = useSaving(trpc.feeds.revoke.mutationOptions())
  const words = faultsOf(saving.error).rest()
  return (
    <tr>
      <td>
        {feed.name}
        <small>since {fullDateWords(dateOf(feed.createdAt, zone))}</small>
      </td>
      <td>{feed.details ? 'names and plates too' : 'times and bays only'}</td>
      <td>
        <Button
          variant="default"
          size="compact-sm"
          loading={saving.busy}
          aria-label={`End it: ${feed.name}`}
          onClick={() => saving.save({ id: feed.id })}
        >
          End it
        </Button>
        {words && <small className={styles.late}>{words}</small>}
      </td>
    </tr>
  )
}
