import { useEffect, useRef, useState } from 'react'
import { type Faults, faultsOf } from '../parts/faults.ts'
import { type Fields, fieldsOf } from './fields.ts'
import { type SavingOptions, useSaving } from './saving.ts'

interface Options<T extends object, Input, Result> {
  /** What the form begins with and, while nothing is typed, goes on showing. */
  saved: T
  /** How often the row had been saved when `saved` was read; left out where something new is entered. */
  version?: number | undefined
  saving: SavingOptions<Input, Result>
  /** What goes to the server, null for nothing yet. `version` is the one the form was filled from, never a newer one. */
  send(value: T, version: number): Input | null
  /** Where the api has these fields, if not at the top: "lines.0". */
  place?: string
  done?: (result: Result) => void
}

/** What `<Form>` has to know of a form, whatever its fields. */
export interface FormState {
  submit(): void
  busy: boolean
  error: unknown
  faults: Faults
  /** Something was typed that is not saved. */
  dirty: boolean
  /** Whether something was typed at this very moment, also between two drawings. */
  isDirty(): boolean
  /** Whether there is anything to save: something was typed, or the form enters something new. */
  ready: boolean
  /** Another window has saved since this form was filled. */
  outdated: boolean
  /** How often the form was filled anew by hand: fields with half-read text begin anew with it. */
  fills: number
  /** Drops what was typed and shows what is saved. */
  reload(): void
  /** What the fields hold; another object with every change. */
  value: object
  /** Takes the last change back. */
  back(): void
}

export interface FormOf<T extends object> extends FormState, Fields<T> {
  value: T
  /** The save this form was filled from. */
  version: number
  change(part: Partial<T>): void
  /** Takes what was typed as saved, for a form that has a second way of saving. */
  settle(): void
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b)

/**
 * A form: what is typed, the save it was filled from, the way to save it and what was refused. As long as nothing was
 * typed it follows what is saved; once something was, a save from another window leaves it alone, is told as `outdated`,
 * and the server refuses this one, because the version that goes with it is the old one. A form for something new begins
 * anew once it was saved.
 */
export function useForm<T extends object, Input, Result>(options: Options<T, Input, Result>): FormOf<T> {
  const { saved, version = 0, send, done } = options
  const [base, setBase] = useState({ saved, version })
  const [value, setValue] = useState(saved)
  const [settled, setSettled] = useState(false)
  const [fills, setFills] = useState(0)
  const { save, busy, error, reset } = useSaving(options.saving)
  const faults = faultsOf(error)
  const typed = !same(value, base.saved)
  const moved = version !== base.version
  const dirty = typed && !settled
  const now = useRef({ value, dirty })
  useEffect(() => {
    now.current = { value, dirty }
  })

  const load = () => {
    setBase({ saved, version })
    setValue(saved)
    setSettled(false)
  }
  const begin = (first: T) => {
    setValue(first)
    setFills(count => count + 1)
    now.current.dirty = false
  }
  // During rendering, as React advises for state that follows a prop: the form never shows an older row.
  if (moved && !dirty) load()

  const before = useRef(saved)
  const change = (part: Partial<T>) => {
    before.current = value
    setValue(held => ({ ...held, ...part }))
    setSettled(false)
    now.current.dirty = true
  }
  const settle = () => {
    setSettled(true)
    now.current.dirty = false
  }
  const finish = (result: Result) => {
    if (!same(now.current.value, value))
      // Somebody typed on while it was being saved: what they typed stays, on top of what was saved.
      setBase({ saved: value, version: versionIn(result) ?? base.version })
    else if (options.version === undefined) begin(base.saved)
    else settle()
    done?.(result)
  }
  const submit = () => {
    const input = send(value, base.version)
    if (input !== null) save(input, finish)
  }
  const placeOf = (name: string) => (options.place ? `${options.place}.${name}` : name)
  return {
    version: base.version,
    change,
    back: () => setValue(before.current),
    settle,
    submit,
    busy,
    error,
    faults,
    dirty,
    isDirty: () => now.current.dirty,
    ready: dirty || options.version === undefined,
    outdated: moved && dirty && !busy,
    fills,
    reload: () => {
      reset()
      load()
      setFills(count => count + 1)
    },
    ...fieldsOf(value, change, name => faults.under(placeOf(name))),
  }
}

function versionIn(result: unknown): number | null {
  const version = result && typeof result === 'object' && 'version' in result ? result.version : null
  return typeof version === 'number' ? version : null
}
