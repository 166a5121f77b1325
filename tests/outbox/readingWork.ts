type Method = (this: unknown, ...given: unknown[]) => unknown

/**
 * The work of reading a text, counted, so that it is the same however busy the machine is: the characters that methods of
 * texts and patterns were given to look at, and one for each call. A call within a call is not counted, nor is what a
 * pattern does with its text: one that repeats without bound may look at each character many times.
 */
export function workOf(read: () => void): number {
  let work = 0
  let within = false
  const watch = (owner: object, name: string, textOf: (self: unknown, given: unknown) => unknown) => {
    const before = Object.getOwnPropertyDescriptor(owner, name)!
    const method = before.value as Method
    const counted: Method = function (...given) {
      if (within) return method.apply(this, given)
      within = true
      work += String(textOf(this, given[0])).length + 1
      try {
        return method.apply(this, given)
      } finally {
        within = false
      }
    }
    Object.defineProperty(owner, name, { ...before, value: counted })
    return () => Object.defineProperty(owner, name, before)
  }
  const undo = [
    ...textMethods.map(name => watch(String.prototype, name, self => self)),
    ...['exec', 'test'].map(name => watch(RegExp.prototype, name, (_, text) => text)),
  ]
  try {
    read()
  } finally {
    for (const each of undo) each()
  }
  return work
}

/** All but those that only give the text, which the counting itself calls. */
const textMethods = Object.entries(Object.getOwnPropertyDescriptors(String.prototype))
  .filter(
    ([name, { value }]) => typeof value === 'function' && !/^(constructor|toString|valueOf)$/.test(name),
  )
  .map(([name]) => name)
