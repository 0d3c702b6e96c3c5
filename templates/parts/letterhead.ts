import type { Content } from 'pdfmake/interfaces';
import type { Logo, PracticePrint } from '../model.ts';
import { textWidth, type Palette } from '../theme.ts';
import { ruleLine } from './layout.ts';

/** Registration texts longer than this go to the end of the sheet instead of the letterhead. */
export const REGISTRATION_IN_HEAD = 140;

const LOGO_BOX = { width: 96, height: 42 } as const;

function logoContent(logo: Logo): Content {
  const fit: [number, number] = [LOGO_BOX.width, LOGO_BOX.height];
  if (logo.mediaType === 'image/svg+xml') return { svg: logo.data, fit };
  return { image: `data:${logo.mediaType};base64,${logo.data}`, fit };
}

const lines = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** The practice's name and contact over a rule in its colour. */
export function letterhead(practice: PracticePrint, colours: Palette): Content {
  const registration =
    practice.registration.length <= REGISTRATION_IN_HEAD ? lines(practice.registration) : [];
  const left: Content[] = [
    { text: practice.name, style: 'practice' },
    ...[practice.practitioner, ...registration]
      .filter((line) => line !== '')
      .map((text) => ({ text, style: 'contact' })),
  ];
  const right = [...lines(practice.address), practice.phone, practice.email]
    .filter((line) => line !== '')
    .map((text) => ({ text, style: 'contact', alignment: 'right' as const }));
  return {
    stack: [
      {
        columns: [
          ...(practice.logo
            ? [{ width: LOGO_BOX.width, stack: [logoContent(practice.logo)] }]
            : []),
          { width: '*', stack: left },
          { width: 210, stack: right },
        ],
        columnGap: 18,
      },
      {
        ...(ruleLine(textWidth(practice.paper), colours.accent, 1.4) as object),
        margin: [0, 6, 0, 0],
      },
    ] as Content[],
  };
}
