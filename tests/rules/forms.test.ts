import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { editForms } from '../e2e/twoWindows/forms.ts'
import { otherForms } from '../e2e/twoWindows/otherForms.ts'
import { trackedFiles } from './trackedFiles.ts'

const appFiles = trackedFiles().filter(path => /^app\/.*\.tsx?$/.test(path))
const textOf = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8')

test('every form is opened in two windows, or it is said why it need not be', () => {
  const shared = ['app/data/form.ts', 'app/screens/settings/RowEditor.tsx']
  const made = appFiles.filter(path => !shared.includes(path) && /useForm\(|<RowEditor\b/.test(textOf(path)))
  const told = [...editForms.map(({ file }) => file), ...Object.keys(otherForms)]
  expect(told.map(file => `app/${file}`).sort()).toEqual(made.sort())
})

test('a screen changes something only by the one guarded way', () => {
  const others = appFiles.filter(
    path => path !== 'app/data/saving.ts' && textOf(path).includes('useMutation('),
  )
  expect(others).toEqual([])
})
