import { useQuery } from '@tanstack/react-query'
import { localeNow, say, withinSentence } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { fullWords } from '../../parts/time.ts'
import { kindChoices } from './words.ts'

/** What was taken in, each to be taken out again as a whole. */
export function TakenLists() {
  const { zone } = useShop()
  const taken = useQuery(trpc.imports.taken.queryOptions()).data
  const undoing = useSaving(trpc.imports.undo.mutationOptions())
  if (!taken) return null
  return (
    <Card
      title={say('Taken in so far')}
      empty={
        taken.length === 0 &&
        say('No list yet: each that is taken in stands here, and can be taken out again as one.')
      }
    >
      <ul className={pieces.list}>
        {taken.map(({ id, kind, fileName, at, who, added, undoneAt }) => (
          <li key={id}>
            <span className={pieces.grow}>
              {fileName}: {withinSentence(kindChoices.find(each => each.value === kind)?.label ?? '')},{' '}
              {say('{added, plural, one {1 row} other {{added2} rows}}', {
                added,
                added2: added.toLocaleString(localeNow()),
              })}
              <small>
                {fullWords(at, zone)}, {who}
                {undoneAt !== null && say(', taken out {undoneAt}', { undoneAt: fullWords(undoneAt, zone) })}
              </small>
            </span>
            {undoneAt === null && (
              <RowButton does={say('Take it out again')} of={fileName} onClick={() => undoing.save({ id })} />
            )}
          </li>
        ))}
      </ul>
      <Refused of={undoing.error} />
    </Card>
  )
}
