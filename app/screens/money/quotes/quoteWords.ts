import type { QuoteView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'

const statusWords: Readonly<Record<QuoteView['status'], string>> = {
  open: say('open'),
  accepted: say('signed'),
  declined: say('declined'),
  booked: say('booked'),
}

export function quoteWords({ status, over }: Pick<QuoteView, 'status' | 'over'>): string {
  return over ? say('run out') : statusWords[status]
}
