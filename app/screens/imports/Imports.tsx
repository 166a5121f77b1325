import { Button, FileButton, Group, Select } from '@mantine/core'
import { useState } from 'react'
import type { OpenedView } from '../../../main/api/views.ts'
import type { ImportKind } from '../../../main/domain/imports/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import { ReadFile } from './ReadFile.tsx'
import { TakenLists } from './TakenLists.tsx'
import { kindChoices } from './words.ts'

/** Lists from elsewhere: chosen, looked through, taken in, and taken out again whole. */
export function Imports() {
  const [kind, setKind] = useState<ImportKind>('customers')
  const [opened, setOpened] = useState<OpenedView | null>(null)
  const opening = useSaving(trpc.imports.open.mutationOptions())
  const open = async (file: File | null) => {
    if (!file) return
    setOpened(null)
    opening.save({ kind, fileName: file.name, base64: await base64Of(file) }, setOpened)
  }
  return (
    <div className={pieces.column}>
      <ScreenTitle title={say('Bring your own data')} />
      <Card title={say('Which list')}>
        <Group align="flex-end" gap="sm">
          <Select
            label={say('It holds')}
            data={kindChoices}
            value={kind}
            allowDeselect={false}
            onChange={next => {
              if (next) setKind(next)
              setOpened(null)
            }}
          />
          <FileButton
            onChange={open}
            accept=".csv,.txt,.tsv,.xlsx,text/csv"
            inputProps={{ 'aria-label': say('List') }}
          >
            {props => (
              <Button {...props} variant={opened ? 'default' : 'filled'} loading={opening.busy}>
                {say('Choose a CSV or XLSX file')}
              </Button>
            )}
          </FileButton>
        </Group>
        <p className={pieces.soft}>
          {say('{about} Nothing is written before you have seen what would be.', {
            about: kindChoices.find(each => each.value === kind)?.about ?? '',
          })}
        </p>
        <Refused of={opening.error} />
      </Card>
      {opened && <ReadFile key={opened.fileId} opened={opened} onDone={() => setOpened(null)} />}
      <TakenLists />
    </div>
  )
}

/** The bytes of a file as the api takes them. */
async function base64Of(file: File): Promise<string> {
  const url = await new Promise<string>((resolve, reject) => {
    const reader = new FileReader()
    reader.onload = () => resolve(String(reader.result))
    reader.onerror = () => reject(reader.error)
    reader.readAsDataURL(file)
  })
  return url.slice(url.indexOf(',') + 1)
}
