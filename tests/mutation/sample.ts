import { readFileSync } from 'node:fs'
import { Instrumenter } from '@stryker-mutator/instrumenter'

/** The changes left out everywhere: words are read by people, not by code; a changed word is no fault a test should see. */
export const excludedMutations = ['StringLiteral', 'Regex']

/** A change over more lines empties whole functions: every test sees that, and trying it tries all that lies within. */
const mostLines = 3

const silent = {
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
  trace() {},
  debug() {},
  info() {},
  warn() {},
  error() {},
  fatal() {},
}

/** The same number for the same words, spread evenly over 32 bits (FNV-1a, then mixed). */
function scatter(words: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < words.length; i++) hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193)
  hash = Math.imul(hash ^ (hash >>> 16), 0x45d9f3b)
  return (hash ^ (hash >>> 16)) >>> 0
}

/** One change, by what tells it from any other: file, place, kind and what stands there instead. */
export const keyOf = (
  file: string,
  { line, column }: { line: number; column: number },
  mutator: string,
  replacement = '',
) => `${file}:${line}:${column} ${mutator} ${replacement}`

/**
 * `wanted` of all changes to the files, drawn without regard to what they are: each with the range to ask the tool for, and
 * with its key, since a range also holds the smaller changes inside it. The same seed draws the same.
 */
export async function sample(root: string, files: string[], wanted: number, seed: string) {
  const { mutants } = await new Instrumenter(silent).instrument(
    files.map(name => ({ name, mutate: true, content: readFileSync(`${root}${name}`, 'utf8') })),
    { plugins: null, excludedMutations, ignorers: [] },
  )
  // What is left out is listed all the same, marked.
  const offered = mutants.filter(({ status }) => status !== 'Ignored')
  const drawn = offered
    .map(({ fileName, location: { start, end }, mutatorName, replacement }) => ({
      file: fileName,
      lines: end.line - start.line + 1,
      // The tool counts lines from 0 here, and from 1 wherever it reads or prints them.
      range: `${fileName}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`,
      key: keyOf(fileName, { line: start.line + 1, column: start.column + 1 }, mutatorName, replacement),
    }))
    .filter(({ lines }) => lines <= mostLines)
    .map(mutant => ({ ...mutant, lot: scatter(seed + mutant.key) }))
    .sort((a, b) => a.lot - b.lot)
    .slice(0, wanted)
  return { changes: drawn, of: offered.length }
}
