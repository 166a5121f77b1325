import type { ChangeEvent } from 'react'

type Typed = ChangeEvent<HTMLInputElement | HTMLTextAreaElement>

/** The keys of those fields that hold a V. */
type KeyOf<T, V> = { [K in keyof T]: T[K] extends V ? K : never }[keyof T] & string

/** What the inputs of an object's fields are given, each as `{...fields.field('name')}`. */
export interface Fields<T extends object> {
  value: T
  /** All that an input for this field needs, whether it hands over an event or a value. */
  field<K extends keyof T & string>(
    name: K,
  ): { value: T[K]; onChange(given: T[K] | Typed): void; error: string | undefined }
  /** The same for a text that may be missing: empty is null. */
  optional(name: KeyOf<T, string | null>): {
    value: string
    onChange(given: string | Typed): void
    error: string | undefined
  }
  /** The same for one of a few words, which is never nothing. */
  choice<K extends keyof T & string>(
    name: K,
  ): { value: T[K]; onChange(given: string | null): void; allowDeselect: false; error: string | undefined }
  /** The same for a box or a switch. */
  tick(name: KeyOf<T, boolean>): {
    checked: boolean
    onChange(event: ChangeEvent<HTMLInputElement>): void
    error: string | undefined
  }
  /** The fields of an object that this one holds. */
  within<K extends KeyOf<T, object>>(name: K): Fields<T[K] & object>
  /** The fields of each object in a list that this one holds. */
  each<V extends object>(name: KeyOf<T, V[]>): Fields<V>[]
}

/** The fields of an object: what they hold, how one is changed, and what was refused of it, by its name. */
export function fieldsOf<T extends object>(
  value: T,
  change: (part: Partial<T>) => void,
  errorAt: (name: string) => string | undefined,
): Fields<T> {
  const put = (name: keyof T, given: unknown) => change({ [name]: given } as Partial<T>)
  return {
    value,
    field: name => ({
      value: value[name],
      onChange: given => put(name, read(given)),
      error: errorAt(name),
    }),
    optional: name => ({
      value: (value[name] as string | null) ?? '',
      onChange: given => put(name, read(given) || null),
      error: errorAt(name),
    }),
    choice: name => ({
      value: value[name],
      onChange: given => given !== null && put(name, given),
      allowDeselect: false,
      error: errorAt(name),
    }),
    tick: name => ({
      checked: value[name] as boolean,
      onChange: event => put(name, event.currentTarget.checked),
      error: errorAt(name),
    }),
    within: name => {
      const held = value[name] as T[typeof name] & object
      return fieldsOf(
        held,
        part => put(name, { ...held, ...part }),
        inner => errorAt(`${name}.${inner}`),
      )
    },
    each: <V extends object>(name: KeyOf<T, V[]>) => {
      const list = value[name] as V[]
      return list.map((held, i) =>
        fieldsOf<V>(
          held,
          part => put(name, list.with(i, { ...held, ...part })),
          inner => errorAt(`${name}.${i}.${inner}`),
        ),
      )
    },
  }
}

/** The value an input hands over, by itself or in the event of the keyboard. */
function read(given: unknown): unknown {
  return given && typeof given === 'object' && 'currentTarget' in given
    ? (given as Typed).currentTarget.value
    : given
}
