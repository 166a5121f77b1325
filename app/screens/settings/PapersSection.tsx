import { Button, FileInput, Group, Select, Text, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { PapersView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { base64Of } from '../../data/base64.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'
import { Heading } from './Heading.tsx'

/** How everything that is printed looks. */
export function PapersSection() {
  const papers = useQuery(trpc.shop.papers.queryOptions()).data
  return (
    <>
      <Heading title={say('Papers')}>
        {say(
          'The logo, colour and paper of everything that is printed. Name, address, phone and e-mail come from Shop.',
        )}
      </Heading>
      {papers && <PapersForm papers={papers} />}
    </>
  )
}

const byCountry = 'country'

function PapersForm({ papers: { paper, colour, logoName, version } }: { papers: PapersView }) {
  const form = useForm({
    // `picked` is the new logo; what is chosen of the old one is its name, null once it is taken off.
    saved: { paper, colour, logoName, picked: null as { fileName: string; base64: string } | null },
    version,
    saving: trpc.shop.savePapers.mutationOptions(),
    send: (value, seen) => ({
      version: seen,
      paper: value.paper,
      colour: value.colour,
      ...(value.picked ? { logo: value.picked } : logoName && !value.logoName ? { logo: null } : {}),
    }),
  })
  const { value, change, faults } = form
  const choose = async (file: File | null) =>
    change({ picked: file && { fileName: file.name, base64: await base64Of(file) } })
  const standing = value.picked?.fileName ?? value.logoName
  return (
    <div className={pieces.card}>
      <Form form={form} label={say('Papers')}>
        <div className={pieces.fields}>
          <Select
            label={say('Paper')}
            allowDeselect={false}
            data={[
              { value: byCountry, label: say('usual in the country') },
              { value: 'A4', label: 'A4' },
              { value: 'LETTER', label: say('US Letter') },
            ]}
            value={value.paper ?? byCountry}
            onChange={next => change({ paper: next === 'A4' || next === 'LETTER' ? next : null })}
            error={faults.at('paper')}
          />
          <TextInput
            label={say('Colour of headings and lines')}
            leftSection={<Swatch colour={value.colour} />}
            {...form.field('colour')}
          />
          <FileInput
            label={say('Logo')}
            description={say('PNG or JPEG, up to 1 MB')}
            placeholder={standing ?? say('choose a picture')}
            accept="image/png,image/jpeg"
            value={null}
            onChange={choose}
            error={faults.at('logo')}
          />
        </div>
        <Group mt="xs">
          <Text size="sm">
            {standing
              ? say('On the papers: {standing}', { standing })
              : say('Without a logo the name stands there.')}
          </Text>
          {standing && (
            <Button variant="default" size="xs" onClick={() => change({ picked: null, logoName: null })}>
              {say('Take the logo off')}
            </Button>
          )}
        </Group>
      </Form>
    </div>
  )
}

/** The colour as it is typed; nothing while it is no colour yet. */
function Swatch({ colour }: { colour: string }) {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) return null
  return (
    <svg width="16" height="16" aria-hidden="true">
      <rect width="16" height="16" rx="3" fill={colour} />
    </svg>
  )
}
