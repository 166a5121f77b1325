import { Button, FileInput, Group } from '@mantine/core'
import { useState } from 'react'
import type { SafetyView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { base64Of } from '../../../data/base64.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { DateField } from '../../../parts/DateField.tsx'
import { Form } from '../../../parts/form/Form.tsx'

/** Files the product's data sheet with the day of its revision; the one before stays in the records. */
export function SheetUpload({ safety }: { safety: SafetyView }) {
  const [open, setOpen] = useState(false)
  return open ? (
    <SheetForm safety={safety} onClose={() => setOpen(false)} />
  ) : (
    <Button variant="default" size="xs" mt="sm" onClick={() => setOpen(true)}>
      {safety.sheet ? say('File a newer sheet') : say('File the sheet')}
    </Button>
  )
}

function SheetForm({ safety, onClose }: { safety: SafetyView; onClose(): void }) {
  const form = useForm({
    saved: { file: null as File | null, base64: '', revisedOn: '' },
    version: safety.version,
    saving: trpc.safety.uploadSheet.mutationOptions(),
    send: ({ file, ...sheet }, version) =>
      file && { ...sheet, productId: safety.productId, version, fileName: file.name },
    done: onClose,
  })
  const { change, faults } = form
  const { base64, revisedOn } = form.value
  const choose = async (file: File | null) => change({ file, base64: file ? await base64Of(file) : '' })
  return (
    <Form
      form={form}
      label={say('File the data sheet')}
      save={say('File it')}
      ready={base64 !== '' && revisedOn !== ''}
      onCancel={onClose}
    >
      <Group align="flex-start" mt="sm">
        <FileInput
          label={say('The sheet, a PDF or a picture')}
          placeholder={say('choose a file')}
          accept="application/pdf,image/png,image/jpeg"
          w={260}
          value={form.value.file}
          onChange={choose}
          error={faults.at('file') ?? faults.at('base64')}
        />
        <DateField label={say('Revised on, as printed on it')} {...form.field('revisedOn')} />
      </Group>
    </Form>
  )
}
