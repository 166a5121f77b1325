import type { JsonObject, JsonValue } from '../../store/json.ts'

/** What differs, as `{ field: [before, after] }`, for the audit line of an edit; only fields of `after` are looked at. */
export function changesBetween(before: object, after: object): JsonObject {
  const was = before as Record<string, JsonValue | null>
  const changed = Object.entries(after as Record<string, JsonValue | null>).filter(
    ([field, value]) => JSON.stringify(was[field] ?? null) !== JSON.stringify(value ?? null),
  )
  return Object.fromEntries(changed.map(([field, value]) => [field, [was[field] ?? null, value ?? null]]))
}
