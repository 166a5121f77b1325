import { dirname } from 'node:path'
import type { Desk } from '../services/desk/desk.ts'
import { noteFault } from '../store/faultLog.ts'

/** Where a host takes the faults that are ours: to the console whole, to the log beside the database without words. */
export function faultTeller({ store, now }: Desk): (error: unknown, asked?: string) => void {
  return (error, asked) => {
    console.error(error)
    noteFault(dirname(store.source.file), now(), error, asked)
  }
}
