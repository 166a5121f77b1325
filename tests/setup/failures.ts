import type { Reporter, TestCase, TestModule } from 'vitest/node'

/** Names a test the moment it has failed, as Playwright's list does, so that nobody waits for the end to hear of it. */
export default class Failures implements Reporter {
  onTestCaseResult(test: TestCase): void {
    if (test.result().state === 'failed') console.log(`✘ ${test.module.relativeModuleId} › ${test.fullName}`)
  }

  onTestModuleEnd(module: TestModule): void {
    if (module.errors().length > 0) console.log(`✘ ${module.relativeModuleId} does not load`)
  }
}
