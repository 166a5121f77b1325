import type { Prisma } from '../store/generated/client.ts'

/** What differs, as `{ field: [before, after] }`, for the audit line of an edit; only fields of `after` are looked at. */
export function changesBetween(before: object, after: object): Prisma.InputJsonObject {
  const was = before as Record<string, Prisma.InputJsonValue | null>
  const changed = Object.entries(after as Record<string, Prisma.InputJsonValue | null>).filter(
    ([field, value]) => JSON.stringify(was[field] ?? null) !== JSON.stringify(value ?? null),
  )
  return Object.fromEntries(changed.map(([field, value]) => [field, [was[field] ?? null, value ?? null]]))
}
