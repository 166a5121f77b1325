import type { ReactNode } from 'react'
import pieces from './pieces.module.css'

/** One thing that is known of something, in a list of such. */
export function Fact({ name, children }: { name: string; children: ReactNode }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </>
  )
}

/** What is known of something: what each thing is called, and its value; false or null is left out. */
export function Facts({ of }: { of: Readonly<Record<string, ReactNode>> }) {
  return (
    <dl className={pieces.facts}>
      {Object.entries(of).map(
        ([name, value]) =>
          value !== null &&
          value !== false && (
            <Fact key={name} name={name}>
              {value}
            </Fact>
          ),
      )}
    </dl>
  )
}

/** Sentences one below the other. */
export function Lines({ of }: { of: readonly string[] }) {
  return (
    <ul className={pieces.plain}>
      {of.map(words => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  )
}
