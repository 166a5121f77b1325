import { Refused } from './form/Refused.tsx'
import pieces from './pieces.module.css'

/** In the place of what is being looked up; says so where that was refused. */
export function Waiting({ error, words }: { error: unknown; words: string }) {
  return error ? <Refused of={error} /> : <p className={pieces.soft}>{words} …</p>
}
