/** Text of a record as one line of a file or header: a control character could begin another. */
export const oneLine = (text: string): string =>
  text.replace(/[\u0000-\u001f\u007f\u2028\u2029]+/g, ' ').trim();
