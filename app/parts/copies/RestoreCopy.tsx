import { Button, Group, PasswordInput, Text, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CopiesFound, CopyLook, CopyView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useAct, useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Refused } from '../form/Refused.tsx'
import pieces from '../pieces.module.css'
import { CopyList } from './CopyList.tsx'

const nothing: CopiesFound = { copies: [], unread: [] }

/**
 * From a copy back to a shop: found here or in a folder, looked into beside what is here, and made ready for the next
 * start. Nothing is replaced before that start.
 */
export function RestoreCopy({ zone }: { zone: string }) {
  const here = useQuery(trpc.backups.list.queryOptions()).data
  const [path, setPath] = useState('')
  const [elsewhere, setElsewhere] = useState<CopiesFound>(nothing)
  const [chosen, setChosen] = useState<CopyView | null>(null)
  const find = useSaving(trpc.backups.find.mutationOptions(), { onSaved: setElsewhere })
  const leave = useAct(trpc.backups.cancelRestore.mutationOptions())
  if (here?.ready)
    return (
      <div>
        <Text role="status" fw={600}>
          {here.ready.shopName
            ? say(
                'The copy of {shop} is ready. Close Lustrum and start it again: it then opens with that copy.',
                { shop: here.ready.shopName },
              )
            : say(
                'The copy of the shop is ready. Close Lustrum and start it again: it then opens with that copy.',
              )}
        </Text>
        {here.ready.photosMissing !== undefined && (
          <Text>
            {say('{count} of its photos cannot be found: they are in the folder “photos” beside the copy.', {
              count: here.ready.photosMissing,
            })}
          </Text>
        )}
        <Button variant="default" mt="sm" loading={leave.busy} onClick={() => leave.run()}>
          {say('Do not restore it')}
        </Button>
        <Refused of={leave.error} />
      </div>
    )
  return (
    <div className={pieces.form}>
      <Group align="end" gap="sm">
        <TextInput
          label={say('Where are the copies?')}
          description={say('A folder, or one copy, with its whole path')}
          value={path}
          onChange={event => setPath(event.currentTarget.value)}
          maw={560}
          style={{ flex: 1 }}
        />
        <Button variant="default" loading={find.busy} onClick={() => find.save({ path })}>
          {say('Look there')}
        </Button>
      </Group>
      <Refused of={find.error} />
      <CopyList
        label={say('Copies found there')}
        found={elsewhere}
        zone={zone}
        chosen={chosen}
        onChoose={setChosen}
      />
      <CopyList
        label={say('Copies on this computer')}
        found={here ?? nothing}
        zone={zone}
        chosen={chosen}
        onChoose={setChosen}
      />
      {chosen && <ChosenCopy key={chosen.path} copy={chosen} />}
    </div>
  )
}

/** The copy chosen: looked into, then restored. */
function ChosenCopy({ copy }: { copy: CopyView }) {
  const [passphrase, setPassphrase] = useState('')
  const [look, setLook] = useState<CopyLook | null>(null)
  const looking = useSaving(trpc.backups.look.mutationOptions(), { onSaved: setLook })
  const restoring = useSaving(trpc.backups.restore.mutationOptions())
  const input = { path: copy.path, passphrase: passphrase === '' ? null : passphrase }
  return (
    <div className={pieces.form}>
      {copy.locked && (
        <PasswordInput
          label={say('Passphrase of this copy')}
          description={say('Left empty, the one of this computer is tried')}
          value={passphrase}
          onChange={event => setPassphrase(event.currentTarget.value)}
          maw={400}
        />
      )}
      {look?.lines.map(line => (
        <Text key={line}>{line}</Text>
      ))}
      <Refused of={looking.error} />
      <Refused of={restoring.error} />
      <Group>
        {look === null ? (
          <Button variant="default" loading={looking.busy} onClick={() => looking.save(input)}>
            {say('See what it holds')}
          </Button>
        ) : (
          <Button loading={restoring.busy} onClick={() => restoring.save(input)}>
            {say('Restore this copy')}
          </Button>
        )}
      </Group>
    </div>
  )
}
