import { Button, Group, SegmentedControl, Select, Textarea, TextInput } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import { useRef, useState } from 'react'
import type { Channel, TemplatesView, TemplateView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import pieces from '../../../parts/pieces.module.css'
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
  const form = useForm({
    saved: {
      name: template?.name ?? '',
      channel: template?.channel ?? ('email' as Channel),
      words: template?.words ?? ({ en: blank } as Record<string, typeof blank>),
    },
    version: template?.version,
    saving: trpc.templates.save.mutationOptions(),
    send: (value, version) => ({ ...value, ...(template && { id: template.id }), version }),
    done: ({ id }) => {
      if (!template) void navigate({ to: '/upkeep/$section/$id', params: { section: 'templates', id } })
    },
  })
  const { value, change, faults } = form
  const languages = Object.keys(value.words)
  const [asked, setLanguage] = useState(languages[0]!)
  const language = languages.includes(asked) ? asked : languages[0]!
  const words = value.words[language] ?? blank
  const body = useRef<HTMLTextAreaElement>(null)
  const write = (part: Partial<typeof blank>) =>
    change({ words: { ...value.words, [language]: { ...words, ...part } } })
  const put = (name: string) => {
    const at = body.current?.selectionStart ?? words.body.length
    write({ body: `${words.body.slice(0, at)}{{${name}}}${words.body.slice(at)}` })
    body.current?.focus()
  }
  return (
    <div className={pieces.two}>
      <Card aria-label={say('The template')}>
        <Form form={form} label={say('The template')} save={say('Save the template')}>
          <div className={pieces.fields}>
            <TextInput label={say('Name')} {...form.field('name')} />
            {template ? (
              <TextInput label={say('Channel')} value={channelWords[value.channel]} readOnly />
            ) : (
              <Select label={say('Channel')} data={channelChoices} {...form.choice('channel')} />
            )}
          </div>
          <Group gap="sm">
            <SegmentedControl
              aria-label={say('Language')}
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
            label={value.channel === 'email' ? say('Subject') : say('Heading')}
            value={words.subject}
            onChange={event => write({ subject: event.currentTarget.value })}
            error={faults.at(`words.${language}.subject`)}
          />
          <Textarea
            ref={body}
            label={value.channel === 'call' ? say('What to say') : say('Text')}
            autosize
            minRows={8}
            maxRows={20}
            value={words.body}
            onChange={event => write({ body: event.currentTarget.value })}
            error={faults.at(`words.${language}.body`)}
          />
          <details>
            <summary>{say('Fields that are filled in for each car')}</summary>
            <Group gap={6} mt={6}>
              {fields.map(field => (
                <Button
                  key={field.name}
                  variant="default"
                  size="compact-sm"
                  title={field.meaning}
                  aria-label={say('Put in {meaning}', { meaning: field.meaning })}
                  onClick={() => put(field.name)}
                >
                  {`{{${field.name}}}`}
                </Button>
              ))}
            </Group>
          </details>
          <p className={styles.law}>{lawNote}</p>
        </Form>
      </Card>
      <Preview words={words} language={language} channel={value.channel} />
    </div>
  )
}
