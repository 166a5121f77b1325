import { Button, FileInput, Group, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { SafetyView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'

/** Files the product's data sheet with the day of its revision; the one before stays in the records. */
export function SheetUpload({ safety }: { safety: SafetyView }) {
  const [open, setOpen] = useState(false)
  return open ? (
    <SheetForm safety={safety} onClose={() => setOpen(false)} />
  ) : (
    <Button variant="default" size="xs" mt="sm" onClick={() => setOpen(true)}>
      {safety.sheet ? 'File a newer sheet' : 'File the sheet'}
    </Button>
  )
}

function SheetForm({ safety, onClose }: { safety: SafetyView; onClose(): void }) {
  const [file, setFile] = useState<File | null>(null)
  const [revisedOn, setRevisedOn] = useState('')
  const uploading = useSaving(trpc.safety.uploadSheet.mutationOptions())
  const faults = faultsOf(uploading.error)
  const upload = async () => {
    if (!file) return
    const base64 = await base64Of(file)
    const { productId, version } = safety
    uploading.save({ productId, version, fileName: file.name, revisedOn, base64 }, onClose)
  }
  return (
    <Form error={uploading.error} label="File the data sheet" onSave={() => void upload()}>
      <Group align="flex-start" mt="sm">
        <FileInput
          label="The sheet, a PDF or a picture"
          placeholder="choose a file"
          accept="application/pdf,image/png,image/jpeg"
          w={260}
          value={file}
          onChange={setFile}
          error={faults.at('file') ?? faults.at('base64')}
        />
        <TextInput
          type="date"
          label="Revised on, as printed on it"
          value={revisedOn}
          onChange={event => setRevisedOn(event.currentTarget.value)}
          error={faults.at('revisedOn')}
        />
      </Group>
      <FormFoot
        faults={faults}
        busy={uploading.busy}
        label="File it"
        dirty={file !== null && revisedOn !== ''}
      >
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
      </FormFoot>
    </Form>
  )
}

/** A file's bytes as text, by the browser's own reader: the part of a data address after its comma. */
function base64Of(file: File): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader()
    reader.onload = () => resolve(String(reader.result).split(',')[1] ?? '')
    reader.onerror = () => reject(reader.error)
    reader.readAsDataURL(file)
  })
}
