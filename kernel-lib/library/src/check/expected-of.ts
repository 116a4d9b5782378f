/**
 * What a schema's message says was expected, without the words around it: of `"Too small: expected number to be >=0"`
 * the words `"number to be >=0"`; a message of our own as it is.
 */
export function expectedOf(message: string): string {
  return message.replace(/^(?:[A-Z][a-z ]+: )?expected /, "").replace(/, received .*$/, "");
}
