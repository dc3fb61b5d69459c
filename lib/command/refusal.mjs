/**
 * Something the person at the machine can put right. The message is one or two whole sentences for
 * them: what happened, what is safe, what to do. It is shown without a stack.
 */
export class Refusal extends Error {
  name = 'Refusal';
}
