import type { OwnerWords } from '../words.ts';

/** Le texte de la fiche de force. */
export const strengthFr: OwnerWords['strength'] = {
  kind: 'Fiche de force',
  title: 'Force et équilibre pour {dog}',
  intro:
    '{days} jours par semaine, jamais deux jours de suite. Marchez d’abord cinq minutes. Lent et droit compte plus que beaucoup.',
  nothing: 'Rien n’est encore choisi. Demandez à la prochaine visite avant de commencer.',
  week: 'Semaine {week}',
  dose: '{sets} × {repeats} {unit}',
  units: { times: 'fois', steps: 'pas', seconds: 'secondes', minutes: 'minutes' },
  next: 'Après deux semaines nettes : {harder}',
  planLine: 'force 2 à 3 jours',
  stopTitle: 'Arrêtez et appelez-nous',
  stop: [
    'si {dog} boite, gémit, tremble ou refuse',
    'si {dog} est raide ou fatigué le lendemain',
    'si le dos ou une patte semble plus faible qu’avant',
  ],
  clean:
    'Une semaine nette : tout est fait, et {dog} bouge comme d’habitude le lendemain. Cochez une case par jour.',
  stops: {
    leans: 'Arrêtez si le chien s’appuie, s’assoit de travers ou se raidit.',
    trembles: 'Arrêtez si une patte tremble ou si le chien descend.',
    stride: 'Arrêtez si un pas est court ou si une patte traîne.',
  },
  exercises: {
    'sit-to-stand': {
      name: 'Assis, debout',
      how: 'Assis bien droit, puis debout avec une friandise à hauteur du nez.',
      harder: 'une troisième série, puis les pattes avant sur une marche basse',
    },
    'down-to-stand': {
      name: 'Couché, debout',
      how: 'Couché bien droit, puis debout sans faire un pas.',
      harder: 'une troisième série, puis sur un tapis mou',
    },
    'backing-up': {
      name: 'Reculer',
      how: 'Reculez tout droit, le long d’un mur.',
      harder: 'deux pas de plus, puis en légère montée',
    },
    'figures-of-eight': {
      name: 'Huit',
      how: 'Au pas autour de deux cônes, à trois pas l’un de l’autre.',
      harder: 'une troisième série, puis les cônes plus près',
    },
    circles: {
      name: 'Cercles des deux côtés',
      how: 'Au pas, un grand cercle autour de vous, à gauche et à droite.',
      harder: 'une troisième série, puis un cercle plus petit d’un pas',
    },
    'ground-poles': {
      name: 'Barres au sol',
      how: 'Passez lentement cinq barres, à un pas l’une de l’autre.',
      harder: 'une troisième série, puis deux barres de plus',
    },
    'slope-walking': {
      name: 'Marcher en pente',
      how: 'Montez et descendez une pente douce au pas.',
      harder: 'une minute de plus, puis une pente plus forte',
    },
    'cushion-weight-shifts': {
      name: 'Appuis sur un coussin',
      how: 'Pattes avant sur un coussin ferme. Poussez doucement la hanche de chaque côté.',
      harder: 'dix secondes de plus, puis un coussin plus mou',
    },
    'paw-lifts': {
      name: 'Lever une patte',
      how: 'Sur un sol ferme, levez un peu une patte. Puis la suivante.',
      harder: 'une troisième série, puis trois secondes de plus',
    },
    'three-leg-stand': {
      name: 'Debout sur trois pattes',
      how: 'Tenez une patte arrière, le chien reste immobile.',
      harder: 'une troisième série, puis trois secondes de plus',
    },
    'side-steps': {
      name: 'Pas de côté',
      how: 'Des pas d’un côté, puis de l’autre.',
      harder: 'deux pas de plus, puis par-dessus une barre',
    },
    'play-bow': {
      name: 'Révérence',
      how: 'L’avant en bas, la hanche en haut, puis debout.',
      harder: 'une troisième série, puis tenue trois secondes',
    },
  },
};
