import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { Finish, QuoteView, SizeClass } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import { nearWords } from '../../../parts/time.ts'
import { Waiting } from '../../../parts/Waiting.tsx'

/** What was signed becomes the booking, at a place that is offered now. */
export function BookIt({ quote }: { quote: QuoteView }) {
  const variant = quote.variants.find(each => each.position === quote.accepted)
  const { data: offers, error } = useQuery({
    ...trpc.booking.offers.queryOptions({
      vehicleId: quote.vehicleId,
      sizeClass: quote.sizeClass as SizeClass,
      finish: quote.finish as Finish,
      condition: quote.condition,
      scope: quote.scope,
      treatmentIds: variant?.treatments.map(each => each.id) ?? [],
    }),
    staleTime: 0,
  })
  const book = useSaving(trpc.money.bookQuote.mutationOptions())
  if (!offers) return <Waiting error={error} words={say('Looking for places')} />
  const when = (at: number) => nearWords(at, offers.zone, offers.nowAt)
  const places = [offers.soonest, offers.leastBlocked].filter(each => each.feasible)
  const once = places.filter(
    (each, i) =>
      places.findIndex(
        other => other.dropOffAt === each.dropOffAt && other.handoverAt === each.handoverAt,
      ) === i,
  )
  return (
    <Card title={say('Book it')} about={say('at the price that was signed')}>
      <Refused of={book.error} />
      {once.length === 0 && <p>{say('There is no place for it; look at the board.')}</p>}
      {once.map((place, i) => (
        <p key={place.dropOffAt}>
          <Button
            variant={i === 0 ? 'filled' : 'default'}
            loading={book.busy}
            onClick={() => book.save({ id: quote.id, version: quote.version, plan: place.plan })}
          >
            {say('Book {dropOffAt}, home {handoverAt}', {
              dropOffAt: when(place.dropOffAt),
              handoverAt: when(place.handoverAt),
            })}
          </Button>
        </p>
      ))}
    </Card>
  )
}
