import { Link } from '@tanstack/react-router'
import type { MessageView } from '../../../../main/api/views.ts'
import styles from '../Upkeep.module.css'
import { channelWords, outcomeWords, stateSigns, stateWords } from '../words.ts'
import own from './Reminders.module.css'

/** The batch as a list: what waits for the desk first. */
export function MessageList({ messages, chosenId }: { messages: readonly MessageView[]; chosenId: string }) {
  return (
    <ul className={styles.rows} aria-label="Messages">
      {messages.map(message => (
        <li key={message.id}>
          <Link
            to="/upkeep/$section/$id"
            params={{ section: 'reminders', id: message.id }}
            className={own.row}
            aria-current={message.id === chosenId}
          >
            <b>
              {message.plate} <span>{message.customerName}</span>
            </b>
            <small>
              {channelWords[message.channel]}, {message.title}
            </small>
            <small className={own.state} data-state={message.state}>
              {stateSigns[message.state]} {stateWords[message.state]}
              {message.outcome && `, ${outcomeWords[message.outcome]}`}
              {message.unanswered > 0 && ', may have arrived twice'}
              {message.unfilled.length > 0 && message.state === 'draft' && ', a field is not filled'}
            </small>
          </Link>
        </li>
      ))}
    </ul>
  )
}
