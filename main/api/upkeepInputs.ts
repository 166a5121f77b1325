/** Shapes of input that the upkeep areas share. */
import { z } from 'zod'
import { id } from './inputs.ts'

export const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'Give a date as 2026-04-15.')

export const planKind = z.enum(['first-wash', 'check-up', 'topper', 'inspection', 'other'])

export const channel = z.enum(['email', 'letter', 'call', 'text'])

/** A visit, named by its plan and the day the plan's rule gave it. */
export const visit = z.object({ planId: id, ruleOn: date })

export const why = z.string().max(400).optional()

/** 0: nothing has been saved yet. */
export const versionOrNone = z.int().min(0)

export const choices = z.record(z.string().max(60), z.string().max(60))
