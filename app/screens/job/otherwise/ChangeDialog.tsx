import { Button, Checkbox, Group, Modal, SegmentedControl, SimpleGrid, Stack, Text } from '@mantine/core'
import { DatePickerInput } from '@mantine/dates'
import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { ChangeOffersView, JobView, PlaceView } from '../../../../main/api/views.ts'
import { dateOf } from '../../../../main/domain/calendar/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { scopeWords } from '../../../../main/domain/shop/index.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { choicesFrom } from '../../../parts/shopWords.ts'
import { conditions, sizes } from '../../../parts/sizeAndPaint.ts'
import { longWords, pickedDate } from '../../../parts/time.ts'
import { lanesOf, type OfferKind } from '../../book/call.ts'
import { ShelfPart } from '../../book/ShelfPart.tsx'
import { useJobAct } from '../useJobAct.ts'

/** Another day, other work, or both: the places there are, with before and after; the old place stays until one is taken. */
export function ChangeDialog({ job, onClose }: { job: JobView; onClose(): void }) {
  const treatments = useQuery(trpc.treatments.list.queryOptions()).data ?? []
  const [work, setWork] = useState({
    treatmentIds: job.treatmentIds,
    condition: job.condition,
    scope: job.scope,
    sizeClass: job.vehicle.sizeClass,
  })
  const [askedDate, setAskedDate] = useState<string | null>(null)
  const offers = useQuery({
    ...trpc.booking.changeOffers.queryOptions({
      id: job.id,
      ...work,
      ...(askedDate !== null && { askedDate, notBefore: askedDate }),
    }),
    enabled: work.treatmentIds.length > 0,
    placeholderData: keepPreviousData,
  })
  const change = useJobAct(trpc.booking.change.mutationOptions(), onClose)
  const flip = (id: string, on: boolean) =>
    setWork({
      ...work,
      treatmentIds: on ? [...work.treatmentIds, id] : work.treatmentIds.filter(other => other !== id),
    })
  return (
    <Modal opened onClose={onClose} size="lg" title={say('Another day, or other work')}>
      <Stack>
        <fieldset className={pieces.bare}>
          <legend>{say('What is done')}</legend>
          <SimpleGrid cols={2} spacing="xs" verticalSpacing="xs">
            {treatments.map(({ id, name }) => (
              <Checkbox
                key={id}
                label={name}
                checked={work.treatmentIds.includes(id)}
                onChange={event => flip(id, event.currentTarget.checked)}
              />
            ))}
          </SimpleGrid>
        </fieldset>
        <Group gap="xs">
          <SegmentedControl
            aria-label={say('Vehicle size')}
            data={[...sizes]}
            value={work.sizeClass}
            onChange={sizeClass => setWork({ ...work, sizeClass })}
          />
          <SegmentedControl
            aria-label={say('Condition of the paint')}
            data={[...conditions]}
            value={work.condition}
            onChange={condition => setWork({ ...work, condition })}
          />
          <SegmentedControl
            aria-label={say('How much of the paint')}
            data={choicesFrom(scopeWords)}
            value={work.scope}
            onChange={scope => setWork({ ...work, scope })}
          />
        </Group>
        <DatePickerInput
          label={say('From this day on')}
          placeholder={say('As soon as possible')}
          clearable
          minDate={dateOf(job.nowAt, job.zone)}
          value={askedDate}
          valueFormat={pickedDate()}
          onChange={setAskedDate}
        />
        {offers.error && <Text c="red">{faultOf(offers.error).message}</Text>}
        {offers.data && !offers.error && (
          <Places
            view={offers.data}
            busy={change.isPending || offers.isFetching}
            onTake={plan => change.mutate({ id: job.id, version: job.version, ...work, plan })}
          />
        )}
        <Group>
          <Button variant="default" onClick={onClose}>
            {say('Leave it as it is')}
          </Button>
        </Group>
      </Stack>
    </Modal>
  )
}

const kindWords: Readonly<Record<OfferKind, () => string>> = {
  soonest: () => say('Soonest home'),
  leastBlocked: () => say('Fewest blocked hours'),
  askedDay: () => say('Closest to the day asked for'),
}

/** Before, and each place that may come after; what waits for goods beside the place that holds if they come in time. */
function Places({
  view,
  busy,
  onTake,
}: {
  view: ChangeOffersView
  busy: boolean
  onTake(plan: PlaceView['plan']): void
}) {
  const when = (at: number) => longWords(at, view.zone, view.nowAt)
  const { before, currency } = view
  const lanes = lanesOf(view, kind => kindWords[kind]())
  return (
    <Stack gap="xs">
      <Text className={pieces.soft}>
        {say('Now: comes {dropOffAt}, promised {promisedAt}, {price}', {
          dropOffAt: when(before.dropOffAt),
          promisedAt: when(before.promisedAt),
          price: money(before.priceMinor, currency),
        })}
      </Text>
      {lanes.map(({ key, names, offer, ifHere }, i) => {
        const name = names.join(' · ')
        return (
          <Group key={key} justify="space-between" wrap="nowrap">
            <Stack gap="xs">
              <span>
                <b>{name}</b>:{' '}
                {say('comes {dropOffAt}, promised {promisedAt}, {price}', {
                  dropOffAt: when(offer.dropOffAt),
                  promisedAt: when(offer.handoverAt),
                  price: money(view.priceMinor, currency),
                })}
                {ifHere && <Text className={pieces.soft}>⚑ {ifHere}</Text>}
              </span>
              {ifHere === null && <ShelfPart shelf={offer.shelf} />}
            </Stack>
            <Button
              style={{ flexShrink: 0 }}
              variant={i === 0 ? 'filled' : 'default'}
              disabled={busy}
              aria-label={say('Take {name}', { name: ifHere ? `${name}, ${ifHere}` : name })}
              onClick={() => onTake(offer.plan)}
            >
              {say('Take it||a place')}
            </Button>
          </Group>
        )
      })}
      {lanes.length === 0 && !view.soonest.feasible && <Text>{view.soonest.reasons.join(' ')}</Text>}
      {view.notes.map(note => (
        <Text key={note} className={pieces.soft}>
          {note}
        </Text>
      ))}
    </Stack>
  )
}
