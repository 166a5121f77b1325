import { Button, Group, PasswordInput, Switch, Text, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useAct } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { CopiesWarnings } from '../../parts/copies/CopiesWarnings.tsx'
import { RestoreCopy } from '../../parts/copies/RestoreCopy.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { Heading } from './Heading.tsx'

/** Copies of the whole shop: how they stand, where they go, and the way back from one. */
export function BackupsSection() {
  const { zone } = useShop()
  const standing = useQuery({ ...trpc.backups.standing.queryOptions(), refetchInterval: 60_000 }).data
  const settings = useQuery(trpc.backups.settings.queryOptions()).data
  const make = useAct(trpc.backups.make.mutationOptions())
  return (
    <>
      <Heading title={say('Backups')}>
        {say(
          'A copy of everything is made every hour while Lustrum runs: one an hour is kept for a day, one a day for a month, one a month for ten years.',
        )}
      </Heading>
      <section className={pieces.card} aria-label={say('How the copies stand')}>
        <Text fw={600} role="status">
          {standing?.line ?? ''}
        </Text>
        {standing?.drill && <Text>{standing.drill}</Text>}
        <CopiesWarnings />
        <Group mt="sm">
          <Button variant="default" loading={make.busy} onClick={() => make.run()}>
            {say('Make a copy now')}
          </Button>
        </Group>
        <Refused of={make.error} />
      </section>
      {settings && <WhereForm saved={settings} />}
      <Card title={say('Restore a copy')}>
        <RestoreCopy zone={zone} />
      </Card>
    </>
  )
}

interface Saved {
  place: string | null
  locked: boolean
  version: number
}

/** Where the copies go besides, and whether they are locked. */
function WhereForm({ saved: { place, locked, version } }: { saved: Saved }) {
  const [sameDisk, setSameDisk] = useState(false)
  const form = useForm({
    saved: { place, locked, passphrase: '' },
    version,
    saving: trpc.backups.save.mutationOptions(),
    send: (value, version) => ({
      place: value.place,
      version,
      ...(value.locked ? value.passphrase !== '' && { passphrase: value.passphrase } : { passphrase: null }),
    }),
    done: saved => setSameDisk(saved.sameDisk),
  })
  return (
    <div className={pieces.card}>
      <Form form={form} label={say('Where copies go')}>
        <TextInput
          label={say('Second place')}
          description={say(
            'A folder on another disk, in a synced folder or on the network; this computer’s disk may be the thing that fails',
          )}
          placeholder={say('none')}
          maw={640}
          {...form.optional('place')}
        />
        {sameDisk && (
          <Text c="var(--late)" role="status">
            {say('This folder lies on the same disk as the shop’s data: if that disk fails, both are gone.')}
          </Text>
        )}
        <Switch label={say('Lock the copies with a passphrase')} {...form.tick('locked')} />
        {form.value.locked && (
          <>
            <PasswordInput
              label={locked ? say('New passphrase') : say('Passphrase')}
              description={locked ? say('Left empty, it stays as it is') : say('At least 12 characters')}
              maw={400}
              {...form.field('passphrase')}
            />
            <Text className={pieces.soft}>
              {say(
                'Write it down and keep it away from this computer: without it nobody can open these copies. Copies made before keep the passphrase they were made with.',
              )}
            </Text>
          </>
        )}
      </Form>
    </div>
  )
}
