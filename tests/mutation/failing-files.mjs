import { TestRunner } from "vitest";

/**
 * A test file that fails while its tests are being gathered has none, which Stryker takes for none that failed, so that a
 * change which breaks what `describe` works out would count as unnoticed. Such a file is given one failed test.
 */
export default class FailingFiles extends TestRunner {
  #passOn;

  get onCollected() {
    return this.#passOn;
  }

  /** vitest puts its own here, which passes the gathered files on */
  set onCollected(passOn) {
    this.#passOn = (files) => {
      for (const file of files) if (file.result?.state === "fail" && file.tasks.length === 0) addFailedTest(file);
      return passOn.call(this, files);
    };
  }
}

function addFailedTest(file) {
  file.tasks.push({
    id: `${file.id}_gathered`,
    name: "its tests are gathered",
    fullName: "its tests are gathered",
    type: "test",
    mode: "run",
    meta: {},
    file,
    suite: file,
    result: file.result,
    timeout: 0,
    annotations: [],
    artifacts: [],
    context: {},
  });
}
