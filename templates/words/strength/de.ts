import type { OwnerWords } from '../words.ts';

/** Der Wortlaut des Kraftblatts. */
export const strengthDe: OwnerWords['strength'] = {
  kind: 'Kraftblatt',
  title: 'Kraft und Gleichgewicht für {dog}',
  intro:
    'An {days} Tagen in der Woche, nie an zwei Tagen hintereinander. Vorher fünf Minuten gehen. Langsam und gerade zählt mehr als viel.',
  nothing: 'Noch ist nichts ausgewählt. Bitte beim nächsten Termin fragen, bevor Sie beginnen.',
  week: 'Woche {week}',
  dose: '{sets} × {repeats} {unit}',
  units: { times: 'Mal', steps: 'Schritte', seconds: 'Sekunden', minutes: 'Minuten' },
  next: 'Nach zwei sauberen Wochen: {harder}',
  planLine: 'Kraft an 2 bis 3 Tagen',
  stopTitle: 'Aufhören und anrufen',
  stop: [
    'wenn {dog} lahmt, jammert, zittert oder nicht mag',
    'wenn {dog} am nächsten Tag steif oder müde ist',
    'wenn Rücken oder Bein schwächer wirkt als vorher',
  ],
  clean:
    'Eine saubere Woche: alles getan, und {dog} bewegt sich am nächsten Tag wie sonst. Für jeden Tag ein Kästchen.',
  stops: {
    leans: 'Aufhören, wenn der Hund sich lehnt, schief sitzt oder steif wird.',
    trembles: 'Aufhören, wenn ein Bein zittert oder der Hund absteigt.',
    stride: 'Aufhören, wenn ein Schritt kurz wird oder eine Pfote schleift.',
  },
  exercises: {
    'sit-to-stand': {
      name: 'Vom Sitz in den Stand',
      how: 'Gerade sitzen, dann mit einem Leckerbissen auf Nasenhöhe aufstehen.',
      harder: 'ein dritter Satz, dann die Vorderpfoten auf einer niedrigen Stufe',
    },
    'down-to-stand': {
      name: 'Vom Liegen in den Stand',
      how: 'Gerade liegen, dann ohne Schritt aufstehen.',
      harder: 'ein dritter Satz, dann von einer weichen Matte',
    },
    'backing-up': {
      name: 'Rückwärts gehen',
      how: 'Gerade zurück, an einer Wand entlang.',
      harder: 'zwei Schritte mehr, dann leicht bergauf',
    },
    'figures-of-eight': {
      name: 'Achten',
      how: 'Im Schritt um zwei Hütchen, drei Schritte auseinander.',
      harder: 'ein dritter Satz, dann die Hütchen enger',
    },
    circles: {
      name: 'Kreise in beide Richtungen',
      how: 'Im Schritt ein weiter Kreis um Sie, links und rechts.',
      harder: 'ein dritter Satz, dann ein Kreis, der einen Schritt enger ist',
    },
    'ground-poles': {
      name: 'Stangen am Boden',
      how: 'Langsam über fünf Stangen, je ein Schritt auseinander.',
      harder: 'ein dritter Satz, dann zwei Stangen mehr',
    },
    'slope-walking': {
      name: 'Am Hang gehen',
      how: 'Einen sanften Hang hinauf und hinab gehen.',
      harder: 'eine Minute mehr, dann ein steilerer Hang',
    },
    'cushion-weight-shifts': {
      name: 'Gewicht verlagern auf dem Kissen',
      how: 'Vorderpfoten auf ein festes Kissen. Die Hüfte sanft zu jeder Seite schieben.',
      harder: 'zehn Sekunden mehr, dann ein weicheres Kissen',
    },
    'paw-lifts': {
      name: 'Pfoten heben',
      how: 'Auf festem Boden eine Pfote ein wenig heben. Dann die nächste.',
      harder: 'ein dritter Satz, dann drei Sekunden länger',
    },
    'three-leg-stand': {
      name: 'Auf drei Beinen stehen',
      how: 'Eine Hinterpfote halten, der Hund steht still.',
      harder: 'ein dritter Satz, dann drei Sekunden länger',
    },
    'side-steps': {
      name: 'Seitwärts treten',
      how: 'Schritte zur einen Seite, dann zur anderen.',
      harder: 'zwei Schritte mehr, dann über eine Stange',
    },
    'play-bow': {
      name: 'Verbeugung',
      how: 'Vorne tief, Hüfte hoch, dann wieder stehen.',
      harder: 'ein dritter Satz, dann drei Sekunden halten',
    },
  },
};
