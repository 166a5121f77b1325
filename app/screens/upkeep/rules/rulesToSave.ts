import type { ReminderSettingsView } from '../../../../main/api/views.ts'

/** The rules as the api takes them: its lists may be written to. */
export function rulesToSave(rules: ReminderSettingsView) {
  return {
    ...rules,
    factors: rules.factors.map(factor => ({ ...factor, choices: [...factor.choices] })),
  }
}
