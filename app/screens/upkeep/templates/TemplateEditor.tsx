import { Button, Group, SegmentedControl, Select, Textarea, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import { useRef, useState } from 'react'
import type { Channel, TemplatesView, TemplateView } from '../../../../main/api/views.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import styles from '../Upkeep.module.css'
import { channelChoices, channelWords } from '../words.ts'
import { AddLanguage } from './AddLanguage.tsx'
import { Preview } from './Preview.tsx'

interface Props {
  /** Undefined: a new one. */
  template: TemplateView | undefined
  fields: TemplatesView['fields']
  lawNote: string
}

const blank = { subject: '', body: '' }

/** One template: its words in each language, beside what a real car makes of them. */
export function TemplateEditor({ template, fields, lawNote }: Props) {
  const navigate = useNavigate()
  const version = template?.version ?? 0
  const draft = useDraft(
    {
      name: template?.name ?? '',
      channel: template?.channel ?? ('email' as Channel),
      words: template?.words ?? ({ en: blank } as Record<string, typeof blank>),
    },
    version,
  )
  const { value, change } = draft
  const languages = Object.keys(value.words)
  const [asked, setLanguage] = useState(languages[0]!)
  const language = languages.includes(asked) ? asked : languages[0]!
  const words = value.words[language] ?? blank
  const body = useRef<HTMLTextAreaElement>(null)
  const saving = useSaving(trpc.templates.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const write = (part: Partial<typeof blank>) =>
    change({ words: { ...value.words, [language]: { ...words, ...part } } })
  const put = (name: string) => {
    const at = body.current?.selectionStart ?? words.body.length
    write({ body: `${words.body.slice(0, at)}{{${name}}}${words.body.slice(at)}` })
    body.current?.focus()
  }
  const save = () =>
    saving.save({ ...(template && { id: template.id }), ...value, version }, ({ id }) => {
      draft.settle()
      if (!template) void navigate({ to: '/upkeep/$section/$id', params: { section: 'templates', id } })
    })
  return (
    <div className={styles.two}>
      <section className={styles.card} aria-label="The template">
        <Form error={saving.error} label="The template" onSave={save}>
          <div className={styles.fields}>
            <TextInput
              label="Name"
              value={value.name}
              onChange={event => change({ name: event.currentTarget.value })}
              error={faults.at('name')}
            />
            {template ? (
              <TextInput label="Channel" value={channelWords[value.channel]} readOnly />
            ) : (
              <Select
                label="Channel"
                data={channelChoices}
                allowDeselect={false}
                value={value.channel}
                onChange={channel => channel && change({ channel })}
                error={faults.at('channel')}
              />
            )}
          </div>
          <Group gap="sm">
            <SegmentedControl
              aria-label="Language"
              data={languages}
              value={language}
              onChange={setLanguage}
              size="sm"
            />
            <AddLanguage
              languages={languages}
              onAdd={tag => {
                change({ words: { ...value.words, [tag]: words } })
                setLanguage(tag)
              }}
            />
          </Group>
          <TextInput
            label={value.channel === 'email' ? 'Subject' : 'Heading'}
            value={words.subject}
            onChange={event => write({ subject: event.currentTarget.value })}
            error={faults.at(`words.${language}.subject`)}
          />
          <Textarea
            ref={body}
            label={value.channel === 'call' ? 'What to say' : 'Text'}
            autosize
            minRows={8}
            maxRows={20}
            value={words.body}
            onChange={event => write({ body: event.currentTarget.value })}
            error={faults.at(`words.${language}.body`)}
          />
          <details>
            <summary>Fields that are filled in for each car</summary>
            <Group gap={6} mt={6}>
              {fields.map(field => (
                <Button
                  key={field.name}
                  variant="default"
                  size="compact-sm"
                  title={field.meaning}
                  aria-label={`Put in ${field.meaning}`}
                  onClick={() => put(field.name)}
                >
                  {`{{${field.name}}}`}
                </Button>
              ))}
            </Group>
          </details>
          <p className={styles.law}>{lawNote}</p>
          <FormFoot
            faults={faults}
            busy={saving.busy}
            dirty={draft.dirty}
            outdated={draft.outdated}
            label="Save the template"
            onReload={() => {
              saving.reset()
              draft.reload()
            }}
          />
        </Form>
      </section>
      <Preview words={words} language={language} channel={value.channel} />
    </div>
  )
}
