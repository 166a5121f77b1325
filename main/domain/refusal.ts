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
