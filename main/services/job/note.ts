import { say } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { NoteInput } from './inputs.ts'
import { noJob } from './jobOnFloor.ts'

/** Keeps a note with a job: a line of its history, with who said it and when. Nothing of the job changes. */
export function noteJob(desk: Desk, { id, words }: NoteInput): Promise<void> {
  return act(desk, async (tx, audit) => {
    found(await tx.job.findUnique({ where: { id }, select: { id: true } }), { id }, say(noJob))
    audit({
      act: 'noted',
      entity: 'job',
      entityId: id,
      detail: { words: checkText(words, 'words', say('The note'), 400) },
    })
  })
}
