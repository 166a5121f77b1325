import { Kbd, Modal } from '@mantine/core'
import { useLocation } from '@tanstack/react-router'
import { say } from '../../main/domain/language/index.ts'
import { commands } from './commands.ts'
import styles from './KeysHelp.module.css'
import { useShownKeys } from './keyWords.ts'
import { questionsAt } from './screenQuestions.ts'

interface Props {
  opened: boolean
  onClose(): void
}

/** What people ask of the screen below, and every key there is, its own included. */
export function KeysHelp({ opened, onClose }: Props) {
  const shown = useShownKeys()
  const questions = questionsAt(useLocation().pathname)
  const general = [
    { keys: say('Ctrl K'), label: say('Find a customer, plate, job or command') },
    { keys: say('Ctrl Z'), label: say('Take back the last thing done at this desk') },
    ...commands
      .filter(({ keys }) => keys.length > 0)
      .map(({ keys, label }) => ({
        keys: keys.map(key => key.toUpperCase()).join(` ${say('then')} `),
        label,
      })),
    { keys: 'Tab', label: say('To the next field or button') },
    { keys: 'Enter', label: say('Save the form') },
    { keys: '↑ ↓', label: say('In a date: a day later, earlier') },
    { keys: 'Alt ↓', label: say('In a date: open its calendar') },
    { keys: 'Esc', label: say('Close a window like this one') },
  ]
  const groups = [...shown, { title: say('Everywhere'), list: general }]
  return (
    <Modal opened={opened} onClose={onClose} title={say('Help')} size="lg">
      {questions.length > 0 && (
        <section className={styles.asked} aria-label={say('What people ask here')}>
          {questions.map(({ asks, answer }) => (
            <div key={asks}>
              <h3>{asks}</h3>
              <p>{answer}</p>
            </div>
          ))}
        </section>
      )}
      {groups.map(({ title, list }) => (
        <section key={title} className={styles.group} aria-label={title}>
          <h3>{title}</h3>
          <dl>
            {list.map(({ keys, label }) => (
              <div key={`${keys} ${label}`}>
                <dt>
                  <Kbd>{keys}</Kbd>
                </dt>
                <dd>{label}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </Modal>
  )
}
