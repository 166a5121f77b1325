import { expect } from './fixtures.ts'
import type { PageApi } from './pageApi.ts'

/** Has the reminders that are due written, and waits until they are: it happens beside the desk. */
export async function remindersWritten(api: PageApi): Promise<void> {
  await api.reminders.prepare.mutate()
  await expect.poll(async () => (await api.reminders.batch.query()).writing.working).toBeNull()
}
