import { Button, Group, TextInput } from '@mantine/core'
import { useState } from 'react'
import { say } from '../../../../main/domain/language/index.ts'

/** Adds a language to a template, beginning with the words shown. */
export function AddLanguage({ languages, onAdd }: { languages: string[]; onAdd(tag: string): void }) {
  const [tag, setTag] = useState('')
  const [error, setError] = useState<string | null>(null)
  const add = () => {
    const known = canonical(tag)
    if (known === null) return setError(say('Write a language tag such as de or fr-CH.'))
    if (languages.includes(known)) return setError(say('{known} is there already.', { known }))
    setTag('')
    setError(null)
    onAdd(known)
  }
  return (
    <Group gap={6} align="start" wrap="nowrap">
      <TextInput
        aria-label={say('Another language')}
        placeholder={say('fr')}
        w="6rem"
        value={tag}
        onChange={event => setTag(event.currentTarget.value)}
        onKeyDown={event => {
          if (event.key !== 'Enter') return
          event.preventDefault()
          add()
        }}
        error={error}
      />
      <Button variant="default" onClick={add} disabled={tag.trim() === ''}>
        {say('Add this language')}
      </Button>
    </Group>
  )
}

/** The tag as it is written properly; null where it is none. */
function canonical(tag: string): string | null {
  try {
    return Intl.getCanonicalLocales(tag.trim())[0] ?? null
  } catch {
    return null
  }
}
