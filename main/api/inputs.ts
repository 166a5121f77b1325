/** Shapes of input that several areas share. */
import { z } from 'zod'
import { capabilities, finishes, sizeClasses, skills } from '../domain/shop/index.ts'

/** A row's id. */
export const id = z.string().min(1).max(64)

/** The edit count a window saw; another window's save has moved it on. */
export const version = z.int().min(1)

/** What an edit or a new row brings: both or neither. */
export const edited = { id: id.optional(), version: version.optional() }

export const oneRow = z.object({ id, version })

/** An epoch minute. */
export const minute = z.int().min(-40_000_000).max(200_000_000)

export const text = z.string().max(4_000)

const wallMinute = z.int('Give a time of day, such as 08:00.').min(0).max(1440)

export const wallSpan = z.object({ from: wallMinute, to: wallMinute })

export const weekly = z.array(wallSpan.extend({ weekday: z.int().min(1).max(7) })).max(70)

export const capability = z.enum(capabilities)
export const skill = z.enum(skills)
export const sizeClass = z.enum(sizeClasses)
export const finish = z.enum(finishes)

/** The person has been told which bookings this touches and goes on. */
export const accepted = z.boolean().optional()

export const listInput = z.object({ archived: z.boolean().optional() }).optional()

export const orderInput = z.object({ ids: z.array(id).max(500) })
