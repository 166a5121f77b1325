/** The files that were taken in, and the one act that takes a whole file out again. */

import type { ImportKind } from '../../domain/imports/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { found } from '../../domain/refusal.ts'
import { type ImportedEntity, importedLeft, takeOutImported } from '../../store/importRows.ts'
import { askFirst } from '../desk/ask.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { UndoInput } from './inputs.ts'

export async function listTaken(desk: Desk) {
  const rows = await desk.store.read.dataImport.findMany({
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: 50,
  })
  return rows.map(({ kind, ...row }) => ({ ...row, kind: kind as ImportKind }))
}

const words: Readonly<Partial<Record<ImportedEntity, string>>> = {
  customer: word('{count} {count, plural, one {customer} other {customers}}'),
  vehicle: word('{count} {count, plural, one {car} other {cars}}'),
  layer: word('{count} {count, plural, one {coating} other {coatings}}'),
  upkeepPlan: word('{count} {count, plural, one {upkeep plan} other {upkeep plans}}'),
  product: word('{count} {count, plural, one {product} other {products}}'),
}

/**
 * Takes everything out again that came in with a file. What was changed or used since stays, which is asked about first.
 */
export function undoImport(desk: Desk, { id, accepted }: UndoInput): Promise<{ taken: number }> {
  return act(
    desk,
    async (tx, audit, at) => {
      const row = found(
        await tx.dataImport.findFirst({ where: { id, undoneAt: null } }),
        { id },
        say('This file was taken out already; look at the list again.'),
      )
      const taken = await takeOutImported(tx, id)
      const left = [...(await importedLeft(tx, id))].flatMap(([entity, count]) => {
        const counted = words[entity]
        return counted === undefined ? [] : [say(counted, { count })]
      })
      askFirst('in-use', left, {
        field: 'id',
        lead: say('These were changed or used since and stay; the rest is taken out:'),
        accepted,
      })
      await tx.importedRow.deleteMany({ where: { importId: id } })
      await tx.dataImport.update({ where: { id }, data: { undoneAt: at } })
      audit({
        act: 'taken out',
        entity: 'import',
        entityId: id,
        detail: { fileName: row.fileName, rows: taken },
      })
      return { taken }
    },
    { followed: false },
  )
}
