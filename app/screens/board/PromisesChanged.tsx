import { Alert, Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'

/** What a version reckons otherwise than the one the shop was begun with. */
const changes = [
  say(
    'The window for a next layer or a topper now closes sooner in a warm bay and is not kept open by a cold one, unless the data sheet has a row for it. Enter such rows on the product.',
  ),
  say(
    'Windows hold for every panel, the first and the last, so there is less time between two long layers. Treatments whose layers are too long for their window are refused when they are booked.',
  ),
  say(
    'A topper needs its time from the coating’s data sheet, and the coating names the toppers its maker allows. Figures of common practice for toppers are gone; a topper without a time cannot be booked over a fresh coat until it is entered.',
  ),
  say(
    'Where a data sheet gives no humidity, 40 to 65 % now stand in (common practice) instead of 20 to 80 %. Humidity is watched through the early cure and told; it moves no time.',
  ),
  say(
    'What was wiped is coated within 45 minutes (common practice) and no night lies between; where that is missed, the job offers to add a wipe. Set your own limit on each step of a treatment.',
  ),
  say(
    'A layer is levelled and checked under the lamp panel by panel while it is wet: such a step right behind a coat is now part of it, where it used to wait until the coat was safe to touch.',
  ),
  say(
    'A coated car stays until it may get wet, unless somebody has confirmed covered transport and storage by name: when booking, or on the job.',
  ),
  say(
    'A treatment is laid out over the panels it may touch, for a front end or bonnet and roof too: correction, wipes and coats take that part of their time, draw and price; washing and drying stay whole (common practice).',
  ),
  say(
    'Work on paint after a wash wants a dry car: where nothing dries it, the offer says so. Put a step of the stage "Dry and mask" into such treatments.',
  ),
  say('Two coatings of one family in one booking are refused.'),
] as const

/** Shown once to a shop whose promises were made by an earlier version; what is booked keeps its time. */
export function PromisesChanged() {
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  const read = useSaving(trpc.shop.promisesRead.mutationOptions())
  if (!shop?.promisesChanged) return null
  return (
    <Alert title={say('What changed in your promises')} mb="sm" className={pieces.unprinted}>
      <ul>
        {changes.map(words => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p>
        {say(
          'Booked jobs keep the time they were promised. Once such a car is here and would leave before it may get wet, it shows as late: confirm its cover, or give a new promise.',
        )}
      </p>
      <Button size="xs" loading={read.busy} onClick={() => read.save()}>
        {say('Read, do not show again')}
      </Button>
    </Alert>
  )
}
