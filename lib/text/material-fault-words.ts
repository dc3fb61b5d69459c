import { quantityWords, type QuantityTrouble } from './quantity-words';

/** What is wrong with a material somebody writes down. */
export function materialFaultWords(
  problem: QuantityTrouble | 'no-name' | 'too-large' | 'order',
  text: string,
): string {
  switch (problem) {
    case 'no-name':
      return 'A material needs a name.';
    case 'too-large':
      return `${text} is more than any material grows. Look at the point.`;
    case 'order':
      return 'The coefficient lies between its least and its most.';
    default:
      return quantityWords(problem, text, 'millionths a degree, such as 11.7');
  }
}
