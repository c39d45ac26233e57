/** Names every test that passed only when it was tried again, so that it is mended and not forgotten. */
export default class SecondTries {
  #names = [];

  onTestCaseResult(test) {
    if (test.diagnostic()?.flaky) this.#names.push(`${test.module.relativeModuleId}: ${test.fullName}`);
  }

  onTestRunEnd() {
    for (const name of this.#names) console.log(`passed only at the second try: ${name}`);
  }
}
