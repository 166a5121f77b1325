import { Kbd } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { Spotlight } from '@mantine/spotlight'
import { IconCar, IconChevronRight, IconSearch, IconUser } from '@tabler/icons-react'
import { useQuery } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useEffect, useState } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { showPhone } from '../../main/domain/vehicle/index.ts'
import { useShop } from '../data/shop.ts'
import { trpc } from '../data/trpc.ts'
import { type CommandContext, findCommands } from './commands.ts'
import { markFirstResult, paletteStore } from './palette.ts'
import { statusWords } from './statusWords.ts'
import { fullWords } from './time.ts'

/** Ctrl K: any customer, plate, job or command by a few letters. */
export function FindPalette({ context }: { context: CommandContext }) {
  const shop = useShop()
  const navigate = useNavigate()
  const [text, setText] = useState('')
  const [asked] = useDebouncedValue(text.trim(), 120)
  const customers = useQuery({
    ...trpc.customers.find.queryOptions({ text: asked, limit: 8 }),
    enabled: asked.length >= 2,
    placeholderData: before => before,
  })
  const jobs = useQuery({
    ...trpc.jobs.find.queryOptions({ text: asked }),
    enabled: asked.length >= 1,
    placeholderData: before => before,
  })
  const found = asked.length >= 2 ? (customers.data?.customers ?? []) : []
  const foundJobs = asked.length >= 1 ? (jobs.data?.jobs ?? []).slice(0, 6) : []
  const wanted = findCommands(text)
  const shown = [...found, ...foundJobs].map(({ id }) => id).join()
  useEffect(() => {
    if (shown) markFirstResult()
  }, [shown])
  return (
    <Spotlight.Root
      store={paletteStore}
      query={text}
      onQueryChange={setText}
      shortcut="mod + K"
      tagsToIgnore={[]}
      overlayProps={{ blur: 0, backgroundOpacity: 0.35 }}
      attributes={{ content: { 'aria-label': say('Find') } }}
      scrollable
      maxHeight="min(60vh, 560px)"
    >
      <Spotlight.Search
        placeholder={say('A name, a plate, a phone number, a job, or what you want to do')}
        aria-label={say('Find a customer, plate, job or command')}
        leftSection={<IconSearch size="1.12rem" aria-hidden="true" />}
      />
      <Spotlight.ActionsList>
        {found.length > 0 && (
          <Spotlight.ActionsGroup label={say('Customers')}>
            {found.map(customer => (
              <Spotlight.Action
                key={customer.id}
                label={customer.name}
                description={[
                  ...customer.vehicles.map(car => [car.plate, car.make, car.model].filter(Boolean).join(' ')),
                  customer.phone ? showPhone(customer.phone, shop.country) : '',
                ]
                  .filter(Boolean)
                  .join(' · ')}
                leftSection={<IconUser size="1.12rem" aria-hidden="true" />}
                onClick={() => navigate({ to: '/customers/$id', params: { id: customer.id } })}
              />
            ))}
          </Spotlight.ActionsGroup>
        )}
        {foundJobs.length > 0 && (
          <Spotlight.ActionsGroup label={say('Jobs')}>
            {foundJobs.map(job => (
              <Spotlight.Action
                key={job.id}
                label={say('Job {number}, {plate} {customerName}', {
                  number: job.number,
                  plate: job.plate,
                  customerName: job.customerName,
                })}
                description={say('{statusWords}, {dropOffAt} to {handoverAt}', {
                  statusWords: statusWords[job.status],
                  dropOffAt: fullWords(job.dropOffAt, shop.zone),
                  handoverAt: fullWords(job.handoverAt, shop.zone),
                })}
                leftSection={<IconCar size="1.12rem" aria-hidden="true" />}
                onClick={() => navigate({ to: '/jobs/$id', params: { id: job.id } })}
              />
            ))}
          </Spotlight.ActionsGroup>
        )}
        {wanted.length > 0 && (
          <Spotlight.ActionsGroup label={say('Commands')}>
            {wanted.map(command => (
              <Spotlight.Action
                key={command.name}
                label={command.label}
                leftSection={<IconChevronRight size="1.12rem" aria-hidden="true" />}
                rightSection={
                  command.keys.length > 0 ? <Kbd>{command.keys.join(' ').toUpperCase()}</Kbd> : undefined
                }
                onClick={() => command.run(context)}
              />
            ))}
          </Spotlight.ActionsGroup>
        )}
        {found.length + foundJobs.length + wanted.length === 0 && (
          <Spotlight.Empty>
            {say(
              'Nothing found. Try part of the name, the plate without spaces, or the last digits of the phone.',
            )}
          </Spotlight.Empty>
        )}
      </Spotlight.ActionsList>
    </Spotlight.Root>
  )
}
