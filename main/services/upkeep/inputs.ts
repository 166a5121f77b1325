/** Shapes of input that the upkeep areas share. */
import { z } from 'zod'
import { date, id } from '../desk/inputs.ts'

export const planKind = z.enum(['first-wash', 'check-up', 'topper', 'inspection', 'other'])

export const channel = z.enum(['email', 'letter', 'call', 'text'])

/** A visit, named by its plan and the day the plan's rule gave it. */
export const visit = z.object({ planId: id, ruleOn: date })

export const why = z.string().max(400).optional()

export const choices = z.record(z.string().max(60), z.string().max(60))
