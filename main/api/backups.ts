import { copyAtOnce } from '../services/backup/copying.ts'
import { copiesInput, copyInput, findCopiesInput, restoreInput } from '../services/backup/inputs.ts'
import {
  cancelRestore,
  copiesHere,
  findCopies,
  lookIntoCopy,
  stageRestore,
} from '../services/backup/restore.ts'
import { copiesSettings, saveCopiesSettings } from '../services/backup/settings.ts'
import { copiesStanding } from '../services/backup/standing.ts'
import { procedure, router } from './trpc.ts'

export const backups = router({
  /** When the last good copy was made and where, and what somebody should hear of. */
  standing: procedure.query(({ ctx }) => copiesStanding(ctx)),

  settings: procedure.query(({ ctx }) => copiesSettings(ctx)),

  save: procedure.input(copiesInput).mutation(({ ctx, input }) => saveCopiesSettings(ctx, input)),

  /** Makes a copy at once. */
  make: procedure.mutation(({ ctx }) => copyAtOnce(ctx)),

  /** The copies on this computer, and the one the next start will open. */
  list: procedure.query(({ ctx }) => copiesHere(ctx)),

  /** The copies in another folder. */
  find: procedure.input(findCopiesInput).mutation(({ input }) => findCopies(input)),

  /** What a copy holds beside what is here. */
  look: procedure.input(copyInput).mutation(({ ctx, input }) => lookIntoCopy(ctx, input)),

  /** Makes a copy ready to take the place of what is here at the next start. */
  restore: procedure.input(restoreInput).mutation(({ ctx, input }) => stageRestore(ctx, input)),

  /** It is not opened after all. */
  cancelRestore: procedure.mutation(({ ctx }) => cancelRestore(ctx)),
})
