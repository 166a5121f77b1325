// RFC 5322 section 2.2: a header's text holds no line end.
import { expect, it } from 'vitest'
import { checkHeaderText, headerProblem } from '../../../../main/domain/upkeep/reminders/headerText.ts'

it.each([
  ['\n', '000A'],
  ['\r', '000D'],
  ['\0', '0000'],
  ['\x1f', '001F'],
  ['\x7f', '007F'],
  ['\x85', '0085'],
  ['\u2028', '2028'],
  ['\u2029', '2029'],
])('%j may not stand in a header', (sign, code) => {
  expect(headerProblem(`Ann${sign}Bcc: ben@example.com`)).toContain(`U+${code}`)
  expect(() => checkHeaderText(`${sign}`, 'name')).toThrow(
    expect.objectContaining({ code: 'header-unsafe', field: 'name' }),
  )
})

it.each(['', 'Ann Lee', 'Ünal ~ \u00a0 Åse', '{{name}}'])('%j may', text => {
  expect(headerProblem(text)).toBeNull()
})
