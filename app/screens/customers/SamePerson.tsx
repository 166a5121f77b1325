import { Button, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { type ReactNode, useState } from 'react'
import type { CustomerView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { AlikeList } from '../../parts/AlikeList.tsx'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { Say } from '../../parts/Say.tsx'
import { fullWords } from '../../parts/time.ts'
import { useAlike } from '../../parts/useAlike.ts'

/** Entries that are likely of the same person, those made one with this, and the way to either. */
export function SamePerson({ customer }: { customer: CustomerView }) {
  const { id, name, phone, email, merges, archivedAt } = customer
  const alike = useAlike({ name, phone: phone ?? '', email: email ?? '', exceptId: id }).filter(
    each => each.archivedAt === null,
  )
  const [looking, setLooking] = useState(false)
  return (
    <Card title={say('The same person twice?')}>
      <Merges merges={merges} />
      {archivedAt === null && (
        <>
          <AlikeList alike={alike} act={other => <Compare id={id} other={other} />} />
          {alike.length === 0 && <p className={pieces.soft}>{say('Nobody else on file looks like them.')}</p>}
          {looking ? (
            <Find id={id} />
          ) : (
            <Button mt="sm" variant="default" onClick={() => setLooking(true)}>
              {say('Compare with somebody')}
            </Button>
          )}
        </>
      )}
    </Card>
  )
}

/** Both sides beside each other, before anything is done. */
function Compare({ id, other }: { id: string; other: { id: string; name: string } }) {
  return (
    <Button
      variant="default"
      size="compact-sm"
      renderRoot={props => (
        <Link to="/customers/$id/merge/$other" params={{ id, other: other.id }} {...props} />
      )}
      aria-label={say('Compare with {name}', { name: other.name })}
    >
      {say('Compare')}
    </Button>
  )
}

function Find({ id }: { id: string }) {
  const [text, setText] = useState('')
  const [asked] = useDebouncedValue(text.trim(), 150)
  const found = useQuery({
    ...trpc.customers.find.queryOptions({ text: asked, limit: 5 }),
    enabled: asked.length >= 2,
  }).data
  const others = asked.length >= 2 ? (found?.customers ?? []).filter(each => each.id !== id) : []
  return (
    <>
      <TextInput
        label={say('Find the other entry')}
        autoFocus
        value={text}
        onChange={event => setText(event.currentTarget.value)}
      />
      <ul className={pieces.list}>
        {others.map(other => (
          <li key={other.id}>
            <span className={pieces.grow}>{other.name}</span>
            <Compare id={id} other={other} />
          </li>
        ))}
      </ul>
    </>
  )
}

function Merges({ merges }: Pick<CustomerView, 'merges'>) {
  const { zone } = useShop()
  const undoing = useSaving(trpc.customers.undoMerge.mutationOptions())
  if (merges.length === 0) return null
  return (
    <>
      <ul className={pieces.list}>
        {merges.map(({ id, at, who, stayed, otherId, otherName }) => (
          <li key={id}>
            <span className={pieces.grow}>
              <MergedWith stayed={stayed}>
                <Link to="/customers/$id" params={{ id: otherId }}>
                  {otherName}
                </Link>
              </MergedWith>
              <small>
                {fullWords(at, zone)}, {who}
              </small>
            </span>
            <RowButton does={say('Separate again')} of={otherName} onClick={() => undoing.save({ id })} />
          </li>
        ))}
      </ul>
      <Refused of={undoing.error} />
    </>
  )
}

function MergedWith({ stayed, children: other }: { stayed: boolean; children: ReactNode }) {
  return stayed ? (
    <Say text="Merged with {other}" values={{ other }} />
  ) : (
    <Say text="Went over to {other}" values={{ other }} />
  )
}
