import { sayLine } from '../../domain/history/index.ts'
import type { Tx } from '../../store/store.ts'

/** Who did what with a job when, newest first. */
export async function jobHistory(
  tx: Tx,
  jobId: string,
  when: (at: number) => string,
): Promise<{ at: number; who: string; words: string }[]> {
  const lines = await tx.auditLine.findMany({
    where: { entity: 'job', entityId: jobId },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  })
  const say = { when, money: String, nameOf: () => undefined }
  return lines.map(line => ({ at: line.at, who: line.who, words: sayLine(line, say) }))
}
