/** What was followed of an act, kept with it or forgotten. */
import type { Prisma } from '../generated/client.ts'
import { mostRows } from './watch.ts'

type Tx = Prisma.TransactionClient

/** How long an act can be taken back, in minutes. */
export const takeBackMin = 1440

/** The desk's act, as it is kept. */
export interface ActStamp {
  readonly who: string
  readonly at: number
  readonly deskId?: string | undefined
  /** The act that this one takes back. */
  readonly takesBackId?: number | undefined
}

/** Keeps the act with the rows it changed, and gives its number; without its rows where nobody followed, or they are too many. */
export async function keepAct(tx: Tx, stamp: ActStamp, followed: boolean): Promise<number> {
  const { at, who, deskId = '', takesBackId = null } = stamp
  const [row] = await tx.$queryRaw<{ id: number | bigint }[]>`
    insert into "Act" ("at", "who", "deskId", "takesBackId", "rows")
    select ${at}, ${who}, ${deskId}, ${takesBackId},
      case when ${followed ? 1 : 0} and count(*) <= ${mostRows} then count(*) end from temp."followed"
    returning "id"`
  return Number(row?.id)
}

/** What changed without an act of a desk's is not kept: a notice that was told, a figure worked out anew. */
export async function forgetFollowed(tx: Tx): Promise<void> {
  await tx.$executeRaw`delete from temp."followed"`
}

/** Follows nothing more until the act ends: a list of thousands is taken back in its own place. */
export async function stopFollowing(tx: Tx, stopped: boolean): Promise<void> {
  await tx.$executeRaw`update temp."follow" set "on" = ${stopped ? 0 : 1}`
}

/** Acts that are too old to be taken back go, with their rows. */
export async function dropOldActs(tx: Tx, nowAt: number): Promise<void> {
  await tx.$executeRaw`delete from "Act" where "at" < ${nowAt - takeBackMin}`
}
