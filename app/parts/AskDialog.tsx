import { Modal, Stack, Text, Textarea } from '@mantine/core'
import { useState } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { DialogKeys } from './DialogKeys.tsx'

interface Props {
  title: string
  words: string
  label: string
  action: string
  busy: boolean
  onClose(): void
  onSay(text: string): void
}

/** Asks for a reason before something that is not undone lightly. */
export function AskDialog({ title, words, label, action, busy, onClose, onSay }: Props) {
  const [text, setText] = useState('')
  const [missing, setMissing] = useState(false)
  const answer = () => (text.trim() ? onSay(text.trim()) : setMissing(true))
  return (
    <Modal opened onClose={onClose} title={title}>
      <Stack>
        <Text>{words}</Text>
        <Textarea
          data-autofocus
          label={label}
          value={text}
          error={missing && !text.trim() ? say('Write a short reason.') : undefined}
          onChange={event => setText(event.currentTarget.value)}
          autosize
          minRows={2}
        />
        <DialogKeys act={action} busy={busy} onAct={answer} onClose={onClose} />
      </Stack>
    </Modal>
  )
}
