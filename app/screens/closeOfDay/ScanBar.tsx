import { TextInput } from '@mantine/core'
import { IconBarcode } from '@tabler/icons-react'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import pieces from '../../parts/pieces.module.css'

interface Props {
  busy: boolean
  onCode(code: string): void
}

/** Says that a scanner is heard, and takes a code typed by hand where there is none. */
export function ScanBar({ busy, onCode }: Props) {
  const [text, setText] = useState('')
  return (
    <form
      className={pieces.unprinted}
      data-scan
      style={{ width: '21rem' }}
      aria-label={say('Scan')}
      onSubmit={event => {
        event.preventDefault()
        if (text.trim()) onCode(text.trim())
        setText('')
      }}
    >
      <TextInput
        label={say('Scan a bottle anywhere, or type its code')}
        placeholder={say('digits under the bars, or the bottle’s number')}
        leftSection={<IconBarcode size="1.125rem" aria-hidden="true" />}
        value={text}
        disabled={busy}
        onChange={event => setText(event.currentTarget.value)}
      />
    </form>
  )
}
