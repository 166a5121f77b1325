import { beginCheck, beginTake, importStands, stopImporting } from '../services/imports/importing.ts'
import { openInput, readInput, undoInput } from '../services/imports/inputs.ts'
import { openFile, settleReading } from '../services/imports/opened.ts'
import { listTaken, undoImport } from '../services/imports/taken.ts'
import { procedure, router } from './trpc.ts'

export const imports = router({
  /** A mutation only in form, since a file does not fit in an address: it saves nothing. */
  open: procedure.input(openInput).mutation(({ ctx, input }) => openFile(ctx, input)),
  /** What is left to ask of an open file that is read so. */
  settle: procedure.input(readInput).query(({ ctx, input }) => settleReading(ctx, input)),
  /** Looks through every row and answers at once; `standing` tells how far it is, then what it found. */
  check: procedure.input(readInput).mutation(({ ctx, input }) => beginCheck(ctx, input)),
  /** Takes in what was looked through, all or nothing. */
  take: procedure.input(readInput).mutation(({ ctx, input }) => beginTake(ctx, input)),
  stop: procedure.mutation(({ ctx }) => stopImporting(ctx)),
  standing: procedure.query(({ ctx }) => importStands(ctx)),
  taken: procedure.query(({ ctx }) => listTaken(ctx)),
  /** Takes a whole file out again. */
  undo: procedure.input(undoInput).mutation(({ ctx, input }) => undoImport(ctx, input)),
})
