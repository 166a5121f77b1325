import { Button, FileInput, Group, Textarea } from '@mantine/core'
import { useState } from 'react'
import type { Measured } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Refused } from '../../../parts/form/Refused.tsx'

interface Props {
  unit: 'um' | 'mil'
  readings: Measured['thickness']
  onRead(readings: Measured['thickness']): void
}

/** What the app reads at once; a file cut off there would leave readings out unsaid. */
const mostBytes = 20_000

/** Readings from the gauge's own list: pasted, or from a CSV file. */
export function PasteThickness({ unit, readings, onRead }: Props) {
  const [text, setText] = useState('')
  const [open, setOpen] = useState(false)
  const [tooLarge, setTooLarge] = useState(false)
  const reading = useSaving(trpc.intake.paste.mutationOptions())
  const read = () =>
    reading.save({ text, unit, readings }, ({ readings: more }) => {
      onRead(more)
      setText('')
      setOpen(false)
    })
  if (!open)
    return (
      <Group>
        <Button variant="default" onClick={() => setOpen(true)}>
          {say('Paste or open a list')}
        </Button>
      </Group>
    )
  return (
    <>
      <Textarea
        label={say('A line a panel, such as: Bonnet 118 121 119')}
        aria-label={say('Readings to paste')}
        rows={4}
        maxLength={mostBytes}
        value={text}
        onChange={event => setText(event.currentTarget.value)}
      />
      <FileInput
        label={say('or a CSV file')}
        placeholder={say('choose a file')}
        accept=".csv,.txt,text/csv,text/plain"
        error={
          tooLarge && say('The file is larger than 20 kB: keep the lines of this car in it, or paste them.')
        }
        onChange={async file => {
          setTooLarge((file?.size ?? 0) > mostBytes)
          if (file && file.size <= mostBytes) setText((await file.text()).trim())
        }}
      />
      <Group>
        <Button variant="default" onClick={read} disabled={text.trim() === ''} loading={reading.busy}>
          {say('Read it')}
        </Button>
        <Button variant="subtle" onClick={() => setOpen(false)}>
          {say('Close')}
        </Button>
      </Group>
      <Refused of={reading.error} />
    </>
  )
}
