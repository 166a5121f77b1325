/**
 * Input the domain will not compute with. `field` is the path of the offending input ("steps.2.minutes"), and the
 * message names the value and what to do instead, so that a screen can show it beside the field as it is.
 */
export class Refusal extends Error {
  readonly code: string
  readonly field: string
  readonly value: unknown

  constructor(code: string, field: string, value: unknown, message: string) {
    super(message)
    this.name = 'Refusal'
    this.code = code
    this.field = field
    this.value = value
  }
}

/** The field at fault with the value it has, as in `{ plate }` or `{ 'steps.2.minutes': minutes }`: exactly one. */
export type FieldAtFault = Readonly<Record<string, unknown>>

/**
 * Refuses the value of one field: `refuse('year-bad', { year }, 'Use 1886 to 2028, or leave it empty.')`.
 * @throws Refusal, always.
 */
export function refuse(code: string, at: FieldAtFault, words: string): never {
  const [[field, value] = ['', undefined]] = Object.entries(at)
  throw new Refusal(code, field, value, words)
}

/**
 * What was looked up by an id.
 * @throws Refusal `missing` in these words where nothing was found.
 */
export function found<T>(what: T | null | undefined, by: FieldAtFault, words: string): T {
  return what ?? refuse('missing', by, words)
}

/** The same error with its field renamed if it is a refusal; to be thrown on where the caller's input is named otherwise. */
export function withField(error: unknown, rename: (field: string) => string): unknown {
  if (!(error instanceof Refusal)) return error
  return new Refusal(error.code, rename(error.field), error.value, error.message)
}
